// The values that a weather file can give of an hour: their units, their limits, their place.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "basinwright/weather/record.hpp"

namespace basinwright::readers {

enum class Variable { air, humidity, dew_point, rain, wind, cloud, shell };
inline constexpr std::size_t variable_count = 7;

/// What is known of a variable whatever the file: its name and what can happen on the Earth.
struct VariableRow {
  Variable variable;
  std::string_view words;  ///< "air temperature".
  double low;              ///< In SI; shares from 0 to 1.
  double high;
  std::string_view limits;  ///< In words people use.
};
[[nodiscard]] const VariableRow& row_of(Variable variable);

/// A unit by the name a file gives it.
struct WeatherUnit {
  std::string_view name;
  double (*to_si)(double);
};
/// Nothing when the variable is not measured in it.
[[nodiscard]] const WeatherUnit* unit_named(Variable variable, std::string_view name);
/// The names of its units, for a hint.
[[nodiscard]] std::string unit_names(Variable variable);

/// Puts a value in its place.
void set(weather::Hour& hour, Variable variable, double si, weather::Quality quality);

/// The number that the whole text spells: decimal, finite, no sign +, no locale.
[[nodiscard]] std::optional<double> finite_number(std::string_view text);

}  // namespace basinwright::readers
