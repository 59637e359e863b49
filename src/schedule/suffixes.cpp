#include "suffixes.hpp"

#include <algorithm>
#include <bitset>

namespace basinwright::schedule {
namespace {

int ones(std::uint64_t bits) {
  return static_cast<int>(std::bitset<64>(bits).count());
}

}  // namespace

Suffixes::Suffixes(const Setting& setting,
                   const UnitStarts& starts,
                   const ChainReach& reach,
                   Question question)
    : setting_(setting),
      starts_(starts),
      earliest_anchor_(reach.earliest_anchor),
      question_(question),
      stages_(setting),
      births_(at(setting.length) + 1, -1) {}

void Suffixes::run() {
  for (Slot end = setting_.length; end > setting_.standing.clock; --end) {
    for (int label = births_[at(end)]; label >= 0;) {
      const int next = labels_[index(label)].next;
      admit(label, end);
      label = next;
    }
    if (asked(end)) {
      root(end);
    }
    visit(end);
  }
  for (int label = births_[at(setting_.standing.clock)]; label >= 0;) {
    const int next = labels_[index(label)].next;
    admit(label, setting_.standing.clock);
    label = next;
  }
}

int Suffixes::copy(int parent) {
  Label child = labels_[index(parent)];
  const std::size_t from = child.sides;
  child.sides = sides_.size();
  labels_.push_back(child);
  sides_.resize(sides_.size() + setting_.sections());
  std::copy_n(&sides_[from], setting_.sections(), &sides_[child.sides]);
  return static_cast<int>(labels_.size()) - 1;
}

bool Suffixes::asked(Slot end) const {
  const auto& finish = setting_.problem.finish;
  if (at(end) >= finish.size() || !finish[at(end)]) {
    return false;
  }
  const Slot slot = finish[at(end)]->slot;
  return question_.priced ? slot == question_.finish : slot <= question_.finish;
}

// Nothing follows: the last unit ends exactly here.
void Suffixes::root(Slot end) {
  Label label;
  label.stage = stages_.number(Stages::Coats(setting_.sections(), setting_.coats()));
  label.sides = sides_.size();
  label.start = never;
  const Finish& finish = *setting_.problem.finish[at(end)];
  label.tally.cost = question_.priced ? finish.cost : finish.slot;
  for (const SectionStanding& section : setting_.standing.sections) {
    sides_.push_back(section.done == setting_.coats() ? free_side
                                                      : Side{0, never - 1, never, no_slot});
  }
  labels_.push_back(label);
  try_units(static_cast<int>(labels_.size()) - 1, end);
}

void Suffixes::visit(Slot end) {
  const bool painted = setting_.painting().open(end - 1);
  const bool reworked = setting_.problem.units.rework && setting_.reworking().open(end - 1);
  if (!painted && !reworked) {
    return;
  }
  for (std::size_t stage = 0; stage < waiting_.size(); ++stage) {
    std::vector<int>& labels = waiting_[stage];
    labels.erase(
        std::remove_if(labels.begin(), labels.end(), [&](int label) { return dead(label, end); }),
        labels.end());
    for (const int label : labels) {
      if (painted) {
        try_units(label, end);
      }
      if (reworked) {
        try_reworks(label, end);
      }
    }
  }
}

void Suffixes::try_units(int label, Slot end) {
  const std::size_t stage = labels_[index(label)].stage;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (!stages_.may_remove(stage, section)) {
      continue;
    }
    const std::size_t coat = stages_.done(stage)[section] - 1;
    const Slot start = end - setting_.slots(coat, section);
    const Side side = sides(label)[section];
    if (start < side.from || start > side.until || !starts_.of(coat, section).has(start)) {
      continue;
    }
    const int child = copy(label);
    labels_[index(child)].stage = stages_.without(stage, section);
    work(child, label, setting_.painting().unbroken(start, end - start));
    count_splits(child, coat, section, start);
    place(child, section, start);
    give_birth(child);
  }
}

