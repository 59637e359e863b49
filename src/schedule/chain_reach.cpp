#include "chain_reach.hpp"

#include <functional>

#include "window_best.hpp"

namespace basinwright::schedule {
namespace {

// By end slot: the latest end of the anchor that leads there (0 before the anchor), or no_slot.
using Ends = std::vector<Slot>;

// The ends of a link's task from every end of the link before. Waiting is free, so every start in
// the lags' window counts; only the latest anchor does, for it has a maximum lag and no other.
Ends step(const Setting& setting, const Link& link, const Ends& before, Slot& earliest) {
  Ends after(before.size(), no_slot);
  WindowBest<Slot, std::greater<>> window;
  Slot entered = 0;
  const Openings& openings = setting.calendars[setting.problem.chain[link.task].calendar];
  const Slot last = std::min(setting.length - 1, link.until);
  for (Slot start = openings.next(link.from); start <= last; start = openings.next(start + 1)) {
    for (; entered <= start - link.lag_min; ++entered) {
      if (before[at(entered)] != no_slot) {
        window.enter(entered, before[at(entered)]);
      }
    }
    window.leave_before(start - link.lag_max);
    const Stretch stretch = setting.stretch(link, start);
    if (window.empty() || !stretch.possible()) {
      continue;
    }
    earliest = std::min(earliest, start);
    after[at(stretch.end)] = std::max(after[at(stretch.end)], window.best());
  }
  return after;
}

void reclean_deadlines(const Setting& setting, Slot from, std::vector<Slot>& deadline) {
  const Reclean& rule = *setting.problem.anchor.reclean;
  const Openings& openings = setting.calendars[rule.calendar];
  for (Slot start = openings.next(from); start < setting.length; start = openings.next(start + 1)) {
    const Stretch stretch = openings.resumed(start, rule.slots);
    if (!stretch.possible()) {
      return;
    }
    const Slot first = dry_after(setting, stretch.end);
    if (first < setting.length) {
      deadline[at(first)] = std::max(deadline[at(first)], setting.deadline(stretch.end));
    }
  }
}

void fill_deadlines(const Setting& setting, ChainReach& reach) {
  for (const ChainEnd& end : reach.ends) {
    const Slot first = dry_after(setting, end.end);
    if (first <= setting.length) {
      reach.deadline[at(first)] = std::max(reach.deadline[at(first)], end.deadline);
    }
  }
  if (setting.may_reclean() && !reach.ends.empty()) {
    reclean_deadlines(
        setting, std::max(setting.standing.clock, reach.ends.front().end), reach.deadline);
  }
  for (std::size_t slot = 1; slot < reach.deadline.size(); ++slot) {
    reach.deadline[slot] = std::max(reach.deadline[slot], reach.deadline[slot - 1]);
  }
}

}  // namespace

Slot dry_after(const Setting& setting, Slot wet) {
  const Slot wait = wet == no_slot ? 0 : wet + capped(setting.problem.anchor.dry);
  return std::max(setting.standing.clock, wait);
}

ChainReach chain_reach(const Setting& setting) {
  const Standing& standing = setting.standing;
  ChainReach reach;
  reach.earliest_anchor = standing.anchor;
  reach.deadline.assign(at(setting.length) + 1, no_slot);
  Ends ends(at(setting.length) + 1, no_slot);
  if (standing.clock <= setting.length) {
    ends[at(standing.clock)] = std::max<Slot>(standing.anchor, 0);
  }
  for (const Link& link : standing.links) {
    Slot earliest = never;
    ends = step(setting, link, ends, earliest);
    if (earliest == never) {
      return reach;
    }
    reach.earliest.push_back(earliest);
    if (reach.reached++ == standing.anchor_link) {
      reach.earliest_anchor = setting.stretch(link, earliest).end;
      for (std::size_t end = 0; end < ends.size(); ++end) {
        ends[end] = ends[end] != no_slot ? static_cast<Slot>(end) : no_slot;
      }
    }
  }
  for (Slot end = 0; end <= setting.length; ++end) {
    if (ends[at(end)] != no_slot) {
      const Slot wet = standing.links.empty() ? standing.wet : end;
      reach.ends.push_back({wet, setting.deadline(ends[at(end)])});
    }
  }
  fill_deadlines(setting, reach);
  return reach;
}

}  // namespace basinwright::schedule
