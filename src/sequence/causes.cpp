#include "causes.hpp"

#include <algorithm>

namespace basinwright::sequence {
namespace {

using schedule::Slot;

constexpr std::size_t most_listed = 3;

bool is_open(const schedule::Calendar& calendar, Slot s) {
  return calendar[static_cast<std::size_t>(s)] != 0;
}

/// The slots of the date of a slot.
Span date_of(const dates::Timeline& timeline, Slot s) {
  const std::int32_t day = timeline.day(s);
  Span span{s, s};
  while (span.from > 0 && timeline.day(span.from - 1) == day) --span.from;
  while (span.to < timeline.size() && timeline.day(span.to) == day) ++span.to;
  return span;
}

bool has_room(const schedule::Calendar& calendar, Span day, Slot length) {
  Slot run = 0;
  for (Slot s = day.from; s < day.to; ++s) {
    run = is_open(calendar, s) ? run + 1 : 0;
    if (run >= length) return true;
  }
  return false;
}

bool same(const weather::Verdict& a, const weather::Verdict& b) {
  return a.hour == b.hour && a.unknown == b.unknown && a.measured == b.measured;
}

}  // namespace

std::vector<Held> weather_causes(const Instance& instance, const Gated& gated, Span between) {
  std::vector<Held> causes;
  const dates::Timeline& timeline = instance.timeline();
  const Span last_day = date_of(timeline, between.to);
  for (Slot s = between.from; s < between.to;) {
    const Span day = date_of(timeline, s);
    const Slot until = std::min(day.to, between.to);
    const bool own_day = day.from == last_day.from;
    while (s < until && !(is_open(gated.base, s) && !is_open(gated.open, s))) ++s;
    const bool closed = s < until;
    // On the task's own day only what came before it counts.
    if (closed && (own_day || !has_room(gated.open, day, gated.length))) {
      const weather::Verdict verdict = gated.gate.verdict(s);
      if (causes.empty() || !same(*causes.back().weather, verdict)) {
        if (causes.size() < most_listed) {
          causes.push_back({.by = Held::By::weather, .weather = verdict});
        } else {
          ++causes.back().more_days;
        }
      }
    }
    s = until;
  }
  return causes;
}

}  // namespace basinwright::sequence
