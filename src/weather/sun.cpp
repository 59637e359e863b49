#include "basinwright/weather/sun.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "basinwright/units/unit.hpp"

namespace basinwright::weather {
namespace {

constexpr double minutes_in_day = 1440.0;
constexpr double minutes_in_degree = 4.0;
// Zenith angles: the upper limb with mean refraction, and civil twilight.
constexpr double rise_zenith = 90.833;
constexpr double light_zenith = 96.0;

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}
double degrees(double radians) {
  return radians * 180.0 / std::numbers::pi;
}

struct Sun {
  double declination = 0.0;       ///< Degrees.
  double equation_of_time = 0.0;  ///< Minutes the sundial is ahead of the clock.
};

// Low-accuracy position of the sun, Julian centuries after J2000.
Sun sun_at(double t) {
  const double mean_longitude = std::fmod(280.46646 + t * (36000.76983 + t * 0.0003032), 360.0);
  const double anomaly = radians(357.52911 + t * (35999.05029 - 0.0001537 * t));
  const double eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const double centre = std::sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) +
                        std::sin(2 * anomaly) * (0.019993 - 0.000101 * t) +
                        std::sin(3 * anomaly) * 0.000289;
  const double node = radians(125.04 - 1934.136 * t);
  const double longitude = radians(mean_longitude + centre - 0.00569 - 0.00478 * std::sin(node));
  const double mean_obliquity =
      23.0 + (26.0 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60.0) / 60.0;
  const double obliquity = radians(mean_obliquity + 0.00256 * std::cos(node));
  const double y = std::pow(std::tan(obliquity / 2), 2);
  const double l = radians(mean_longitude);
  const double time = y * std::sin(2 * l) - 2 * eccentricity * std::sin(anomaly) +
                      4 * eccentricity * y * std::sin(anomaly) * std::cos(2 * l) -
                      0.5 * y * y * std::sin(4 * l) -
                      1.25 * eccentricity * eccentricity * std::sin(2 * anomaly);
  return {degrees(std::asin(std::sin(obliquity) * std::sin(longitude))),
          minutes_in_degree * degrees(time)};
}

class SolarDay {
 public:
  SolarDay(Position position, dates::Date day, units::Duration offset)
      : position_(position), offset_(offset.in(units::minutes)) {
    constexpr double j2000 = 10957.5;  // Days from 1970-01-01T00:00 to 2000-01-01T12:00.
    day_ = static_cast<double>(day.time_since_epoch().count()) - j2000;
  }

  [[nodiscard]] double noon() const {
    double minutes = minutes_in_day / 2;
    for (int i = 0; i < rounds; ++i) minutes = noon_by(at(minutes));
    return minutes;
  }

  // Minutes after midnight at which the sun stands at a zenith angle, `side` -1 before noon and 1
  // after; nothing when it does not get there.
  [[nodiscard]] std::optional<double> passes(double zenith, double side) const {
    double minutes = noon();
    for (int i = 0; i < rounds; ++i) {
      const Sun sun = at(minutes);
      const double c = cosine(zenith, sun);
      if (c < -1.0 || c > 1.0) return {};
      minutes = noon_by(sun) + side * minutes_in_degree * degrees(std::acos(c));
    }
    return minutes;
  }

  /// The cosine of the hour angle at noon's declination: below -1 the sun stays above the zenith
  /// angle, above 1 below it.
  [[nodiscard]] double cosine_at_noon(double zenith) const { return cosine(zenith, at(noon())); }

 private:
  static constexpr int rounds = 4;

  [[nodiscard]] Sun at(double minutes) const {
    constexpr double days_in_century = 36525.0;
    return sun_at((day_ + (minutes - offset_) / minutes_in_day) / days_in_century);
  }
  [[nodiscard]] double noon_by(const Sun& sun) const {
    return minutes_in_day / 2 - minutes_in_degree * position_.longitude - sun.equation_of_time +
           offset_;
  }
  [[nodiscard]] double cosine(double zenith, const Sun& sun) const {
    const double latitude = radians(position_.latitude);
    const double declination = radians(sun.declination);
    return (std::cos(radians(zenith)) - std::sin(latitude) * std::sin(declination)) /
           (std::cos(latitude) * std::cos(declination));
  }

  Position position_;
  double offset_;
  double day_ = 0.0;
};

std::optional<units::Duration> time(std::optional<double> minutes) {
  return minutes ? std::optional(units::minutes(*minutes)) : std::nullopt;
}

}  // namespace

SunDay sun(Position position, dates::Date day, units::Duration offset) {
  // At a pole itself every hour angle is the same hour: a hair beside it is as good.
  constexpr double nearest_pole = 89.999;
  position.latitude = std::clamp(position.latitude, -nearest_pole, nearest_pole);
  const SolarDay at(position, day, offset);
  SunDay out;
  out.noon = units::minutes(at.noon());
  out.first_light = time(at.passes(light_zenith, -1));
  out.sunrise = time(at.passes(rise_zenith, -1));
  out.sunset = time(at.passes(rise_zenith, 1));
  out.last_light = time(at.passes(light_zenith, 1));
  if (!out.sunrise && !out.sunset) {
    out.up_all_day = at.cosine_at_noon(rise_zenith) < 0;
    out.down_all_day = !out.up_all_day;
  }
  return out;
}

}  // namespace basinwright::weather
