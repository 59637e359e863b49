#include "basinwright/weather/dew_point.hpp"

#include <algorithm>
#include <cmath>

namespace basinwright::weather {
namespace {

constexpr double least_humidity = 0.01;

// b T / (c + T), the exponent of the saturation pressure.
double exponent(units::Temperature t) {
  const double degrees = t.in(units::celsius);
  return magnus.value.b * degrees / (magnus.value.c.si() + degrees);
}

}  // namespace

units::Temperature dew_point(units::Temperature air, units::Fraction humidity) {
  const double g = std::log(std::max(humidity.share(), least_humidity)) + exponent(air);
  return units::celsius(magnus.value.c.si() * g / (magnus.value.b - g));
}

units::Fraction relative_humidity(units::Temperature air, units::Temperature dew_point) {
  return units::fraction(std::exp(exponent(dew_point) - exponent(air)));
}

units::TemperatureDifference dew_margin(units::Temperature shell, units::Temperature dew_point) {
  return shell - dew_point;
}

}  // namespace basinwright::weather
