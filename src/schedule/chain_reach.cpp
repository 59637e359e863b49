#include "chain_reach.hpp"

#include <algorithm>
#include <utility>

namespace basinwright::schedule {
namespace {

// Where the links so far lead: the ways to do the last of them, and for each the latest anchor that
// it can follow, which a later way never has earlier. Before the anchor that is one for all.
struct Reached {
  std::vector<Stretch> ways;
  std::vector<Slot> anchors;
  Slot only_anchor = 0;

  [[nodiscard]] Slot anchor(std::size_t way) const {
    return anchors.empty() ? only_anchor : anchors[way];
  }
};

// Copied whole, a way would wait for its parts to reach memory first.
void add(std::vector<Stretch>& ways, const Stretch& stretch) {
  Stretch& way = ways.emplace_back();
  way.start = stretch.start;
  way.end = stretch.end;
  way.labour = stretch.labour;
  way.dates = stretch.dates;
}

// The ways to do a link's task after every way of the link before. Waiting is free, so every start
// in the lags' window counts; only the latest anchor does, for it has a maximum lag and no other.
// `way` makes one of an open slot and its rank.
template <class Way>
Reached follow(const Link& link, const Openings& openings, const Reached& before, Way way) {
  const std::vector<Slot>& open = openings.slots();
  // Nothing starts before the lag of the earliest way is over.
  std::size_t rank =
      openings.rank_from(std::max(link.from, before.ways.front().end + link.lag_min));
  Reached after{{}, {}, before.only_anchor};
  after.ways.reserve(open.size() - rank);
  const bool anchored = !before.anchors.empty();
  if (anchored) after.anchors.reserve(open.size() - rank);
  const std::size_t count = before.ways.size();
  std::size_t over = 0;  // ends whose lag is over
  for (; rank < open.size() && open[rank] <= link.until; ++rank) {
    const Slot start = open[rank];
    while (over < count && before.ways[over].end + link.lag_min <= start) {
      ++over;
    }
    if (before.ways[over - 1].end + link.lag_max < start) {
      continue;
    }
    const Stretch stretch = way(rank, start);
    if (stretch.possible()) {
      add(after.ways, stretch);
      if (anchored) after.anchors.push_back(before.anchors[over - 1]);
    }
  }
  return after;
}

Reached step(const Setting& setting, const Link& link, const Reached& before) {
  const Task& task = setting.problem.chain[link.task];
  const Openings& openings = setting.calendars[task.calendar];
  const Slot slots = task.slots;
  const Slot length = setting.length;
  switch (task.kind) {
    case Kind::attended:
      return follow(link, openings, before, [&openings, slots](std::size_t rank, Slot) {
        return openings.resumed_at(rank, slots);
      });
    case Kind::one_shift:
      return follow(link, openings, before, [&openings, slots](std::size_t rank, Slot start) {
        return openings.unbroken_at(rank, start, slots);
      });
    case Kind::unattended:
      break;
  }
  return follow(link, openings, before, [slots, length](std::size_t, Slot start) {
    return start + slots <= length ? Stretch{start, start + slots, 0, 0} : Stretch{};
  });
}

// The first link whose ways are all wanted: of links before it, each waited for without end, the
// earliest way is enough.
std::size_t first_whole(const Standing& standing) {
  if (standing.anchor_link == no_link) {
    return 0;
  }
  std::size_t whole = 0;
  while (whole < standing.anchor_link && standing.links[whole + 1].lag_max == never &&
         standing.links[whole + 1].until == never) {
    ++whole;
  }
  return whole;
}

// The earliest way alone.
Reached first_step(const Setting& setting, const Link& link, const Stretch& before) {
  Reached after{{}, {}, std::max<Slot>(setting.standing.anchor, 0)};
  const Openings& openings = setting.calendars[setting.problem.chain[link.task].calendar];
  const Slot last = std::min(link.until, before.end + link.lag_max);
  Slot start = openings.next(std::max(link.from, before.end + link.lag_min));
  for (; start < setting.length && start <= last; start = openings.next(start + 1)) {
    const Stretch stretch = setting.stretch(link, start);
    if (stretch.possible()) {
      after.ways.push_back(stretch);
      break;
    }
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

std::vector<Stretch> ways_until(const Setting& setting,
                                const ChainReach& reach,
                                std::size_t link,
                                Slot latest) {
  const Link& rule = setting.standing.links[link];
  const std::vector<Slot>& open =
      setting.calendars[setting.problem.chain[rule.task].calendar].slots();
  const Slot last = std::min({rule.until, latest, setting.length - 1});
  const auto first = std::lower_bound(open.begin(), open.end(), reach.earliest[link].start);
  const auto end = std::upper_bound(first, open.end(), last);
  std::vector<Stretch> ways;
  ways.reserve(static_cast<std::size_t>(end - first));
  for (auto start = first; start != end; ++start) {
    const Stretch stretch = setting.stretch(rule, *start);
    if (stretch.possible() && stretch.end <= latest) {
      add(ways, stretch);
    }
  }
  return ways;
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
  Reached last{{{first, first, 0, 0}}, {}, reach.earliest_anchor};
  const std::size_t whole = first_whole(standing);
  // The ways of the link before are needed once more, and then kept, not copied.
  const auto keep = [&reach, whole](std::vector<Stretch>& ways) {
    if (reach.reached > whole) {
      reach.ways.back() = std::move(ways);
    }
  };
  for (const Link& link : standing.links) {
    const bool left_out = reach.reached < whole;
    Reached next =
        left_out ? first_step(setting, link, last.ways.front()) : step(setting, link, last);
    keep(last.ways);
    last = std::move(next);
    if (last.ways.empty()) {
      return reach;
    }
    if (reach.reached++ == standing.anchor_link) {
      reach.earliest_anchor = last.ways.front().end;
      for (const Stretch& way : last.ways) {
        last.anchors.push_back(way.end);
      }
    }
    reach.earliest.push_back(last.ways.front());
    reach.ways.emplace_back();
  }
  reach.earliest_end = std::max(standing.clock, last.ways.front().end);
  for (std::size_t way = 0; way < last.ways.size(); ++way) {
    reach.latest_anchor[at(last.ways[way].end)] = last.anchor(way);
  }
  keep(last.ways);
  if (setting.may_reclean()) {
    add_recleans(setting, reach);
  }
  for (std::size_t slot = 1; slot < reach.latest_anchor.size(); ++slot) {
    reach.latest_anchor[slot] = std::max(reach.latest_anchor[slot], reach.latest_anchor[slot - 1]);
  }
  return reach;
}

}  // namespace basinwright::schedule
