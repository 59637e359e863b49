// Reading quantities as people write them: "9.2 m", "30 ft 6 in", "30' 6\"", "20 L/min", "64 F".
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::units {

/// The unit system that gives bare numbers their unit and chooses the units of the output.
enum class System { metric, us };

/// Why a text is not a quantity, and where in the text.
struct ParseError {
  std::size_t offset = 0;  ///< Byte in the text at which reading stopped.
  std::string reason;
  std::string hint;         ///< What to write instead; may be empty.
  bool wrong_unit = false;  ///< The number was fine; its unit is missing or is not one.
};

template <class T>
using Parsed = std::variant<T, ParseError>;

/// Reads a plain decimal number (`-12.5`, `1e3`); no locale, no hex, never infinite.
[[nodiscard]] Parsed<double> parse_number(std::string_view text);

/// Read a quantity with its unit. A text without a unit is refused: a bare number in a job file is
/// a JSON number and goes through `bare`. Several parts ("30 ft 6 in") add up where a unit of the
/// same dimension follows a larger one; only the first part may carry a sign.
[[nodiscard]] Parsed<Length> parse_length(std::string_view text);
[[nodiscard]] Parsed<Area> parse_area(std::string_view text);
[[nodiscard]] Parsed<Volume> parse_volume(std::string_view text);
[[nodiscard]] Parsed<Mass> parse_mass(std::string_view text);
[[nodiscard]] Parsed<Duration> parse_duration(std::string_view text);
[[nodiscard]] Parsed<Flow> parse_flow(std::string_view text);
[[nodiscard]] Parsed<Temperature> parse_temperature(std::string_view text);
[[nodiscard]] Parsed<TemperatureDifference> parse_temperature_difference(std::string_view text);
[[nodiscard]] Parsed<WorkRate> parse_work_rate(std::string_view text);
[[nodiscard]] Parsed<EdgeRate> parse_edge_rate(std::string_view text);
[[nodiscard]] Parsed<Speed> parse_speed(std::string_view text);
[[nodiscard]] Parsed<SpreadingRate> parse_spreading_rate(std::string_view text);
[[nodiscard]] Parsed<ApplicationRate> parse_application_rate(std::string_view text);
[[nodiscard]] Parsed<Concentration> parse_concentration(std::string_view text);
[[nodiscard]] Parsed<Fraction> parse_fraction(std::string_view text);

}  // namespace basinwright::units
