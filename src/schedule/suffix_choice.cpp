// Which labels are worth keeping, and which of them end a prefix at a price.
#include "suffixes.hpp"

#include <algorithm>

namespace basinwright::schedule {

// With what is sure for work that ends at `end` or before.
Tally Suffixes::tally_at(const Label& label, Slot end) const {
  Tally tally = label.tally;
  if (setting_.date(label.start) != setting_.date(end - 1)) {
    tally.splits += ones(label.open_coats);
  }
  return tally;
}

// Whatever comes before `worse` and ends by `end` costs no more before `better`, and the chain has
// no less room. The sides are another question.
bool Suffixes::cheaper(const Label& better, const Label& worse, Slot end) const {
  const std::int32_t today = end > 0 ? setting_.date(end - 1) : no_date;
  const bool better_today = setting_.date(better.start) == today;
  const bool worse_today = setting_.date(worse.start) == today;
  Tally most = tally_at(better, end);
  if (better_today) {
    most.splits += ones(better.open_coats & ~(worse_today ? worse.open_coats : 0));
  } else if (worse_today && question_.priced) {
    most.cost += setting_.problem.attendance;
  }
  return most <= tally_at(worse, end) && better.anchor_from <= worse.anchor_from &&
         better.wet_until >= std::min(worse.wet_until, end);
}

// Whatever a newly settled label's sides can follow, an older one's can.
bool Suffixes::wider(const Label& older, const Label& fresh) const {
  const Side* one = &sides_[older.sides];
  const Side* other = &sides_[fresh.sides];
  for (std::size_t section = 0; section < setting_.sections(); ++section, ++one, ++other) {
    if (one->from > other->from || one->until < other->until ||
        one->rework_from > other->rework_from || one->rework_until < other->rework_until) {
      return false;
    }
  }
  return true;
}

// The other way round: of an older label only what is left by `end` counts.
bool Suffixes::wider_by(const Label& fresh, const Label& older, Slot end) const {
  const Stages::Coats& done = stages_.done(fresh.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& one = sides_[fresh.sides + section];
    const Side& other = sides_[older.sides + section];
    if (one.until == never) {
      continue;
    }
    if (one.from > other.from || one.rework_from > other.rework_from || other.until == never ||
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

// Waiting before the same work often gains nothing; this spares most of the comparisons.
bool Suffixes::bettered(int elder, const Label& fresh) const {
  if (elder < 0) {
    return false;
  }
  const Label& older = labels_[index(elder)];
  return wider(older, fresh) && cheaper(older, fresh, fresh.start);
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
  const Label& fresh = labels_[index(label)];
  std::vector<int>& others = waiting_[stage];
  const bool covered = std::any_of(others.rbegin(), others.rend(), [&](int other) {
    const Label& older = labels_[index(other)];
    return wider(older, fresh) && cheaper(older, fresh, end);
  });
  if (covered) {
    return;
  }
  others.erase(std::remove_if(others.begin(),
                              others.end(),
                              [&](int other) {
                                Label& older = labels_[index(other)];
                                const bool out =
                                    wider_by(fresh, older, end) && cheaper(fresh, older, end);
                                older.died = out ? end : older.died;
                                return out;
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
