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

void add_recleans(const Setting& setting, ChainReach& reach) {
  const Reclean& rule = *setting.problem.anchor.reclean;
  const Openings& openings = setting.calendars[rule.calendar];
  for (Slot start = openings.next(reach.earliest_end); start < setting.length;
       start = openings.next(start + 1)) {
    const Stretch stretch = openings.resumed(start, rule.slots);
    if (!stretch.possible()) {
      return;
    }
    reach.latest_anchor[at(stretch.end)] = stretch.end;
  }
}

}  // namespace

Slot latest_first_coat(const Setting& setting, const ChainReach& reach, Slot start) {
  const bool wet = !setting.problem.chain.empty() || setting.standing.wet != no_slot;
  const Slot end = start - (wet ? capped(setting.problem.anchor.dry) : 0);
  const Slot anchor = end < 0 ? no_slot : reach.latest_anchor[at(end)];
  return anchor == no_slot ? no_slot : setting.deadline(anchor);
}

ChainReach chain_reach(const Setting& setting) {
  const Standing& standing = setting.standing;
  ChainReach reach;
  reach.earliest_anchor = std::max<Slot>(standing.anchor, 0);
  reach.latest_anchor.assign(at(setting.length) + 1, no_slot);
  if (standing.clock > setting.length) {
    return reach;
  }
  Ends ends = reach.latest_anchor;
  const Slot first = standing.links.empty() ? std::max<Slot>(standing.wet, 0) : standing.clock;
  ends[at(first)] = reach.earliest_anchor;
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
  const auto end = std::find_if(ends.begin(), ends.end(), [](Slot slot) { return slot >= 0; });
  reach.earliest_end = std::max(standing.clock, static_cast<Slot>(end - ends.begin()));
  reach.latest_anchor = ends;
  if (setting.may_reclean()) {
    add_recleans(setting, reach);
  }
  for (std::size_t slot = 1; slot < ends.size(); ++slot) {
    reach.latest_anchor[slot] = std::max(reach.latest_anchor[slot], reach.latest_anchor[slot - 1]);
  }
  return reach;
}

}  // namespace basinwright::schedule
