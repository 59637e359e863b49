#include "chain_reach.hpp"

#include <algorithm>
#include <utility>

namespace basinwright::schedule {
namespace {

// Ends of the links so far, ascending, each with the latest anchor that leads there (0 before the
// anchor). A later end never needs an earlier anchor.
struct Ends {
  std::vector<Slot> slots;
  std::vector<Slot> anchors;
};

// The ways to do a link's task after every end of the link before. Waiting is free, so every start
// in the lags' window counts; only the latest anchor does, for it has a maximum lag and no other.
std::vector<Stretch> step(const Setting& setting, const Link& link, Ends& ends) {
  const std::vector<Slot>& open =
      setting.calendars[setting.problem.chain[link.task].calendar].slots();
  const auto first = std::lower_bound(open.begin(), open.end(), link.from);
  std::vector<Stretch> ways;
  ways.reserve(static_cast<std::size_t>(open.end() - first));
  Ends after;
  after.slots.reserve(ways.capacity());
  after.anchors.reserve(ways.capacity());
  std::size_t over = 0;  // ends whose lag is over
  for (auto start = first; start != open.end() && *start <= link.until; ++start) {
    while (over < ends.slots.size() && ends.slots[over] + link.lag_min <= *start) {
      ++over;
    }
    if (over == 0 || ends.slots[over - 1] + link.lag_max < *start) {
      continue;
    }
    const Stretch stretch = setting.stretch(link, *start);
    if (!stretch.possible()) {
      continue;
    }
    ways.push_back(stretch);
    after.slots.push_back(stretch.end);
    after.anchors.push_back(ends.anchors[over - 1]);
  }
  ends = std::move(after);
  return ways;
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
  const Slot first = standing.links.empty() ? std::max<Slot>(standing.wet, 0) : standing.clock;
  Ends ends{{first}, {reach.earliest_anchor}};
  for (const Link& link : standing.links) {
    std::vector<Stretch> ways = step(setting, link, ends);
    if (ways.empty()) {
      return reach;
    }
    if (reach.reached++ == standing.anchor_link) {
      reach.earliest_anchor = ways.front().end;
      ends.anchors = ends.slots;
    }
    reach.ways.push_back(std::move(ways));
  }
  reach.earliest_end = std::max(standing.clock, ends.slots.front());
  for (std::size_t one = 0; one < ends.slots.size(); ++one) {
    reach.latest_anchor[at(ends.slots[one])] = ends.anchors[one];
  }
  if (setting.may_reclean()) {
    add_recleans(setting, reach);
  }
  for (std::size_t slot = 1; slot < reach.latest_anchor.size(); ++slot) {
    reach.latest_anchor[slot] = std::max(reach.latest_anchor[slot], reach.latest_anchor[slot - 1]);
  }
  return reach;
}

}  // namespace basinwright::schedule
