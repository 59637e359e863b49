#include "earliest_finish.hpp"

#include <algorithm>

namespace basinwright::schedule {

EarliestFinish::EarliestFinish(const Setting& setting, const ChainReach& reach,
                               const UnitStarts& starts)
    : setting_(setting),
      reach_(reach),
      starts_(starts),
      stages_(setting),
      births_(at(setting.length) + 1, -1),
      tail_(setting.coats() * setting.sections(), 0) {
  const std::size_t sections = setting.sections();
  for (std::size_t coat = setting.coats(); coat-- > 0;) {
    Slot rest = 0;
    for (std::size_t section = sections; section-- > 0;) {
      Slot& tail = tail_[coat * sections + section];
      if (coat + 1 == setting.coats()) {
        rest += setting.standing.done(coat, section) ? 0 : setting.slots(coat, section);
        tail = rest;
        continue;
      }
      const SectionStanding placed{coat + 1, 0, setting.slots(coat, section), no_slot};
      const Slot gap = std::max(placed.end, after_coat(setting, coat + 1, section, placed).from);
      tail = gap + tail_[(coat + 1) * sections + section];
    }
  }
}

std::optional<Slot> EarliestFinish::find(Slot latest) {
  best_ = latest + 1;
  plant();
  for (Slot slot = setting_.standing.clock; slot <= setting_.length; ++slot) {
    for (int label = births_[at(slot)]; label >= 0;) {
      const int next = labels_[index(label)].next;
      admit(label, slot);
      label = next;
    }
    if (slot < setting_.length) {
      visit(slot);
    }
  }
  return best_ <= latest ? std::optional(best_) : std::nullopt;
}

Slot EarliestFinish::rework_open(Slot from) const {
  if (!setting_.problem.units.rework) {
    return never;
  }
  const Slot next = setting_.reworking().next(from);
  return next < setting_.length ? next : never;
}

// With units done, what is done stands in the sides; otherwise the first unit brings the labels.
void EarliestFinish::plant() {
  const Standing& standing = setting_.standing;
  Stages::Coats done;
  for (const SectionStanding& section : standing.sections) {
    done.push_back(section.done);
  }
  const std::size_t stage = stages_.number(done);
  if (standing.bare) {
    return;
  }
  for (const ChainEnd& end : reach_.ends) {
    const int label = blank(stage);
    for (std::size_t section = 0; section < setting_.sections(); ++section) {
      Side& side = sides(label)[section];
      const SectionStanding& past = standing.sections[section];
      if (past.done == setting_.coats()) {
        continue;
      }
      if (past.done == 0) {
        side = {dry_after(setting_, end.end), end.deadline, never};
        continue;
      }
      Reach window = after_coat(setting_, past.done, section, past);
      if (past.rework_end != no_slot) {
        const Rework& rule = *setting_.problem.units.rework;
        window = {past.rework_end + capped(rule.dry), past.rework_end + capped(rule.max)};
      }
      const Slot min = capped(setting_.problem.units.recoat[past.done - 1].min);
      side = {window.from, window.until, rework_open(past.end + min)};
    }
    give_birth(label, std::max(standing.clock, end.end));
  }
}

int EarliestFinish::blank(std::size_t stage) {
  labels_.push_back({stage, sides_.size(), -1});
  sides_.resize(sides_.size() + setting_.sections());
  return static_cast<int>(labels_.size()) - 1;
}

int EarliestFinish::copy(int parent, std::size_t stage) {
  const int child = blank(stage);
  std::copy_n(sides(parent), setting_.sections(), sides(child));
  return child;
}

void EarliestFinish::paint_bare(Slot start) {
  const Slot deadline = reach_.deadline[at(start)];
  if (deadline < start || !starts_.of(0, 0).has(start)) {
    return;
  }
  const int child = blank(stages_.with(0, 0));
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    sides(child)[section] = {start, deadline, never};
  }
  place(child, 0, start);
}

void EarliestFinish::try_units(int label, Slot slot) {
  const std::size_t stage = labels_[index(label)].stage;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side side = sides(label)[section];
    if (side.from <= slot && slot <= side.until && stages_.may_add(stage, section) &&
        starts_.of(stages_.done(stage)[section], section).has(slot)) {
      place(copy(label, stages_.with(stage, section)), section, slot);
    }
  }
}

// `child` has its new stage already.
void EarliestFinish::place(int child, std::size_t section, Slot start) {
  const std::size_t coats = stages_.done(labels_[index(child)].stage)[section];
  const Slot end = start + setting_.slots(coats - 1, section);
  Side& side = sides(child)[section];
  side = Side{};
  if (coats < setting_.coats()) {
    const Reach window = after_coat(setting_, coats, section, {coats, start, end, no_slot});
    const Slot min = capped(setting_.problem.units.recoat[coats - 1].min);
    side = {window.from, window.until, rework_open(end + min)};
  }
  give_birth(child, end);
}

