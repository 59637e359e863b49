// What a label asks of the work before it, and which labels end a prefix at a price.
#include <algorithm>

#include "zone_suffixes.hpp"

namespace basinwright::schedule {

// `unit(section)` is the start of a first coat.
bool ZoneSuffixes::ask_chain(Zone& zone, std::size_t section) const {
  const Anchor& anchor = setting_.problem.anchor;
  if (wet_chain_ && !zone.tighten(wet_, unit(section), -capped(anchor.dry))) {
    return false;
  }
  return !setting_.has_limit() || zone.tighten(unit(section), anchor_, setting_.limit());
}

// Puts the coat before in the place of the one just done, and the clock before that.
bool ZoneSuffixes::ask_coat(Zone& zone, std::size_t coat, std::size_t section) const {
  if (!zone.tighten(clock_, unit(section), 0)) {
    return false;
  }
  if (coat == setting_.standing.sections[section].done) {
    zone.forget(unit(section));  // a fact or nothing, which the starts allow
    return true;
  }
  if (!zone.between(spare_, unit(section), before_coat(setting_, coat, section, 0))) {
    return false;
  }
  zone.move(spare_, unit(section));
  return true;
}

// Adds what holds of all work before anyway, so that equal demands compare equal; false when
// nothing can meet them.
bool ZoneSuffixes::settle(Label& label) const {
  const Stages::Coats& done = stages_.done(label.stage);
  return settle_order(label.zone, done) && settle_starts(label.zone, done) &&
         settle_chain(label.zone, done) && settle_clock(label.zone, label.stage);
}

bool ZoneSuffixes::settle_order(Zone& zone, const Stages::Coats& done) const {
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (!moving(done, section)) {
      continue;
    }
    const Slot slots = setting_.slots(done[section] - 1, section);
    const bool same_coat = section + 1 < setting_.sections() && moving(done, section + 1) &&
                           done[section + 1] == done[section];
    if (!zone.tighten(unit(section), clock_, -slots) ||
        (same_coat && !zone.tighten(unit(section), unit(section + 1), -slots))) {
      return false;
    }
  }
  return true;
}

bool ZoneSuffixes::settle_starts(Zone& zone, const Stages::Coats& done) const {
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (!moving(done, section)) {
      continue;
    }
    const StartSet& set = starts_.of(done[section] - 1, section);
    const Slot first = set.next(zone.least(unit(section)));
    const Slot last = set.previous(zone.most(unit(section)));
    if (first > last || !zone.between(unit(section), 0, {first, last})) {
      return false;
    }
  }
  return true;
}

// Every coat comes after the chain, and the anchor lies as far before the chain's end as the chain
// takes.
bool ZoneSuffixes::settle_chain(Zone& zone, const Stages::Coats& done) const {
  if (!wet_chain_) {
    return true;
  }
  const Slot dry = capped(setting_.problem.anchor.dry);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (moving(done, section) && setting_.standing.sections[section].done == 0 &&
        !zone.tighten(wet_, unit(section), -dry)) {
      return false;
    }
  }
  const Slot wet = std::min(zone.most(wet_), setting_.length);
  return wet >= 0 && reach_.latest_anchor[at(wet)] != no_slot &&
         zone.tighten(anchor_, 0, reach_.latest_anchor[at(wet)]);
}

// The last work ends with one of the units that may be the last.
bool ZoneSuffixes::settle_clock(Zone& zone, std::size_t stage) const {
  const Stages::Coats& done = stages_.done(stage);
  for (std::size_t other = 0; other < spare_; ++other) {
    Slot latest = -never;
    for (std::size_t section = 0; section < setting_.sections(); ++section) {
      if (stages_.may_remove(stage, section)) {
        const Slot slots = setting_.slots(done[section] - 1, section);
        latest = std::max(latest, std::min(never, zone.bound(unit(section), other) + slots));
      }
    }
    if (other != clock_ && !zone.tighten(clock_, other, latest)) {
      return false;
    }
  }
  return true;
}

// All painting that is left begins with the unit just placed: its chains, by its start.
void ZoneSuffixes::read_off(const Label& label, std::size_t section) {
  const std::size_t first = unit(section);
  for (Slot start = label.zone.least(first); start <= label.zone.most(first); ++start) {
    Zone zone = label.zone;
    if (!zone.between(first, 0, {start, start})) {
      continue;
    }
    const Slot least = zone.least(anchor_);
    const Slot apart = zone.bound(wet_, anchor_);
    Slot anchor = never;
    for (Slot wet = std::min(zone.most(wet_), start); wet >= 0 && anchor > least; --wet) {
      anchor = std::max(least, wet - apart);
      paintings_.push_back(
          {start, wet, anchor <= reach_.earliest_anchor ? 0 : anchor, label.tally});
    }
  }
}

bool ZoneSuffixes::ends_for(const Prefix& prefix, const Tally& rest) {
  const std::size_t stage = stages_.number(prefix.done);
  if (stages_.left(stage) == 0) {
    return asked(setting_, question_, prefix.clock) &&
           Tally{0, 0, setting_.problem.finish[at(prefix.clock)]->cost} == rest;
  }
  return stage < kept_.size() &&
         std::any_of(kept_[stage].begin(), kept_[stage].end(), [&](const Label& label) {
           return joined(label, prefix) == rest && meets(label, prefix);
         });
}

bool ZoneSuffixes::meets(const Label& label, const Prefix& prefix) const {
  std::vector<Slot> value(spare_, 0);
  std::vector<bool> known(spare_, true);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    value[unit(section)] = prefix.sections[section].start;
    known[unit(section)] = moving(prefix.done, section);
  }
  value[clock_] = prefix.clock;
  value[wet_] = prefix.wet;
  value[anchor_] = prefix.anchor;
  for (std::size_t i = 0; i < spare_; ++i) {
    for (std::size_t j = 0; j < spare_; ++j) {
      const Slot bound = label.zone.bound(i, j);
      if (known[i] && known[j] && bound < never && value[i] - value[j] > bound) {
        return false;
      }
    }
  }
  return true;
}

Tally ZoneSuffixes::joined(const Label& label, const Prefix& prefix) const {
  Tally tally = label.tally;
  for (std::size_t coat = 0; coat < setting_.coats(); ++coat) {
    if (((label.open_coats >> coat) & 1) != 0 && prefix.dates[coat] != label.date) {
      ++tally.splits;
    }
  }
  tally.cost -= prefix.last_date == label.date ? setting_.problem.attendance : 0;
  return tally;
}

}  // namespace basinwright::schedule
