#include "weather_values.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>

#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::readers {
namespace {

constexpr double celsius(double value) {
  return units::celsius(value).si();
}

// Wider than anything on record (WMO archive of extremes, from memory: -89.2 and 56.7 C, 305 mm in
// an hour, gusts of 113 m/s); a painted shell in the sun gets hotter than the air.
constexpr std::array<VariableRow, variable_count> rows{
    {{Variable::air, "air temperature", celsius(-90), celsius(60), "-90 and 60 C"},
     {Variable::humidity, "relative humidity", 0.0, 1.0, "0 and 100 %"},
     {Variable::dew_point, "dew point", celsius(-100), celsius(40), "-100 and 40 C"},
     {Variable::rain, "rain", 0.0, 0.5, "0 and 500 mm in an hour"},
     {Variable::wind, "wind speed", 0.0, 120.0, "0 and 120 m/s"},
     {Variable::cloud, "cloud", 0.0, 1.0, "0 and 100 %"},
     {Variable::shell, "shell temperature", celsius(-60), celsius(90), "-60 and 90 C"}}};

struct UnitOf {
  Variable variable;
  WeatherUnit unit;
};

constexpr double per_cent(double value) {
  return value / 100.0;
}

constexpr std::array<UnitOf, 15> units_of{
    {{Variable::air, {"\u00B0C", [](double v) { return units::celsius(v).si(); }}},
     {Variable::air, {"\u00B0F", [](double v) { return units::fahrenheit(v).si(); }}},
     {Variable::humidity, {"%", per_cent}},
     {Variable::rain, {"mm", [](double v) { return units::millimetres(v).si(); }}},
     {Variable::rain, {"cm", [](double v) { return units::centimetres(v).si(); }}},
     {Variable::rain, {"inch", [](double v) { return units::inches(v).si(); }}},
     {Variable::rain, {"in", [](double v) { return units::inches(v).si(); }}},
     {Variable::wind, {"m/s", [](double v) { return units::metres_per_second(v).si(); }}},
     {Variable::wind, {"ms", [](double v) { return units::metres_per_second(v).si(); }}},
     {Variable::wind, {"km/h", [](double v) { return units::kilometres_per_hour(v).si(); }}},
     {Variable::wind, {"mp/h", [](double v) { return units::miles_per_hour(v).si(); }}},
     {Variable::wind, {"mph", [](double v) { return units::miles_per_hour(v).si(); }}},
     {Variable::wind, {"kn", [](double v) { return units::knots(v).si(); }}},
     {Variable::cloud, {"%", per_cent}},
     {Variable::cloud, {"tenths", [](double v) { return v / 10.0; }}}}};

/// Every temperature is measured in the units of the air's.
bool measures(const UnitOf& row, Variable variable) {
  const bool degrees = variable == Variable::dew_point || variable == Variable::shell;
  return row.variable == (degrees ? Variable::air : variable);
}

template <class T>
weather::Reading<T> reading(double si, weather::Quality quality) {
  return {T::from_si(si), quality};
}

}  // namespace

const VariableRow& row_of(Variable variable) {
  return rows.at(static_cast<std::size_t>(variable));
}

const WeatherUnit* unit_named(Variable variable, std::string_view name) {
  const auto it = std::ranges::find_if(units_of, [&](const UnitOf& row) {
    return measures(row, variable) && row.unit.name == name;
  });
  return it == units_of.end() ? nullptr : &it->unit;
}

std::string unit_names(Variable variable) {
  std::string out;
  for (const UnitOf& row : units_of) {
    if (!measures(row, variable)) continue;
    out += (out.empty() ? "" : ", ") + std::string(row.unit.name);
  }
  return out;
}

void set(weather::Hour& hour, Variable variable, double si, weather::Quality quality) {
  switch (variable) {
    case Variable::air:
      hour.air = reading<units::Temperature>(si, quality);
      return;
    case Variable::humidity:
      hour.humidity = {si, quality};
      return;
    case Variable::dew_point:
      hour.dew_point = reading<units::Temperature>(si, quality);
      return;
    case Variable::rain:
      hour.rain = reading<units::Length>(si, quality);
      return;
    case Variable::wind:
      hour.wind = reading<units::Speed>(si, quality);
      return;
    case Variable::cloud:
      hour.cloud = {si, quality};
      return;
    case Variable::shell:
      hour.shell = reading<units::Temperature>(si, quality);
      return;
  }
}

std::optional<double> finite_number(std::string_view text) {
  double value = 0.0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value, std::chars_format::general);
  if (error != std::errc() || stop != end || !std::isfinite(value)) return {};
  return value;
}

}  // namespace basinwright::readers
