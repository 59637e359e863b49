#include "repeats.hpp"

#include <algorithm>

namespace basinwright::sequence {
namespace {

using schedule::Slot;

constexpr int week = 7;
constexpr int in_day = static_cast<int>(dates::quarters_per_day);

// Slots from the anchor's end to the end of the last coat at most; nothing when a window is open.
std::optional<Slot> most_span(const schedule::Problem& problem) {
  const schedule::Units& units = problem.units;
  if (problem.chain.empty() || !problem.anchor.limit || problem.anchor.reclean || units.rework ||
      problem.facts) {
    return {};
  }
  Slot longest = 0;
  for (const auto& coat : units.slots) longest = std::max(longest, std::ranges::max(coat));
  Slot span = *problem.anchor.limit + longest;
  for (const schedule::Recoat& window : units.recoat) {
    if (window.max >= schedule::endless) return {};
    span += window.max;
  }
  return span;
}

// The first slot from which no weather speaks, not even of the hours before.
Slot past_weather(const ProgrammeQuestion& q, const Setting& setting, const Instance& instance) {
  if (setting.conditions == nullptr) return 0;
  const units::Duration before = std::max(q.system.limits.dry_before.value, q.waits.dry.value);
  const weather::HourNumber until = setting.conditions->until();
  const dates::Timeline& timeline = instance.timeline();
  const Slot slot = timeline.slot(dates::Moment::of_quarters(until * 4));
  return slot + quarters_up(before);
}

bool clock_stands(const ProgrammeQuestion& q, dates::Date from) {
  return std::ranges::none_of(q.calendar.clock_changes, [&](const dates::ClockChange& change) {
    return change.at.date() >= from && change.at.date() <= q.start + std::chrono::days{q.most_days};
  });
}

// No day of [from, until) is closed, and none after has painting hours beyond any of theirs.
bool alike(const ProgrammeQuestion& q, int from, int until) {
  const auto day = [&](int i) { return q.start + std::chrono::days{i}; };
  const bool closed = std::ranges::any_of(
      q.calendar.closed, [&](dates::Date date) { return day(from) <= date && date < day(until); });
  if (closed || !clock_stands(q, day(from))) return false;
  const bool sun_known = q.weather.position && q.weather.clock_offset;
  if (sun_known && std::ranges::count(q.calendar.from_first_light, true) > 0) return false;
  dates::Hours every = q.calendar.painting_hours(day(from));
  for (int i = from; i < until; ++i) {
    const dates::Hours hours = q.calendar.painting_hours(day(i));
    every = {std::max(every.from, hours.from), std::min(every.to, hours.to)};
  }
  for (int i = until; i < q.most_days; ++i) {
    const dates::Hours hours = q.calendar.painting_hours(day(i));
    if (hours.from < every.from || hours.to > every.to) return false;
  }
  return true;
}

}  // namespace

bool weeks_may_tell(const ProgrammeQuestion& question,
                    const Setting& setting,
                    const Instance& instance) {
  return most_span(instance.problem()) &&
         past_weather(question, setting, instance) < instance.timeline().size();
}

std::optional<int> days_that_tell(const ProgrammeQuestion& question,
                                  const Setting& setting,
                                  const Instance& instance,
                                  const schedule::Infeasible& reason) {
  const std::optional<Slot> span = most_span(instance.problem());
  if (reason.part != schedule::Infeasible::Part::unit || !span) return {};
  const Slot first = std::max(reason.earliest_anchor, past_weather(question, setting, instance));
  if (first >= instance.timeline().size()) return {};
  const int from = instance.timeline().day(first);
  // The rest of the first day, a week of anchors, the span and the rest of its last day.
  const int until = from + 1 + week + (*span + in_day - 1) / in_day + 1;
  if (until > question.most_days || !alike(question, from, until)) return {};
  return until;
}

std::optional<FirstDays> without_dates_alike(const ProgrammeQuestion& question, int told) {
  const dates::WorkCalendar& calendar = question.calendar;
  const auto day = [&](int i) { return question.start + std::chrono::days{i}; };
  const dates::Hours usual = calendar.painting_hours(question.start);
  const auto is_usual = [&](int i) {
    return std::ranges::find(calendar.closed, day(i)) == calendar.closed.end() &&
           calendar.painting_hours(day(i)) == usual;
  };
  // A drain that is longer by a week puts the etch off by a week, another first day to the week
  // after it at most.
  const int needed = told + 2 * week;
  if (needed > question.most_days) return {};
  for (int i = 0; i < needed; ++i) {
    if (!is_usual(i)) return {};
  }
  constexpr int most_apart = 4 * week;
  int first = 0;
  while (first > -most_apart && needed - first < question.most_days && is_usual(first - 1)) --first;
  int last = 0;
  while (last < most_apart && is_usual(needed + last)) ++last;
  for (int i = needed + last; i < question.most_days + last; ++i) {
    const dates::Hours hours = calendar.painting_hours(day(i));
    if (hours.from < usual.from || hours.to > usual.to) return {};
  }
  return FirstDays{day(first), day(last)};
}

}  // namespace basinwright::sequence