void EarliestFinish::try_reworks(int label, Slot slot) {
  if (!setting_.problem.units.rework || !setting_.reworking().open(slot)) {
    return;
  }
  const Rework& rule = *setting_.problem.units.rework;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (sides(label)[section].rework_from > slot) {
      continue;
    }
    const Slot end = setting_.reworking().resumed(slot, rule.slots[section]).end;
    if (end == no_slot) {
      continue;
    }
    const int child = copy(label, labels_[index(label)].stage);
    // Doing it twice is never better than doing the later one alone.
    sides(child)[section] = {end + capped(rule.dry), end + capped(rule.max), never};
    give_birth(child, end);
  }
}

void EarliestFinish::give_birth(int label, Slot slot) {
  if (settle(label, slot)) {
    labels_[index(label)].next = births_[at(slot)];
    births_[at(slot)] = label;
  } else if (index(label) + 1 == labels_.size()) {
    sides_.resize(labels_.back().sides);
    labels_.pop_back();
  }
}

// Moves the bounds of a label on to real starts, so that equal choices compare equal; false when it
// leads nowhere, or is finished.
bool EarliestFinish::settle(int label, Slot slot) {
  if (slot > setting_.length) {
    return false;
  }
  const Stages::Coats& done = stages_.done(labels_[index(label)].stage);
  bool finished = true;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (done[section] == setting_.coats()) {
      continue;
    }
    finished = false;
    Side& side = sides(label)[section];
    const StartSet& set = starts_.of(done[section], section);
    side.from = set.next(std::max(side.from, slot));
    side.until = set.previous(side.until);
    if (side.until < side.from) {
      side.from = never;
      side.until = no_slot;
    }
    side.rework_from = side.rework_from == never ? never
                                                 : rework_open(std::max(side.rework_from, slot));
    if (side.from == never && side.rework_from == never) {
      return false;
    }
  }
  if (finished) {
    const auto& finish = setting_.problem.finish;
    if (at(slot) < finish.size() && finish[at(slot)]) {
      best_ = std::min(best_, finish[at(slot)]->slot);
    }
    return false;
  }
  return !hopeless(label, slot);
}

bool EarliestFinish::hopeless(int label, Slot slot) const {
  const Label& entry = labels_[index(label)];
  const Stages::Coats& done = stages_.done(entry.stage);
  Slot end = slot + stages_.left(entry.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (done[section] < setting_.coats()) {
      const Side& side = sides_[entry.sides + section];
      const Slot next = std::max(slot, std::min(side.from, side.rework_from));
      end = std::max(end, next + tail_[done[section] * setting_.sections() + section]);
    }
  }
  return end > setting_.length || setting_.best_finish[at(end)] >= best_;
}

bool EarliestFinish::dead(int label, Slot slot) const {
  const Label& entry = labels_[index(label)];
  const Slot end = slot + stages_.left(entry.stage);
  if (end > setting_.length || setting_.best_finish[at(end)] >= best_) {
    return true;
  }
  const Stages::Coats& done = stages_.done(entry.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& side = sides_[entry.sides + section];
    if (done[section] < setting_.coats() && side.until < slot && side.rework_from == never) {
      return true;
    }
  }
  return false;
}

// Whatever follows `worse` from `slot` on can follow `better`.
bool EarliestFinish::covers(int better, int worse, Slot slot) const {
  const Label& one = labels_[index(better)];
  const Label& other = labels_[index(worse)];
  const Stages::Coats& done = stages_.done(one.stage);
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    const Side& a = sides_[one.sides + section];
    const Side& b = sides_[other.sides + section];
    if (a.until < b.until || std::max(a.rework_from, slot) > std::max(b.rework_from, slot)) {
      return false;
    }
    if (a.from > std::max(b.from, slot) && done[section] < setting_.coats() &&
        a.from > starts_.of(done[section], section).next(std::max(b.from, slot))) {
      return false;
    }
  }
  return true;
}

void EarliestFinish::admit(int label, Slot slot) {
  const std::size_t stage = labels_[index(label)].stage;
  if (waiting_.size() < stages_.count()) {
    waiting_.resize(stages_.count());
  }
  std::vector<int>& others = waiting_[stage];
  for (const int other : others) {
    if (covers(other, label, slot)) {
      return;
    }
  }
  others.erase(std::remove_if(others.begin(),
                              others.end(),
                              [&](int other) { return covers(label, other, slot); }),
               others.end());
  others.push_back(label);
}

void EarliestFinish::visit(Slot slot) {
  const bool painting = setting_.painting().open(slot);
  const bool reworking = setting_.problem.units.rework && setting_.reworking().open(slot);
  if (!painting && !reworking) {
    return;
  }
  if (setting_.standing.bare && painting) {
    paint_bare(slot);
  }
  for (std::size_t stage = 0; stage < waiting_.size(); ++stage) {
    std::vector<int>& labels = waiting_[stage];
    labels.erase(std::remove_if(labels.begin(),
                                labels.end(),
                                [&](int label) { return dead(label, slot); }),
                 labels.end());
    for (const int label : labels) {
      if (painting) {
        try_units(label, slot);
      }
      if (reworking) {
        try_reworks(label, slot);
      }
    }
  }
}

}  // namespace basinwright::schedule
