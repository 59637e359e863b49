// When the sun rises and sets, and when it is light enough to work.
//
// The equations of the NOAA solar calculator (after Meeus), evaluated again at the time of each
// event: within a minute of two astronomical libraries up to 70 degrees of latitude.
#pragma once

#include <optional>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::weather {

/// A place on the earth.
struct Position {
  double latitude = 0.0;   ///< Degrees north, -90 to 90.
  double longitude = 0.0;  ///< Degrees east, -180 to 180.
};

/// What a day has of the sun. Times are counted from local midnight and belong to the solar noon of
/// the day, so one may lie before the day or after it.
struct SunDay {
  std::optional<units::Duration> first_light;  ///< Civil dawn: the centre 6 degrees down.
  std::optional<units::Duration> sunrise;      ///< The upper limb, refraction included.
  std::optional<units::Duration> sunset;
  std::optional<units::Duration> last_light;  ///< Civil dusk.
  units::Duration noon;
  bool up_all_day = false;    ///< It does not set.
  bool down_all_day = false;  ///< It does not rise.
};

/// @param offset what the local clock is ahead of universal time
/// @source noaa-solar-equations
[[nodiscard]] SunDay sun(Position position, dates::Date day, units::Duration offset);

}  // namespace basinwright::weather
