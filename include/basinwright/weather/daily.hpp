// Days of weather made into hours by a stated, seeded method.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::weather {

/// What is known of a day; empty is unknown.
struct Day {
  dates::Date date;
  std::optional<units::Temperature> highest, lowest;
  std::optional<units::Length> rain;  ///< The whole day's.
  std::optional<units::Speed> wind;   ///< Its mean.
  std::optional<units::Temperature> dew_point;
};

/// The shape that the days are given.
struct DayShape {
  sources::Sourced<int> coldest_hour{6,
                                     {sources::Kind::assumed, "daily-hours", "coldest at 06:00"}};
  sources::Sourced<int> warmest_hour{15,
                                     {sources::Kind::assumed, "daily-hours", "warmest at 15:00"}};
  /// Hours of rain are so many times the root of the millimetres, 1 to `most_rain_hours`.
  sources::Sourced<double> rain_hours{
      2.0, {sources::Kind::assumed, "daily-hours", "hours of rain, twice the root of its mm"}};
  sources::Sourced<int> most_rain_hours{18,
                                        {sources::Kind::assumed, "daily-hours", "longest shower"}};
  /// Below the day's lowest temperature, where no dew point is given.
  sources::Sourced<units::TemperatureDifference> dew_below_dry{
      units::kelvins(2.0), {sources::Kind::assumed, "daily-hours", "dew point, dry day"}};
  sources::Sourced<units::TemperatureDifference> dew_below_wet{
      units::kelvins(0.5), {sources::Kind::assumed, "daily-hours", "dew point, day with rain"}};
  std::uint64_t seed = 2027;
};

/// One hour made from a day.
struct MadeHour {
  HourNumber at = 0;
  Hour known;
};

/// The hours of days, ascending.
///
/// Air: half a cosine from the lowest at `coldest_hour` to the highest at `warmest_hour`, and on to
/// the lowest of the next day (its own where that is missing); before the coldest hour down from
/// the day before. Rain: one shower of round(rain_hours sqrt(mm)) hours, at most one for each tenth
/// of a millimetre, all equally strong, beginning at an hour drawn from `seed` and the date, so
/// that a day is always made alike. Dew point: the day's, else under its lowest temperature, never
/// above the air. Wind: the day's mean in every hour.
///
/// Limits: the real hours are not known. A shower may have come at another hour, or as several; the
/// dew point is a guess; fog, wind and the warmth of a sheltered shell are not in it. Good for odds
/// over many days, not for the plan of a day.
/// @param days ascending, no date twice
[[nodiscard]] std::vector<MadeHour> hours_of(const std::vector<Day>& days,
                                             Quality quality,
                                             const DayShape& shape = {});

}  // namespace basinwright::weather
