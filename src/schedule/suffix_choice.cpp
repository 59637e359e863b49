// Which labels are worth keeping, and which of them end a prefix at a price.
#include "suffixes.hpp"

#include <algorithm>
#include <bitset>

namespace basinwright::schedule {
namespace {

int ones(std::uint64_t bits) {
  return static_cast<int>(std::bitset<64>(bits).count());
}

}  // namespace

Tally Suffixes::tally_at(const Label& label, Slot end) const {
  Tally tally = label.tally;
  if (setting_.date(label.start) != setting_.date(end - 1)) {
    tally.splits += ones(label.open_coats);
  }
  return tally;
}

// Whatever comes before `worse` and ends by `end` can come before `better`, at no higher price.
bool Suffixes::covers(int better, int worse, Slot end) const {
  const Label& a = labels_[index(better)];
  const Label& b = labels_[index(worse)];
  const std::int32_t today = end > 0 ? setting_.date(end - 1) : no_date;
  const bool a_today = setting_.date(a.start) == today;
  const bool b_today = setting_.date(b.start) == today;
  Tally most = tally_at(a, end);
  most.splits += a_today ? ones(a.open_coats & ~(b_today ? b.open_coats : 0)) : 0;
  most.cost += question_.priced && b_today && !a_today ? setting_.problem.attendance : 0;
  if (most > tally_at(b, end) || a.anchor_from > b.anchor_from ||
      a.wet_until < std::min(b.wet_until, end)) {
    return false;
  }
  const Stages::Coats& done = stages_.done(a.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& one = sides_[a.sides + section];
    const Side& other = sides_[b.sides + section];
    if (one.until == never) {
      continue;
    }
    if (other.until == never || one.from > other.from || one.rework_from > other.rework_from ||
        one.rework_until < std::min(other.rework_until, end)) {
      return false;
    }
    if (one.until < other.until) {
      const std::size_t coat = done[section] - 1;
      const Slot latest = std::min(other.until, end - setting_.slots(coat, section));
      if (one.until < starts_.of(coat, section).previous(latest)) {
        return false;
      }
    }
  }
  return true;
}

bool Suffixes::dead(int label, Slot end) const {
  const Label& entry = labels_[index(label)];
  const Stages::Coats& done = stages_.done(entry.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& side = sides_[entry.sides + section];
    if (side.until != never && side.rework_from > end &&
        (side.from == never || side.from + setting_.slots(done[section] - 1, section) > end)) {
      return true;
    }
  }
  return false;
}

void Suffixes::admit(int label, Slot end) {
  const std::size_t stage = labels_[index(label)].stage;
  if (waiting_.size() < stages_.count()) {
    waiting_.resize(stages_.count());
    kept_.resize(stages_.count());
  }
  std::vector<int>& others = waiting_[stage];
  for (const int other : others) {
    if (covers(other, label, end)) {
      return;
    }
  }
  others.erase(std::remove_if(others.begin(),
                              others.end(),
                              [&](int other) {
                                const bool covered = covers(label, other, end);
                                if (covered) {
                                  labels_[index(other)].died = end;
                                }
                                return covered;
                              }),
               others.end());
  others.push_back(label);
  kept_[stage].push_back(label);
}

bool Suffixes::ends_for(const Prefix& prefix, const Tally& rest) {
  const std::size_t stage = stages_.number(prefix.done);
  if (stages_.left(stage) == 0) {
    return asked(prefix.clock) &&
           Tally{0, 0, setting_.problem.finish[at(prefix.clock)]->cost} == rest;
  }
  if (stage >= kept_.size()) {
    return false;
  }
  for (const int label : kept_[stage]) {
    const Label& entry = labels_[index(label)];
    if (entry.start < prefix.clock) {
      return false;
    }
    if (entry.died < prefix.clock && joined(entry, prefix) == rest && meets(entry, prefix)) {
      return true;
    }
  }
  return false;
}

bool Suffixes::meets(const Label& label, const Prefix& prefix) const {
  if (prefix.wet > label.wet_until || prefix.anchor < label.anchor_from) {
    return false;
  }
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& side = sides_[label.sides + section];
    const SectionStanding& past = prefix.sections[section];
    if (past.rework_end != no_slot) {
      if (side.until == never || past.rework_end < side.rework_from ||
          past.rework_end > side.rework_until) {
        return false;
      }
    } else if (past.done > 0 && side.until != never &&
               (past.start < side.from || past.start > side.until)) {
      return false;
    }
  }
  return true;
}

Tally Suffixes::joined(const Label& label, const Prefix& prefix) const {
  Tally tally = label.tally;
  const std::int32_t date = setting_.date(label.start);
  for (std::size_t coat = 0; coat < setting_.coats(); ++coat) {
    if (((label.open_coats >> coat) & 1) != 0 && prefix.dates[coat] != date) {
      ++tally.splits;
    }
  }
  tally.cost -= prefix.last_date == date ? setting_.problem.attendance : 0;
  return tally;
}

}  // namespace basinwright::schedule
