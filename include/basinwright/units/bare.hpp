// What a bare number means in each unit system.
#pragma once

#include "basinwright/units/parse.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::units {

/// A bare number as a quantity: metric m, m2, L, kg, C, h; us ft, ft2, US gal, lb, F, h.
[[nodiscard]] constexpr Length bare_length(double v, System s) {
  return s == System::us ? feet(v) : metres(v);
}
[[nodiscard]] constexpr Area bare_area(double v, System s) {
  return s == System::us ? square_feet(v) : square_metres(v);
}
[[nodiscard]] constexpr Volume bare_volume(double v, System s) {
  return s == System::us ? us_gallons(v) : litres(v);
}
[[nodiscard]] constexpr Mass bare_mass(double v, System s) {
  return s == System::us ? pounds(v) : kilograms(v);
}
[[nodiscard]] constexpr Temperature bare_temperature(double v, System s) {
  return s == System::us ? fahrenheit(v) : celsius(v);
}
[[nodiscard]] constexpr TemperatureDifference bare_temperature_difference(double v, System s) {
  return s == System::us ? fahrenheit_degrees(v) : kelvins(v);
}
[[nodiscard]] constexpr Flow bare_flow(double v, System s) {
  return s == System::us ? us_gallons_per_minute(v) : litres_per_minute(v);
}
[[nodiscard]] constexpr WorkRate bare_work_rate(double v, System s) {
  return s == System::us ? square_feet_per_hour(v) : square_metres_per_hour(v);
}

}  // namespace basinwright::units
