// What a label asks of the work before it.
#include <algorithm>

#include "suffixes.hpp"

namespace basinwright::schedule {

Suffixes::Side Suffixes::ask(std::size_t coat, std::size_t section, Slot start) const {
  const Reach reach = before_coat(setting_, coat, section, start);
  Side side{reach.from, reach.until, never, no_slot};
  if (setting_.problem.units.rework) {
    side.rework_from = start - setting_.rework_max();
    side.rework_until = start - capped(setting_.problem.units.rework->dry);
  }
  return side;
}

// The coat before is a fact: either it lies right or it must be reworked.
void Suffixes::ask_fact(Side& side, std::size_t section) const {
  const SectionStanding& past = setting_.standing.sections[section];
  const bool right =
      past.rework_end != no_slot
          ? side.rework_from <= past.rework_end && past.rework_end <= side.rework_until
          : side.from <= past.start && past.start <= side.until;
  if (right) {
    side = free_side;
  } else {
    side.from = never;
    side.until = no_slot;
  }
}

bool Suffixes::complete(int label) {
  const Stages::Coats& done = stages_.done(labels_[index(label)].stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (done[section] != setting_.standing.sections[section].done ||
        sides(label)[section].until != never) {
      return false;
    }
  }
  return true;
}

// Moves what a label asks on to real starts and ends, so that equal demands compare equal; false
// when nothing can meet them.
bool Suffixes::settle(int label) {
  const Label& entry = labels_[index(label)];
  const Stages::Coats& done = stages_.done(entry.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    Side& side = sides(label)[section];
    const SectionStanding& past = setting_.standing.sections[section];
    if (side.until == never) {
      continue;
    }
    const std::size_t coat = done[section] - 1;  // the coat before
    const Slot slots = setting_.slots(coat, section);
    const bool fact = done[section] == past.done;
    if (!fact) {
      const StartSet& set = starts_.of(coat, section);
      side.from = set.next(side.from);
      side.until = set.previous(std::min(side.until, entry.start - slots));
    }
    if (fact || side.until < side.from) {
      side.from = never;
      side.until = no_slot;
    }
    settle_rework(side, section, coat, entry.start);
    if (side.from == never && side.rework_from == never) {
      return false;
    }
  }
  return true;
}

void Suffixes::settle_rework(Side& side, std::size_t section, std::size_t coat, Slot start) const {
  if (side.rework_from == never) {
    return;
  }
  const Openings& openings = setting_.reworking();
  const SectionStanding& past = setting_.standing.sections[section];
  side.rework_from = openings.next(side.rework_from - 1) + 1;
  side.rework_until = openings.last_before(std::min(side.rework_until, start)) + 1;
  bool possible = side.rework_until > 0 && side.rework_from <= side.rework_until;
  if (possible) {
    const Slot slots = setting_.problem.units.rework->slots[section];
    const Stretch last = openings.resumed_until(side.rework_until, slots);
    const Slot before = last.start - capped(setting_.problem.units.recoat[coat].min);
    possible = last.possible() && last.start >= setting_.standing.clock &&
               (coat + 1 == past.done
                    ? past.end <= before
                    : starts_.of(coat, section).previous(before - setting_.slots(coat, section)) !=
                          no_slot);
  }
  if (!possible) {
    side.rework_from = never;
    side.rework_until = no_slot;
  }
}

}  // namespace basinwright::schedule
