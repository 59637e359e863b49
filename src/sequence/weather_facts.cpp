#include "weather_facts.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using weather::Conditions;
using weather::HourNumber;

constexpr std::int64_t quarters_of_an_hour = 4;

dates::Moment moment_of(HourNumber hour) {
  return dates::Moment::of_quarters(hour * quarters_of_an_hour);
}

/// The last hour that ends by or after a moment's quarter before it.
HourNumber last_hour(dates::Moment end) {
  return weather::hour_of(dates::Moment::of_quarters(end.quarters() - 1));
}

const Booking* first_of(const Programme& programme, std::string_view task) {
  const auto it = std::ranges::find(programme.bookings, task, &Booking::task);
  return it == programme.bookings.end() ? nullptr : &*it;
}

// Both parts of a kit are of one kind, so every coat is looked at together.
std::optional<Hardener> hardener_of(const ProgrammeQuestion& q,
                                    const Conditions& conditions,
                                    const Programme& programme) {
  std::optional<Hardener> range;
  const auto after =
      static_cast<HourNumber>(std::ceil(q.system.limits.air_after.value.in(units::hours)-1e-6));
  for (const Booking& b : programme.bookings) {
    if (!b.task.starts_with("coat-")) continue;
    for (HourNumber h = weather::hour_of(b.start); h <= last_hour(b.end) + after; ++h) {
      const auto& air = conditions.at(h).air;
      if (!air) return {};
      if (!range) range = Hardener{{}, air->value, air->value};
      range->low = std::min(range->low, air->value);
      range->high = std::max(range->high, air->value);
    }
  }
  if (!range) return {};
  const units::Temperature border = q.system.cool_hardener_to.value;
  range->kind = range->high <= border  ? Hardener::Kind::cool
                : range->low >= border ? Hardener::Kind::standard
                                       : Hardener::Kind::straddles;
  return range;
}

void look_before_drain(const ProgrammeQuestion& q,
                       const Conditions& conditions,
                       Programme& programme) {
  const Booking* drain = first_of(programme, "drain");
  if (drain == nullptr) return;
  const WeatherRules& rules = q.weather.rules;
  const HourNumber start = weather::hour_of(drain->start);
  const auto within =
      static_cast<HourNumber>(std::lround(rules.heavy_rain_within.value.in(units::hours)));
  const units::Length fell = conditions.rain(start - within, start);
  if (fell >= rules.heavy_rain.value) programme.rain_before_drain = fell;
}

void look_after_test(const ProgrammeQuestion& q,
                     const Conditions& conditions,
                     Programme& programme) {
  const Booking* test = first_of(programme, "dryness-test");
  const auto coat =
      std::ranges::find_if(programme.bookings, [](const Booking& b) { return is_paint(b.task); });
  if (test == nullptr || coat == programme.bookings.end()) return;
  for (HourNumber h = last_hour(coat->start); h >= last_hour(test->end) + 1; --h) {
    const weather::State& state = conditions.at(h);
    const bool wet =
        state.rain ? state.rain->value >= q.weather.rules.least_rain.value : state.covered;
    if (!wet) continue;
    programme.rain_after_test = moment_of(h);
    return;
  }
}

WeatherBasis basis_of(const weather::Record& record) {
  bool forecast = false;
  for (HourNumber h = record.from(); h < record.until() && !forecast; ++h) {
    const weather::Hour& hour = record.at(h);
    for (const auto quality : {hour.air ? hour.air->quality : weather::Quality::missing,
                               hour.rain ? hour.rain->quality : weather::Quality::missing}) {
      forecast = forecast || quality == weather::Quality::forecast;
    }
  }
  return forecast ? WeatherBasis::forecast : WeatherBasis::replayed;
}

}  // namespace

void add_weather_basis(const SiteWeather& weather, Programme& programme) {
  if (weather.record == nullptr || weather.record->empty()) return;
  const weather::Record& record = *weather.record;
  programme.weather = basis_of(record);
  programme.weather_until = moment_of(record.covered_until());
  programme.climatology_beyond = record.until() > record.covered_until();
}

void add_weather_facts(const ProgrammeQuestion& question,
                       const Instance& instance,
                       Programme& programme) {
  if (!instance.outdoors().known()) return;
  const Conditions& conditions = instance.outdoors().conditions();
  if (!question.system.hardeners.empty()) {
    programme.hardener = hardener_of(question, conditions, programme);
  }
  look_before_drain(question, conditions, programme);
  look_after_test(question, conditions, programme);
}

}  // namespace basinwright::sequence
