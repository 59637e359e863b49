// Records made hour by hour, for tests.
#pragma once

#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/record.hpp"

namespace weather_making {

using namespace basinwright;

/// An hour of plain painting weather: 20 C, 50 % (dew point 9.3 C), dry, a light wind.
inline weather::Hour fine(weather::Quality quality = weather::Quality::forecast) {
  weather::Hour h;
  h.air = {units::celsius(20), quality};
  h.humidity = {0.5, quality};
  h.rain = {units::Length(), quality};
  h.wind = {units::metres_per_second(2), quality};
  return h;
}

inline weather::Hour rainy(double millimetres) {
  weather::Hour h = fine();
  h.rain->value = units::millimetres(millimetres);
  return h;
}

inline weather::HourNumber hour(const std::string& moment) {
  return weather::hour_of(dates::parse_moment(moment).value());
}

/// Fine weather over whole days from midnight.
inline weather::Record fine_days(const std::string& from,
                                 int days,
                                 weather::Quality quality = weather::Quality::forecast) {
  weather::Record record;
  const weather::HourNumber first = hour(from);
  for (weather::HourNumber h = first; h < first + days * 24; ++h) record.put(h, fine(quality));
  return record;
}

/// The hours of a span, one step each.
inline std::vector<weather::HourNumber> hours_of(const std::string& from, int count) {
  std::vector<weather::HourNumber> out;
  for (int i = 0; i < count; ++i) out.push_back(hour(from) + i);
  return out;
}

}  // namespace weather_making
