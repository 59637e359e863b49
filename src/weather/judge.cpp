#include "judge.hpp"

#include <cmath>

#include "basinwright/weather/dew_point.hpp"

namespace basinwright::weather {
namespace {

// As people read it: 8.7 less 5.7 is 3.00, whatever the binary digits say.
std::int64_t hundredths(double value) {
  constexpr double steps = 100.0;
  return std::llround(value * steps);
}
std::int64_t hundredths(units::Temperature t) {
  return hundredths(t.in(units::celsius));
}
std::int64_t hundredths(units::TemperatureDifference d) {
  return hundredths(d.in(units::kelvins));
}
std::int64_t hundredths(units::Fraction f) {
  return hundredths(f.in_percent());
}
std::int64_t hundredths(units::Length l) {
  return hundredths(l.in(units::millimetres));
}
std::int64_t hundredths(units::Speed s) {
  return hundredths(s.in(units::metres_per_second));
}

template <class T>
Judged at_least(const std::optional<Reading<T>>& reading, T limit) {
  if (!reading) return {.limit = limit};
  return {true,
          hundredths(reading->value) >= hundredths(limit),
          reading->quality,
          reading->value,
          limit};
}

template <class T>
Judged at_most(const std::optional<Reading<T>>& reading, T limit) {
  if (!reading) return {.limit = limit};
  return {true,
          hundredths(reading->value) <= hundredths(limit),
          reading->quality,
          reading->value,
          limit};
}

Judged less_than(const std::optional<Reading<units::Length>>& reading, units::Length limit) {
  if (!reading) return {.limit = limit};
  return {true,
          hundredths(reading->value) < hundredths(limit),
          reading->quality,
          reading->value,
          limit};
}

std::optional<Reading<units::TemperatureDifference>> margin_of(const State& s) {
  if (!s.shell || !s.dew_point) return {};
  return Reading<units::TemperatureDifference>{dew_margin(s.shell->value, s.dew_point->value),
                                               std::min(s.shell->quality, s.dew_point->quality)};
}

}  // namespace

Judged judge(Rule rule, const Gate& gate, const State& state) {
  switch (rule) {
    case Rule::air_min:
      return at_least(state.air, *gate.air_min);
    case Rule::air_max:
      return at_most(state.air, *gate.air_max);
    case Rule::shell_min:
      return at_least(state.shell, *gate.shell_min);
    case Rule::shell_max:
      return at_most(state.shell, *gate.shell_max);
    case Rule::dew_margin:
      return at_least(margin_of(state), *gate.dew_margin);
    case Rule::humidity:
      return at_most(state.humidity, *gate.humidity_max);
    case Rule::rain:
    case Rule::dry_before:
      return less_than(state.rain, gate.least_rain);
    case Rule::wind:
      return at_most(state.wind, *gate.wind_max);
  }
  return {};
}

}  // namespace basinwright::weather