void Suffixes::try_reworks(int label, Slot end) {
  const Rework& rule = *setting_.problem.units.rework;
  const std::size_t stage = labels_[index(label)].stage;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side side = sides(label)[section];
    if (side.until == never || end < side.rework_from || end > side.rework_until) {
      continue;
    }
    const Stretch stretch = setting_.reworking().resumed_until(end, rule.slots[section]);
    if (!stretch.possible() || stretch.start < setting_.standing.clock) {
      continue;
    }
    const std::size_t coat = stages_.done(stage)[section] - 1;  // that is reworked
    const SectionStanding& past = setting_.standing.sections[section];
    const Slot latest = stretch.start - capped(setting_.problem.units.recoat[coat].min);
    if (coat + 1 == past.done && past.end > latest) {
      continue;
    }
    const int child = copy(label);
    sides(child)[section] = coat + 1 == past.done
                                ? free_side
                                : Side{0, latest - setting_.slots(coat, section), never, no_slot};
    work(child, label, stretch);
    labels_[index(child)].tally.reworks += question_.priced ? 1 : 0;
    give_birth(child);
  }
}

// The price of the work, and of what can no longer come on the date of the parent's start.
void Suffixes::work(int child, int parent, const Stretch& stretch) {
  const Label& after = labels_[index(parent)];
  Label& label = labels_[index(child)];
  const bool same_date = setting_.date(stretch.end - 1) == setting_.date(after.start);
  label.start = stretch.start;
  if (!question_.priced) {
    return;
  }
  label.tally.cost +=
      stretch.labour + setting_.problem.attendance * (stretch.dates - (same_date ? 1 : 0));
  if (setting_.date(stretch.start) != setting_.date(after.start)) {
    label.tally.splits += ones(label.open_coats);
    label.open_coats = 0;
  }
}

void Suffixes::count_splits(int child, std::size_t coat, std::size_t section, Slot start) {
  if (!question_.priced) {
    return;
  }
  Label& label = labels_[index(child)];
  const Standing& standing = setting_.standing;
  const std::uint64_t bit = std::uint64_t{1} << coat;
  label.open_coats &= ~bit;
  if (section + 1 < setting_.sections() && standing.done(coat, section + 1) &&
      standing.dates[coat][section + 1] != setting_.date(start)) {
    ++label.tally.splits;
  }
  if (section == 0) {
    return;
  }
  if (!standing.done(coat, section - 1)) {
    label.open_coats |= bit;
  } else if (standing.dates[coat][section - 1] != setting_.date(start)) {
    ++label.tally.splits;
  }
}

// `child` has its new stage already.
void Suffixes::place(int child, std::size_t section, Slot start) {
  Label& label = labels_[index(child)];
  const std::size_t coat = stages_.done(label.stage)[section];
  Side& side = sides(child)[section];
  if (coat > setting_.standing.sections[section].done) {
    side = ask(coat, section, start);
  } else if (coat > 0) {
    side = ask(coat, section, start);
    ask_fact(side, section);
  } else {
    side = free_side;
    const Anchor& anchor = setting_.problem.anchor;
    if (!setting_.standing.links.empty() || setting_.standing.wet != no_slot) {
      label.wet_until = std::min(label.wet_until, start - capped(anchor.dry));
    }
    if (anchor.limit && !setting_.problem.chain.empty()) {
      label.anchor_from = std::max(label.anchor_from, start - capped(*anchor.limit));
    }
    if (label.anchor_from <= earliest_anchor_) {
      label.anchor_from = 0;
    }
  }
}

Suffixes::Side Suffixes::ask(std::size_t coat, std::size_t section, Slot start) const {
  const Reach reach = before_coat(setting_, coat, section, start);
  Side side{reach.from, reach.until, never, no_slot};
  if (setting_.problem.units.rework) {
    side.rework_from = start - capped(setting_.problem.units.rework->max);
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

void Suffixes::give_birth(int label) {
  Label& entry = labels_[index(label)];
  if (entry.start < setting_.standing.clock) {
    drop_last();
    return;
  }
  if (complete(label)) {
    paintings_.push_back(
        {entry.start, std::min(entry.wet_until, entry.start), entry.anchor_from, entry.tally});
    drop_last();
    return;
  }
  if (!settle(label)) {
    drop_last();
    return;
  }
  entry.next = births_[at(entry.start)];
  births_[at(entry.start)] = label;
}

void Suffixes::drop_last() {
  sides_.resize(labels_.back().sides);
  labels_.pop_back();
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

// With what is sure for work that ends at `end` or before.

}  // namespace basinwright::schedule
