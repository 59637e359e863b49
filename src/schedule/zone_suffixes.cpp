#include "zone_suffixes.hpp"

#include <algorithm>
#include <numeric>

namespace basinwright::schedule {

ZoneSuffixes::ZoneSuffixes(const Setting& setting,
                           const UnitStarts& starts,
                           const ChainReach& reach,
                           Question question)
    : setting_(setting),
      starts_(starts),
      reach_(reach),
      wet_chain_(!setting.standing.links.empty() || setting.standing.wet != no_slot),
      question_(question),
      stages_(setting),
      clock_(setting.sections() + 1),
      wet_(clock_ + 1),
      anchor_(clock_ + 2),
      spare_(clock_ + 3),
      pieces_(setting.coats() * setting.sections()),
      by_level_(pieces_.size() + 1) {}

bool ZoneSuffixes::run(std::size_t effort) {
  const std::vector<Day> all = days();
  for (auto day = all.rbegin(); day != all.rend(); ++day) {
    if (!open(*day)) {
      continue;
    }
    clean();
    roots(*day);
    for (std::size_t level = by_level_.size(); level-- > 0;) {
      for (std::size_t place = 0; place < by_level_[level].size(); ++place) {
        for (const Label& label : waiting_[by_level_[level][place]]) {
          expand(label);  // may add stages
        }
      }
    }
    if (count_ > effort) {
      return false;
    }
  }
  std::sort(paintings_.begin(), paintings_.end());
  paintings_.erase(std::unique(paintings_.begin(), paintings_.end()), paintings_.end());
  return true;
}

bool ZoneSuffixes::complete(std::size_t stage) const {
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (moving(stages_.done(stage), section)) {
      return false;
    }
  }
  return true;
}

std::vector<ZoneSuffixes::Day> ZoneSuffixes::days() const {
  std::vector<Day> result;
  const Slot first = setting_.standing.clock;
  if (first < setting_.length) {
    result.reserve(at(setting_.date(setting_.length - 1) - setting_.date(first)) + 1);
  }
  const auto begin = setting_.problem.date_of.begin();
  for (Slot from = first; from < setting_.length;) {
    const auto next = std::upper_bound(begin + from, begin + setting_.length, setting_.date(from));
    const auto to = static_cast<Slot>(next - begin);
    result.push_back({from, to});
    from = to;
  }
  return result;
}

// Finds the pieces of a day; false when it has none.
bool ZoneSuffixes::open(Day day) {
  today_ = setting_.date(day.from);
  last_end_ = no_slot;
  for (std::size_t coat = 0; coat < setting_.coats(); ++coat) {
    for (std::size_t section = 0; section < setting_.sections(); ++section) {
      std::vector<Piece>& pieces = pieces_[coat * setting_.sections() + section];
      pieces.clear();
      if (coat < setting_.standing.sections[section].done) {
        continue;
      }
      const Slot slots = setting_.slots(coat, section);
      const StartSet& set = starts_.of(coat, section);
      for (Slot start = set.next(day.from); start < day.to; start = set.next(start + 1)) {
        const auto labour =
            question_.priced ? setting_.painting().unbroken(start, slots).labour : 0;
        if (!pieces.empty() && pieces.back().until + 1 == start && pieces.back().labour == labour) {
          pieces.back().until = start;
        } else {
          pieces.push_back({start, start, labour});
        }
        last_end_ = std::max(last_end_, start + slots);
      }
    }
  }
  return last_end_ != no_slot;
}

// Work now ends on the new date or before: what that leaves of the labels.
void ZoneSuffixes::clean() {
  for (Labels& labels : waiting_) {
    clean(labels);
  }
}

void ZoneSuffixes::clean(Labels& labels) {
  Labels left;
  for (Label& label : labels) {
    label.tally.splits += ones(label.open_coats);
    label.open_coats = 0;
    if (!label.zone.tighten(clock_, 0, last_end_) || !settle(label)) {
      continue;
    }
    const bool covered = std::any_of(
        left.begin(), left.end(), [&](const Label& other) { return bettered(label, other); });
    if (covered) {
      continue;
    }
    left.erase(
        std::remove_if(
            left.begin(), left.end(), [&](const Label& other) { return bettered(other, label); }),
        left.end());
    left.push_back(std::move(label));
  }
  labels = std::move(left);
}

// Ends of the last unit in a row that finish alike.
void ZoneSuffixes::roots(Day day) {
  const auto of_last_coat = pieces_.end() - static_cast<std::ptrdiff_t>(setting_.sections());
  if (std::all_of(of_last_coat, pieces_.end(), [](const auto& pieces) { return pieces.empty(); })) {
    return;
  }
  const auto& finish = setting_.problem.finish;
  Reach ends{0, no_slot};
  for (Slot end = day.from + 1; end <= day.to; ++end) {
    if (!asked(setting_, question_, end)) {
      continue;
    }
    const Finish& here = *finish[at(end)];
    if (ends.until + 1 == end && here.slot == finish[at(ends.until)]->slot &&
        (!question_.priced || here.cost == finish[at(ends.until)]->cost)) {
      ends.until = end;
      continue;
    }
    root(ends);
    ends = {end, end};
  }
  root(ends);
}

