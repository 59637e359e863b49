// Rows of tests/reference/weather_*.json: what the room computes for a row's `input`, laid out as
// its `expected`. Header only, so that a runner outside the test programs can compile it too.
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/dew_point.hpp"
#include "basinwright/weather/sun.hpp"

namespace weather_rows {

namespace units = basinwright::units;
namespace weather = basinwright::weather;
using nlohmann::json;

inline json moist_air(const json& in) {
  json out = json::object();
  const units::Temperature air = units::celsius(in.at("air_c").get<double>());
  if (in.contains("dew_point_c")) {
    const auto dew = units::celsius(in.at("dew_point_c").get<double>());
    out["humidity_percent"] = weather::relative_humidity(air, dew).in_percent();
  }
  if (!in.contains("humidity_percent")) return out;
  const auto dew = weather::dew_point(air, units::percent(in.at("humidity_percent").get<double>()));
  out["dew_point_c"] = dew.in(units::celsius);
  if (in.contains("shell_c")) {
    const units::Temperature shell = units::celsius(in.at("shell_c").get<double>());
    out["margin_k"] = weather::dew_margin(shell, dew).in(units::kelvins);
    out["surface_humidity_percent"] = weather::relative_humidity(shell, dew).in_percent();
  }
  return out;
}

inline json minutes_or_null(const std::optional<units::Duration>& time) {
  return time ? json(time->in(units::minutes)) : json();
}

inline json sun(const json& in) {
  const auto day = basinwright::dates::parse_date(in.at("date").get<std::string>());
  const weather::SunDay found =
      weather::sun({in.at("latitude").get<double>(), in.at("longitude").get<double>()},
                   day.value(),
                   units::minutes(in.at("utc_offset_min").get<double>()));
  return {{"first_light_min", minutes_or_null(found.first_light)},
          {"sunrise_min", minutes_or_null(found.sunrise)},
          {"sunset_min", minutes_or_null(found.sunset)}};
}

using Compute = json (*)(const json&);
inline const std::map<std::string, Compute>& by_subject() {
  static const std::map<std::string, Compute> all{{"weather-dew-point", moist_air},
                                                  {"weather-sun", sun}};
  return all;
}

}  // namespace weather_rows
