// Columns of a weather file: what each one means, and how much of it is known.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "weather_problems.hpp"
#include "weather_values.hpp"

namespace basinwright::readers {

/// A column of a table, or a list of a forecast.
struct WeatherColumn {
  Variable variable = Variable::air;
  std::string name;                   ///< As the file has it.
  const WeatherUnit* unit = nullptr;  ///< Nothing when the file names none that is known.
  std::size_t place = 0;              ///< Number of the column.
  std::string pointer = {};           ///< Of the list, in JSON.
  /// Values from here up, or from here down, say that nothing was measured.
  double missing_from = std::numeric_limits<double>::infinity();
  double missing_to = -std::numeric_limits<double>::infinity();
  /// Typical years give humidities a little over saturation; they count as saturated.
  bool may_oversaturate = false;

  std::size_t known = 0;
  std::size_t unknown = 0;
  Span first_unknown = {};
};

/// A value as it stands in the file.
struct WrittenValue {
  std::string_view text;  ///< Empty: not known.
  Span at;
  std::size_t index = 0;  ///< In its list, in JSON.
};

/// The value in SI; reports what is no number and what cannot be. Nothing when it is not known.
[[nodiscard]] std::optional<double> read_value(WeatherColumn& column,
                                               const WrittenValue& written,
                                               WeatherProblems& problems);

/// Reports a dew point above the air temperature, which no air has.
void check_dew_point(const weather::Hour& hour, Span at, WeatherProblems& problems);

/// Reports which variables a gate needs are in no column, and which columns have holes.
void tell_unknown(const std::vector<WeatherColumn>& columns,
                  Span heading,
                  WeatherProblems& problems);

}  // namespace basinwright::readers
