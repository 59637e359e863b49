#include "suffixes.hpp"

#include <algorithm>

namespace basinwright::schedule {

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

bool Suffixes::run(std::size_t effort) {
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
    if (labels_.size() > effort) {
      return false;
    }
  }
  for (int label = births_[at(setting_.standing.clock)]; label >= 0;) {
    const int next = labels_[index(label)].next;
    admit(label, setting_.standing.clock);
    label = next;
  }
  return true;
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
  const std::size_t with_root = labels_.size();
  try_units(static_cast<int>(with_root) - 1, end);
  if (labels_.size() == with_root) {
    drop_last();
  }
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
    give_birth(child, elder(label, section, Booking::What::unit));
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
    give_birth(child, elder(label, section, Booking::What::rework));
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
    if (setting_.has_limit()) {
      label.anchor_from = std::max(label.anchor_from, start - setting_.limit());
    }
    if (label.anchor_from <= earliest_anchor_) {
      label.anchor_from = 0;
    }
  }
}

// Where the last child of a label on a section stands, by a unit or by a rework.
std::size_t Suffixes::elder(int parent, std::size_t section, Booking::What what) {
  elders_.resize(2 * sides_.size(), -1);
  return 2 * (labels_[index(parent)].sides + section) + (what == Booking::What::unit ? 0 : 1);
}

void Suffixes::give_birth(int label, std::size_t elder) {
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
  if (!settle(label) || bettered(elders_[elder], entry)) {
    drop_last();
    return;
  }
  elders_[elder] = label;
  entry.next = births_[at(entry.start)];
  births_[at(entry.start)] = label;
}

void Suffixes::drop_last() {
  sides_.resize(labels_.back().sides);
  elders_.resize(std::min(elders_.size(), 2 * sides_.size()));
  labels_.pop_back();
}

}  // namespace basinwright::schedule
