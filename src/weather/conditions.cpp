#include "basinwright/weather/conditions.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/weather/dew_point.hpp"

namespace basinwright::weather {
namespace {

constexpr std::size_t hours_of_day = 24;
// A clock change leaves a hole of an hour, and a file may miss a few.
constexpr int least_hours_of_a_day = 20;

// Inside the covered span only what was observed or forecast counts.
template <class T>
std::optional<Reading<T>> spoken(const std::optional<Reading<T>>& reading, bool covered) {
  const Quality least = covered ? Quality::forecast : Quality::climatology;
  return reading && reading->quality >= least ? reading : std::nullopt;
}

// The better of a given and a derived value; of equals the given one.
template <class T>
void take_better(std::optional<Reading<T>>& given, Reading<T> derived) {
  if (!given || derived.quality > given->quality) given = derived;
}

State state_of(const Hour& hour, bool covered) {
  State s;
  s.covered = covered;
  s.air = spoken(hour.air, covered);
  s.shell = spoken(hour.shell, covered);
  s.dew_point = spoken(hour.dew_point, covered);
  s.rain = spoken(hour.rain, covered);
  s.wind = spoken(hour.wind, covered);
  if (const auto humidity = spoken(hour.humidity, covered)) {
    s.humidity = {units::fraction(humidity->value), humidity->quality};
  }
  if (!s.air) return s;
  const auto given_dew = s.dew_point;
  if (s.humidity) {
    take_better(s.dew_point,
                {dew_point(s.air->value, s.humidity->value),
                 std::min(s.air->quality, s.humidity->quality)});
  }
  if (given_dew) {
    take_better(s.humidity,
                {relative_humidity(s.air->value, given_dew->value),
                 std::min(s.air->quality, given_dew->quality)});
  }
  return s;
}

}  // namespace

Conditions::Conditions(const Record& record, const sources::Sourced<units::Duration>& shell_lag)
    : from_(record.from()) {
  states_.reserve(static_cast<std::size_t>(record.until() - record.from()));
  for (HourNumber h = record.from(); h < record.until(); ++h) {
    const bool covered = h >= record.covered_from() && h < record.covered_until();
    states_.push_back(state_of(record.at(h), covered));
  }
  estimate_shell(shell_lag.value);
}

units::Temperature Conditions::first_day_mean(std::size_t from) const {
  units::TemperatureDifference sum;
  int known = 0;
  const units::Temperature base = states_[from].air->value;
  const std::size_t until = std::min(states_.size(), from + hours_of_day);
  for (std::size_t h = from; h < until; ++h) {
    if (!states_[h].air) continue;
    sum += states_[h].air->value - base;
    ++known;
  }
  return base + sum / known;
}

void Conditions::estimate_shell(units::Duration lag) {
  const double step =
      lag > units::Duration() ? 1.0 - std::exp(-units::hours(1).si() / lag.si()) : 1.0;
  std::optional<units::Temperature> shell;
  std::size_t last_known = 0;
  for (std::size_t h = 0; h < states_.size(); ++h) {
    State& s = states_[h];
    if (s.shell) shell = s.shell->value;
    if (s.air && !s.shell) {
      if (!shell || h - last_known > hours_of_day) shell = first_day_mean(h);
      shell = *shell + (s.air->value - *shell) * step;
      s.shell = {*shell, s.air->quality};
      s.shell_estimated = true;
    }
    if (s.shell) last_known = h;
  }
}

const State& Conditions::at(HourNumber hour) const {
  static const State nothing;
  const HourNumber i = hour - from_;
  if (i < 0 || i >= static_cast<HourNumber>(states_.size())) return nothing;
  return states_[static_cast<std::size_t>(i)];
}

std::optional<Reading<units::Temperature>> Conditions::day_mean(dates::Date day) const {
  const HourNumber first = hour_of(dates::Moment(day, 0));
  Reading<units::Temperature> mean{units::celsius(0), Quality::observed};
  units::TemperatureDifference sum;
  int known = 0;
  for (HourNumber h = first; h < first + static_cast<HourNumber>(hours_of_day); ++h) {
    const State& s = at(h);
    if (!s.air) continue;
    sum += s.air->value - mean.value;
    mean.quality = std::min(mean.quality, s.air->quality);
    ++known;
  }
  if (known < least_hours_of_a_day) return {};
  mean.value = mean.value + sum / known;
  return mean;
}

units::Length Conditions::rain(HourNumber from, HourNumber until) const {
  units::Length sum;
  for (HourNumber h = from; h < until; ++h) {
    if (at(h).rain) sum += at(h).rain->value;
  }
  return sum;
}

}  // namespace basinwright::weather
