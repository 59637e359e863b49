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

// The ways to do a link's task after every way of the link before. Waiting is free, so every start
// in the lags' window counts; only the latest anchor does, for it has a maximum lag and no other.
// `make` makes one of the open slot of a rank, or says that there is none.
template <class Make>
Reached follow(const Link& link, const Openings& openings, const Reached& before, Make make) {
  const std::vector<Slot>& open = openings.slots();
  // Nothing starts before the lag of the earliest way is over.
  const std::size_t first =
      openings.rank_from(std::max(link.from, before.ways.front().end + link.lag_min));
  Reached after{{}, {}, before.only_anchor};
  after.ways.resize(open.size() - first);
  after.anchors.resize(before.anchors.empty() ? 0 : after.ways.size());
  std::size_t made = 0;
  std::size_t over = 0;  // ends whose lag is over
  for (std::size_t rank = first; rank < open.size() && open[rank] <= link.until; ++rank) {
    const Slot start = open[rank];
    while (over < before.ways.size() && before.ways[over].end + link.lag_min <= start) {
      ++over;
    }
    if (before.ways[over - 1].end + link.lag_max < start || !make(rank, after.ways[made])) {
      continue;
    }
    if (!after.anchors.empty()) {
      after.anchors[made] = before.anchors[over - 1];
    }
    ++made;
  }
  after.ways.resize(made);
  after.anchors.resize(after.anchors.empty() ? 0 : made);
  return after;
}

// Hands `use` what makes a way of a link's task from the open slot of a rank.
template <class Use>
auto with_ways(const Setting& setting, const Link& link, Use use) {
  const Task& task = setting.problem.chain[link.task];
  const Openings& openings = setting.calendars[task.calendar];
  const Slot slots = task.slots;
  switch (task.kind) {
    case Kind::attended:
      return use(openings, [&openings, slots](std::size_t rank, Stretch& way) {
        return openings.resume(rank, slots, way);
      });
    case Kind::one_shift:
      return use(openings, [&openings, slots](std::size_t rank, Stretch& way) {
        return openings.go_through(rank, slots, way);
      });
    case Kind::unattended:
      break;
  }
  const Slot latest = setting.length - slots;
  return use(openings, [&openings, slots, latest](std::size_t rank, Stretch& way) {
    const Slot start = openings.slots()[rank];
    way.start = start;
    way.end = start + slots;
    return start <= latest;
  });
}

Reached step(const Setting& setting, const Link& link, const Reached& before) {
  return with_ways(setting, link, [&](const Openings& openings, auto make) {
    return follow(link, openings, before, make);
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
  const Slot last = std::min({rule.until, latest, setting.length - 1});
  return with_ways(setting, rule, [&](const Openings& openings, auto make) {
    const std::vector<Slot>& open = openings.slots();
    const std::size_t first = openings.rank_from(reach.earliest[link].start);
    std::vector<Stretch> ways(std::max(openings.rank_from(last + 1), first) - first);
    std::size_t made = 0;
    for (std::size_t rank = first; rank < open.size() && open[rank] <= last; ++rank) {
      if (make(rank, ways[made]) && ways[made].end <= latest) {
        ++made;
      }
    }
    ways.resize(made);
    return ways;
  });
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
