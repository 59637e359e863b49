// What weather a task needs, as data.
#pragma once

#include <array>
#include <optional>
#include <variant>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::weather {

/// The least rain of an hour that counts as rain; a gauge shows no less.
inline constexpr sources::Sourced<units::Length> usual_least_rain{
    units::millimetres(0.1), {sources::Kind::assumed, "least-rain", "in an hour"}};

/// The limits of a task; what is empty is not asked. Limits hold at their own value and are
/// compared to a hundredth of a degree, of a percent, of a millimetre and of a metre a second, as
/// people read them.
struct Gate {
  std::optional<units::Temperature> air_min, air_max;
  units::Duration air_after;  ///< The air limits hold so long after the work too.
  std::optional<units::Temperature> shell_min, shell_max;  ///< While working.
  std::optional<units::TemperatureDifference> dew_margin;
  std::optional<units::Fraction> humidity_max;
  units::Duration first_cure;       ///< Dew margin and humidity hold so long after the work too.
  bool no_rain = false;             ///< None while working ...
  units::Duration rain_free_after;  ///< ... nor so long after it,
  units::Duration dry_before;       ///< nor so long before it.
  units::Length least_rain = usual_least_rain.value;
  std::optional<units::Speed> wind_max;  ///< While working.
};

/// The rules of a gate in the order in which they are judged and named.
enum class Rule {
  air_min,
  air_max,
  shell_min,
  shell_max,
  dew_margin,
  humidity,
  rain,
  dry_before,
  wind
};
inline constexpr std::array all_rules{Rule::air_min,
                                      Rule::air_max,
                                      Rule::shell_min,
                                      Rule::shell_max,
                                      Rule::dew_margin,
                                      Rule::humidity,
                                      Rule::rain,
                                      Rule::dry_before,
                                      Rule::wind};

/// A measured value or its limit.
using Figure = std::variant<std::monostate,
                            units::Temperature,
                            units::TemperatureDifference,
                            units::Fraction,
                            units::Length,
                            units::Speed>;

/// How a gate stands at one step.
struct Verdict {
  std::optional<Rule> closed_by;  ///< The first rule that fails; empty: open.
  bool unknown = false;           ///< It fails because nobody knows the value.
  HourNumber hour = 0;            ///< The first hour at which it fails.
  Figure measured, limit;
  bool shell_estimated = false;
  /// The worst of the values looked at; `missing`: some hour rests on the calendar alone.
  Quality rests_on = Quality::missing;
  [[nodiscard]] bool open() const { return !closed_by; }
};

}  // namespace basinwright::weather
