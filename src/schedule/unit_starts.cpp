#include "unit_starts.hpp"

namespace basinwright::schedule {

StartSet::StartSet(std::vector<char> possible)
    : next_(possible.size(), never), previous_(possible.size(), no_slot) {
  Slot last = no_slot;
  for (std::size_t slot = 0; slot < possible.size(); ++slot) {
    last = possible[slot] != 0 ? static_cast<Slot>(slot) : last;
    previous_[slot] = last;
  }
  last = never;
  for (std::size_t slot = possible.size(); slot-- > 0;) {
    last = possible[slot] != 0 ? static_cast<Slot>(slot) : last;
    next_[slot] = last;
  }
}

Slot StartSet::next(Slot from) const {
  if (from >= static_cast<Slot>(next_.size())) {
    return never;
  }
  return next_[at(std::max<Slot>(from, 0))];
}

Slot StartSet::previous(Slot until) const {
  if (until < 0) {
    return no_slot;
  }
  return previous_[std::min(at(until), previous_.size() - 1)];
}

UnitStarts::UnitStarts(const Setting& setting)
    : setting_(setting), run_(at(setting.length) + 1, 0) {
  const Openings& openings = setting.painting();
  for (Slot slot = setting.length - 1; slot >= setting.standing.clock; --slot) {
    if (openings.open(slot)) {
      const bool on = slot + 1 < setting.length && setting.date(slot + 1) == setting.date(slot);
      run_[at(slot)] = on ? run_[at(slot) + 1] + 1 : 1;
    }
  }
  for (std::size_t coat = 0; coat < setting.coats(); ++coat) {
    for (std::size_t section = 0; section < setting.sections(); ++section) {
      sets_.emplace_back(possible(coat, section));
    }
  }
}

std::vector<char> UnitStarts::possible(std::size_t coat, std::size_t section) const {
  std::vector<char> result(at(setting_.length) + 1, 0);
  const Slot slots = setting_.slots(coat, section);
  const bool very_first = coat == 0 && section == 0 && setting_.standing.bare;
  const std::vector<char>& wet = setting_.problem.wet;
  Slot rain = no_slot;  // the last wet slot so far
  for (Slot slot = 0; slot < setting_.length; ++slot) {
    const bool rain_free = !very_first || rain == no_slot ||
                           rain < slot - capped(setting_.problem.anchor.rain_free);
    result[at(slot)] = run_[at(slot)] >= slots && rain_free ? 1 : 0;
    if (at(slot) < wet.size() && wet[at(slot)] != 0) {
      rain = slot;
    }
  }
  return result;
}

template <class Keep>
void UnitStarts::filter(std::size_t coat, std::size_t section, Keep keep) {
  StartSet& set = sets_[coat * setting_.sections() + section];
  std::vector<char> kept(at(setting_.length) + 1, 0);
  for (Slot start = set.next(0); start != never; start = set.next(start + 1)) {
    kept[at(start)] = keep(start) ? 1 : 0;
  }
  set = StartSet(kept);
}

bool UnitStarts::reached(const ChainReach& reach, std::size_t coat, std::size_t section,
                         Slot start) const {
  if (coat == 0) {
    return reach.deadline[at(start)] >= start;
  }
  const SectionStanding& standing = setting_.standing.sections[section];
  if (coat > standing.done) {
    return of(coat - 1, section).any(before_coat(setting_, coat, section, start)) ||
           reached_by_rework(coat, section, start);
  }
  const Reach window = after_coat(setting_, coat, section, standing);
  return standing.rework_end != no_slot || (window.from <= start && start <= window.until) ||
         reached_by_rework(coat, section, start);
}

bool UnitStarts::reached_by_rework(std::size_t coat, std::size_t section, Slot start) const {
  if (!setting_.problem.units.rework) {
    return false;
  }
  const Rework& rule = *setting_.problem.units.rework;
  const SectionStanding& standing = setting_.standing.sections[section];
  const Slot first = of(coat - 1, section).next(0);
  const Slot end = coat > standing.done ? first + setting_.slots(coat - 1, section) : standing.end;
  const Slot last = setting_.reworking().last_before(start - capped(rule.dry));
  if (last == no_slot || last + 1 < start - capped(rule.max)) {
    return false;
  }
  const Stretch stretch = setting_.reworking().resumed_until(last + 1, rule.slots[section]);
  return stretch.possible() && stretch.start >= setting_.standing.clock &&
         stretch.start >= end + capped(setting_.problem.units.recoat[coat - 1].min);
}

std::vector<char> UnitStarts::rework_leading_on(std::size_t coat, std::size_t section) const {
  std::vector<char> result(at(setting_.length) + 1, 0);
  if (!setting_.problem.units.rework) {
    return result;
  }
  const Rework& rule = *setting_.problem.units.rework;
  const Openings& openings = setting_.reworking();
  char later = 0;  // whether a rework from here on leads on
  for (Slot slot = setting_.length - 1; slot >= 0; --slot) {
    if (openings.open(slot) && later == 0) {
      const Stretch stretch = openings.resumed(slot, rule.slots[section]);
      later = stretch.possible() &&
                      of(coat + 1, section)
                          .any({stretch.end + capped(rule.dry), stretch.end + capped(rule.max)})
                  ? 1
                  : 0;
    }
    result[at(slot)] = later;
  }
  return result;
}

std::vector<char> UnitStarts::leading_on(std::size_t coat, std::size_t section) const {
  const StartSet& set = of(coat, section);
  std::vector<char> result(at(setting_.length) + 1, 0);
  const std::vector<char> rework = rework_leading_on(coat, section);
  const Slot slots = setting_.slots(coat, section);
  for (Slot start = set.next(0); start != never; start = set.next(start + 1)) {
    const SectionStanding placed{coat + 1, start, start + slots, no_slot};
    const Reach window = after_coat(setting_, coat + 1, section, placed);
    const Slot from = start + slots + capped(setting_.problem.units.recoat[coat].min);
    result[at(start)] = of(coat + 1, section).any(window) ||
                                (from <= setting_.length && rework[at(from)] != 0)
                            ? 1
                            : 0;
  }
  return result;
}

void UnitStarts::keep_useful(const ChainReach& reach, Slot latest_finish) {
  const std::size_t coats = setting_.coats();
  for (std::size_t section = setting_.sections(); section-- > 0;) {
    const std::size_t first = setting_.standing.sections[section].done;
    for (std::size_t coat = first; coat < coats; ++coat) {
      filter(coat, section, [&](Slot start) { return reached(reach, coat, section, start); });
    }
    if (first == coats) {
      continue;
    }
    // The sections after this one are still to be coated after its last coat.
    Slot rest = 0;
    for (std::size_t after = section; after < setting_.sections(); ++after) {
      rest += setting_.standing.done(coats - 1, after) ? 0 : setting_.slots(coats - 1, after);
    }
    filter(coats - 1, section, [&](Slot start) {
      return start + rest <= setting_.length &&
             setting_.best_finish[at(start + rest)] <= latest_finish;
    });
    for (std::size_t coat = coats - 1; coat-- > first;) {
      const std::vector<char> keep = leading_on(coat, section);
      filter(coat, section, [&](Slot start) { return keep[at(start)] != 0; });
    }
  }
}

}  // namespace basinwright::schedule