// Nothing follows: the last unit ends exactly in `ends`.
void ZoneSuffixes::root(Reach ends) {
  if (ends.from > ends.until) {
    return;
  }
  Label label{stages_.number(Stages::Coats(setting_.sections(), setting_.coats())),
              Zone(spare_ + 1)};
  const Finish& finish = *setting_.problem.finish[at(ends.from)];
  label.tally.cost = question_.priced ? finish.cost : finish.slot;
  if (label.zone.between(clock_, 0, ends) &&
      label.zone.tighten(0, anchor_, -reach_.earliest_anchor) &&
      (setting_.problem.chain.empty() || label.zone.tighten(anchor_, wet_, 0)) && settle(label)) {
    expand(label);
  }
}

void ZoneSuffixes::expand(const Label& label) {
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (!stages_.may_remove(label.stage, section)) {
      continue;
    }
    const std::size_t coat = stages_.done(label.stage)[section] - 1;
    for (const Piece& piece : pieces_[coat * setting_.sections() + section]) {
      if (piece.from <= label.zone.most(unit(section)) &&
          piece.until >= label.zone.least(unit(section))) {
        try_unit(label, section, piece);
      }
    }
  }
}

void ZoneSuffixes::try_unit(const Label& after, std::size_t section, const Piece& piece) {
  const std::size_t coat = stages_.done(after.stage)[section] - 1;
  const Slot slots = setting_.slots(coat, section);
  Label label = after;
  Zone& zone = label.zone;
  if (!zone.between(unit(section), 0, {piece.from, piece.until}) ||
      !zone.between(clock_, unit(section), {slots, slots})) {
    return;
  }
  zone.forget(clock_);
  label.stage = stages_.without(after.stage, section);
  price(label, after, piece);
  count_splits(label, coat, section);
  if (coat == 0 && !ask_chain(zone, section)) {
    return;
  }
  if (complete(label.stage)) {
    read_off(label, section);
  } else if (ask_coat(zone, coat, section) && settle(label)) {
    admit(std::move(label));
  }
}

// The price of the work, and of what can no longer come on the date of the label after it.
void ZoneSuffixes::price(Label& label, const Label& after, const Piece& piece) const {
  label.date = today_;
  if (!question_.priced) {
    return;
  }
  label.tally.cost += piece.labour;
  if (today_ != after.date) {
    label.tally.cost += setting_.problem.attendance;
    label.tally.splits += ones(label.open_coats);
    label.open_coats = 0;
  }
}

void ZoneSuffixes::count_splits(Label& label, std::size_t coat, std::size_t section) const {
  if (!question_.priced) {
    return;
  }
  const Standing& standing = setting_.standing;
  const std::uint64_t bit = std::uint64_t{1} << coat;
  label.open_coats &= ~bit;
  if (section + 1 < setting_.sections() && standing.done(coat, section + 1) &&
      standing.dates[coat][section + 1] != today_) {
    ++label.tally.splits;
  }
  if (section == 0) {
    return;
  }
  if (!standing.done(coat, section - 1)) {
    label.open_coats |= bit;
  } else if (standing.dates[coat][section - 1] != today_) {
    ++label.tally.splits;
  }
}

// In order of cost: the tallies, then the zones.
bool ZoneSuffixes::cheaper(const Label& better, const Label& worse) const {
  const bool better_today = better.date == today_;
  const bool worse_today = worse.date == today_;
  Tally most = better.tally;
  Tally least = worse.tally;
  most.splits += better_today ? ones(better.open_coats & ~(worse_today ? worse.open_coats : 0))
                              : ones(better.open_coats);
  least.splits += worse_today ? 0 : ones(worse.open_coats);
  if (!better_today && worse_today && question_.priced) {
    most.cost += setting_.problem.attendance;
  }
  return most <= least;
}

void ZoneSuffixes::admit(Label label) {
  const std::size_t stage = label.stage;
  while (waiting_.size() <= stage) {
    const Stages::Coats& done = stages_.done(waiting_.size());
    by_level_[std::accumulate(done.begin(), done.end(), std::size_t{0})].push_back(waiting_.size());
    waiting_.emplace_back();
    kept_.emplace_back();
  }
  Labels& others = waiting_[stage];
  const bool covered = std::any_of(
      others.rbegin(), others.rend(), [&](const Label& other) { return bettered(label, other); });
  if (covered) {
    return;
  }
  others.erase(
      std::remove_if(
          others.begin(), others.end(), [&](const Label& other) { return bettered(other, label); }),
      others.end());
  ++count_;
  if (question_.priced) {
    kept_[stage].push_back(label);
  }
  others.push_back(std::move(label));
}

}  // namespace basinwright::schedule
