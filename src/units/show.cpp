#include "basinwright/units/show.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace basinwright::units {
namespace {

constexpr Unit<EdgeRate> feet_per_hour{feet.factor / hours.factor, "ft/h"};

/// `value` without what lies beyond the digits a double is sure of.
double steady(double value) {
  constexpr int sure_digits = 15;
  constexpr std::size_t room = 32;
  std::array<char, room> text{};
  const auto end =
      std::to_chars(
          text.data(), text.data() + room, value, std::chars_format::scientific, sure_digits - 1)
          .ptr;
  double out = value;
  std::from_chars(text.data(), end, out);
  return out;
}

/// A point on a scale is kept as a large number of kelvins, so its noise is the larger.
double steady_point(double degrees) {
  constexpr double finest = 1e9;
  return std::round(degrees * finest) / finest;
}

std::string spelled(std::string_view symbol, Signs signs) {
  if (signs == Signs::ascii) return std::string(symbol);
  if (symbol == micrometres.symbol) return "\u00B5m";
  std::string out;
  for (const char c : symbol) {
    if (c == '2') {
      out += "\u00B2";
    } else if (c == '3') {
      out += "\u00B3";
    } else {
      out += c;
    }
  }
  return out;
}

std::string degrees(double value, std::string_view scale, int decimals, Signs signs) {
  const std::string mark(signs == Signs::utf8 ? "\u00B0" : "");
  return with_unit(value, mark + std::string(scale), decimals, signs);
}

std::string feet_and_inches(Length length, int decimals) {
  constexpr double inches_in_foot = 12.0;
  const double scale = std::pow(10.0, decimals);
  const double total = steady(std::abs(length.in(inches)));
  // Rounded as a whole first: 11.96 in must become 1 ft 0.0 in.
  double rounded = total;
  const std::string text = fixed(total, decimals);
  std::from_chars(text.data(), text.data() + text.size(), rounded);
  const double whole = std::floor(rounded / inches_in_foot);
  const double rest = std::round((rounded - whole * inches_in_foot) * scale) / scale;
  std::string out = length < Length() && rounded > 0.0 ? "-" : "";
  if (whole > 0.0) out += fixed(whole, 0) + " ft ";
  return out + fixed(rest, decimals) + " in";
}

}  // namespace

std::string with_unit(double value, std::string_view symbol, int decimals, Signs signs) {
  return fixed(steady(value), decimals) + " " + spelled(symbol, signs);
}

std::string show(Length length, System system, int decimals, Signs signs) {
  if (system == System::us) return feet_and_inches(length, std::max(decimals - 2, 0));
  return show_in(length, metres, decimals, signs);
}

std::string show_film(Length film, System system, int decimals, Signs signs) {
  return show_in(film, system == System::us ? mils : micrometres, decimals, signs);
}

std::string show(Area area, System system, int decimals, Signs signs) {
  return show_in(area, system == System::us ? square_feet : square_metres, decimals, signs);
}

std::string show(Volume volume, System system, int decimals, Signs signs) {
  return show_in(volume, system == System::us ? us_gallons : litres, decimals, signs);
}

std::string show_bulk(Volume volume, System system, int decimals, Signs signs) {
  if (system == System::us) return show_in(volume, us_gallons, std::max(decimals - 2, 0), signs);
  return show_in(volume, cubic_metres, decimals, signs);
}

std::string show(Mass mass, System system, int decimals, Signs signs) {
  return show_in(mass, system == System::us ? pounds : kilograms, decimals, signs);
}

std::string show(Temperature point, System system, int decimals, Signs signs) {
  const TemperatureScale& scale = system == System::us ? fahrenheit : celsius;
  return degrees(steady_point(point.in(scale)), scale.symbol, decimals, signs);
}

std::string show(TemperatureDifference difference, System system, int decimals, Signs signs) {
  const bool us = system == System::us;
  const double value = difference.in(us ? fahrenheit_degrees : kelvins);
  return degrees(value, (us ? fahrenheit : celsius).symbol, decimals, signs);
}

std::string show(Flow flow, System system, int decimals, Signs signs) {
  return show_in(
      flow, system == System::us ? us_gallons_per_minute : litres_per_minute, decimals, signs);
}

std::string show(WorkRate rate, System system, int decimals, Signs signs) {
  return show_in(
      rate, system == System::us ? square_feet_per_hour : square_metres_per_hour, decimals, signs);
}

std::string show(EdgeRate rate, System system, int decimals, Signs signs) {
  return show_in(rate, system == System::us ? feet_per_hour : metres_per_hour, decimals, signs);
}

std::string show(SpreadingRate rate, System system, int decimals, Signs signs) {
  const bool us = system == System::us;
  return show_in(rate, us ? square_feet_per_us_gallon : square_metres_per_litre, decimals, signs);
}

std::string show_application(ApplicationRate rate, System system, int decimals, Signs signs) {
  const bool us = system == System::us;
  return show_in(rate, us ? us_gallons_per_square_foot : litres_per_square_metre, decimals, signs);
}

std::string show(Concentration concentration, int decimals, Signs signs) {
  return show_in(concentration, grams_per_litre, decimals, signs);
}

std::string show(Duration duration, int decimals) {
  constexpr double least_days = 2.0;
  const double in_days = steady(duration.in(days));
  if (std::abs(in_days) >= least_days && in_days == std::round(in_days)) {
    return with_unit(in_days, days.symbol, 0, Signs::ascii);
  }
  return show_in(duration, hours, decimals, Signs::ascii);
}

std::string show(Fraction fraction, int decimals) {
  return with_unit(fraction.in_percent(), "%", decimals, Signs::ascii);
}

}  // namespace basinwright::units
