#include "outdoors.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "quarters.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;
using weather::Gate;
using weather::Outlook;

constexpr int steps_in_hour = 4;
}  // namespace

Outdoors::Outdoors(const ProgrammeQuestion& question,
                   const dates::Timeline& timeline,
                   const Setting& setting)
    : q_(question), setting_(setting) {
  if (!known()) return;
  const ReadWeather* read = q_.weather.read;
  const auto make = [&] { return table(timeline); };
  // By other conditions nothing is remembered.
  table_ = read != nullptr && &read->conditions() == setting_.conditions
               ? read->gates(gates_key(q_, setting_), make)
               : std::make_shared<const GateTable>(make());
  look_out(table_->hours);
}

void Outdoors::look_out(std::span<const weather::HourNumber> hours) {
  const auto outlook = [&](const Gate& gate) {
    return Outlook(*setting_.conditions, gate, {hours, steps_in_hour});
  };
  Gate frost;
  if (!setting_.dropped.has(Constraint::frost)) frost.air_min = q_.weather.rules.frost.value;
  // The sheets lie dry: none before, none while they are down.
  const units::Duration lies = q_.waits.dryness_test.value - units::minutes(15);
  coat_ = outlook(coat_gate());
  etch_ = outlook(frost);
  dry_work_ = outlook(rain_gate({}, {}));
  dryness_test_ = outlook(rain_gate(q_.waits.dry.value, lies));
  dry_shell_ = outlook(rain_gate(q_.waits.dry.value, {}));
}

GateTable Outdoors::table(const dates::Timeline& timeline) {
  GateTable table;
  table.hours.reserve(static_cast<std::size_t>(timeline.size()));
  for (Slot s = 0; s < timeline.size(); ++s)
    table.hours.push_back(weather::hour_of(timeline.moment(s)));
  look_out(table.hours);
  table.coat = coat_->calendar();
  table.etch = etch_->calendar();
  table.dry_work = dry_work_->calendar();
  table.dryness_test = dryness_test_->calendar();
  table.dry_shell = dry_shell_->calendar();
  return table;
}

Gate Outdoors::rain_gate(units::Duration before, units::Duration after) const {
  Gate gate;
  if (setting_.dropped.has(Constraint::rain)) return gate;
  gate.least_rain = q_.weather.rules.least_rain.value;
  gate.no_rain = true;
  gate.dry_before = before;
  gate.rain_free_after = std::max(units::Duration(), after);
  return gate;
}

Gate Outdoors::coat_gate() const {
  const materials::Limits& limits = q_.system.limits;
  const Dropped& dropped = setting_.dropped;
  Gate gate = rain_gate(limits.dry_before.value, limits.rain_free_after.value);
  gate.air_after = limits.air_after.value;
  gate.first_cure = limits.air_after.value;
  if (!dropped.has(Constraint::air)) {
    gate.air_min = limits.air_min.value;
    gate.air_max = limits.air_max.value;
  }
  if (!dropped.has(Constraint::shell)) {
    gate.shell_min = limits.shell_min.value;
    gate.shell_max = limits.shell_max.value;
  }
  if (!dropped.has(Constraint::dew_margin)) gate.dew_margin = limits.dew_margin.value;
  if (!dropped.has(Constraint::humidity)) gate.humidity_max = limits.humidity_max.value;
  if (limits.wind_max && !dropped.has(Constraint::wind)) gate.wind_max = limits.wind_max->value;
  return gate;
}

const Outlook* Outdoors::of_task(std::string_view task) const {
  if (!known()) return nullptr;
  if (is_etch(task)) return &*etch_;
  if (task == "dryness-test") return &*dryness_test_;
  return needs_dry_weather(task) ? &*dry_work_ : nullptr;
}

const std::vector<char>& Outdoors::open(const Outlook& gate) const {
  if (&gate == &*coat_) return table_->coat;
  if (&gate == &*etch_) return table_->etch;
  if (&gate == &*dryness_test_) return table_->dryness_test;
  return &gate == &*dry_shell_ ? table_->dry_shell : table_->dry_work;
}

schedule::Calendar Outdoors::under(const schedule::Calendar& base, const Outlook* gate) const {
  if (gate == nullptr) return base;
  schedule::Calendar open = this->open(*gate);
  for (std::size_t s = 0; s < open.size(); ++s) open[s] = base[s] != 0 ? open[s] : char{0};
  return open;
}

std::vector<char> Outdoors::wet() const {
  if (!known()) return {};
  std::vector<char> wet = table_->dry_work;
  for (char& slot : wet) slot = slot == 0 ? 1 : 0;
  return wet;
}

weather::Quality Outdoors::rests_on(dates::Moment from, dates::Moment to) const {
  if (!known()) return weather::Quality::missing;
  weather::Quality worst = weather::Quality::observed;
  const weather::HourNumber first = weather::hour_of(from);
  const weather::HourNumber last = weather::hour_of(dates::Moment::of_quarters(to.quarters() - 1));
  for (weather::HourNumber h = first; h <= std::max(first, last); ++h) {
    const weather::State& state = conditions().at(h);
    worst = std::min(worst, state.air ? state.air->quality : weather::Quality::missing);
    worst = std::min(worst, state.rain ? state.rain->quality : weather::Quality::missing);
  }
  return worst;
}

std::vector<dates::Hours> painting_hours(const ProgrammeQuestion& q, int days) {
  const SiteWeather& site = q.weather;
  const bool sun_known = site.position && site.clock_offset;
  std::vector<dates::Hours> out;
  for (int i = 0; i < days; ++i) {
    const dates::Date day = q.start + std::chrono::days{i};
    dates::Hours hours = q.calendar.painting_hours(day);
    if (sun_known && q.calendar.from_first_light[dates::month(day) - 1]) {
      units::Duration offset = *site.clock_offset;
      for (const dates::ClockChange& change : q.calendar.clock_changes) {
        if (change.at.date() > q.start && change.at.date() <= day)
          offset += units::minutes(change.minutes);
      }
      const weather::SunDay sun = weather::sun(*site.position, day, offset);
      // Light all night: from midnight; never light: the calendar's hours.
      const units::Duration dawn =
          sun.first_light ? *sun.first_light : units::hours(sun.down_all_day ? 24 : 0);
      const int from = std::max(0, quarters_up(dawn));
      hours.from = std::min(hours.from, from);
    }
    out.push_back(hours);
  }
  return out;
}

}  // namespace basinwright::sequence
