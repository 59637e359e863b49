// The weather a programme waits for, and the rules of it that belong to no data sheet.
#pragma once

#include <optional>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/conditions.hpp"
#include "basinwright/weather/gate.hpp"
#include "basinwright/weather/record.hpp"
#include "basinwright/weather/sun.hpp"

namespace basinwright::sequence {

struct WeatherRules {
  sources::Sourced<units::Length> least_rain = weather::usual_least_rain;
  sources::Sourced<units::Duration> shell_lag = weather::usual_shell_lag;
  /// The air from which washes with acid may be done.
  sources::Sourced<units::Temperature> frost{
      units::celsius(0), {sources::Kind::assumed, "frost", "no etch or rinse below"}};
  /// So much rain within so long before the drain is said.
  sources::Sourced<units::Length> heavy_rain{
      units::millimetres(25), {sources::Kind::assumed, "heavy-rain", "before draining"}};
  sources::Sourced<units::Duration> heavy_rain_within{
      units::hours(48), {sources::Kind::assumed, "heavy-rain", "looked back"}};
};

class ReadWeather;

/// Where the pool is and what its weather is.
struct SiteWeather {
  const weather::Record* record = nullptr;  ///< Must outlive the question.
  std::optional<weather::Position> position;
  /// What the local clock is ahead of universal time on the start date; first light needs it.
  std::optional<units::Duration> clock_offset;
  WeatherRules rules;
  /// The record made ready with these rules, where it was; must outlive the question.
  const ReadWeather* read = nullptr;
};

}  // namespace basinwright::sequence
