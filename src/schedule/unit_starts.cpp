#include "unit_starts.hpp"

#include <algorithm>
#include <functional>
#include <utility>

#include "window_best.hpp"

namespace basinwright::schedule {
namespace {

// Whether a window holds any start of a set, asked for windows that only move forward: by runs of
// starts, of which there are few a day.
class RunsAhead {
 public:
  explicit RunsAhead(const StartSet& set) : set_(set) { go_on(0); }

  [[nodiscard]] bool any(Reach window) {
    while (until_ <= window.from && from_ != never) {
      go_on(until_);
    }
    return from_ <= window.until;
  }

 private:
  void go_on(Slot slot) {
    from_ = set_.next(slot);
    until_ = from_ == never ? never : set_.gap(from_);
  }

  const StartSet& set_;
  Slot from_ = 0;   // of the first run that does not end before the window
  Slot until_ = 0;  // the first slot after it
};

// Whether no slot in the time before a start is wet, asked of ever later starts.
class DryBefore {
 public:
  DryBefore(const std::vector<char>& wet, Slot time) : wet_(wet), time_(time) {}

  [[nodiscard]] bool holds(Slot start) {
    for (; seen_ < std::min(at(start), wet_.size()); ++seen_) {
      if (wet_[seen_] != 0) {
        last_ = static_cast<Slot>(seen_);
      }
    }
    return last_ == no_slot || last_ < start - time_;
  }

 private:
  const std::vector<char>& wet_;
  Slot time_;
  Slot last_ = no_slot;  // the last wet slot seen
  std::size_t seen_ = 0;
};

}  // namespace

UnitStarts::UnitStarts(const Setting& setting, const ChainReach& reach, const UnitStarts* wider)
    : setting_(setting),
      reached_(setting.coats() * setting.sections()),
      leads_(reached_.size()),
      limited_(reached_.size()) {
  for (std::size_t coat = 0; coat < setting.coats(); ++coat) {
    for (std::size_t section = 0; section < setting.sections(); ++section) {
      if (coat < first_coat(section)) {
        continue;
      }
      reached_[index(coat, section)] = possible(coat, section, reach, wider);
    }
  }
  for (std::size_t section = 0; section < setting.sections(); ++section) {
    for (std::size_t coat = setting.coats(); coat-- > first_coat(section);) {
      leads_[index(coat, section)] =
          coat + 1 == setting.coats() ? last_leads(section) : leads(coat, section);
    }
  }
}

// Of the starts that the calendar leaves, those after the chain or the coat below.
StartSet UnitStarts::possible(std::size_t coat,
                              std::size_t section,
                              const ChainReach& reach,
                              const UnitStarts* wider) const {
  StartSet result(setting_.length);
  const StartSet own = wider == nullptr ? by_calendar(coat, section) : StartSet();
  const StartSet& all = wider == nullptr ? own : wider->of(coat, section);
  const bool after_any = coat > first_coat(section) && !setting_.problem.units.rework;
  const Reach apart = after_any ? before_coat(setting_, coat, section, 0) : Reach{};
  RunsAhead below(after_any ? reached_[index(coat - 1, section)] : result);
  Slot start = all.next(earliest(coat, section));
  for (; start != never; start = all.next(start + 1)) {
    if (after_any ? below.any({start + apart.from, start + apart.until})
                  : reached(reach, coat, section, start)) {
      result.add(start);
    }
  }
  return result;
}

// In open slots on one date; the very first unit after its rain-free wait.
StartSet UnitStarts::by_calendar(std::size_t coat, std::size_t section) const {
  StartSet result(setting_.length);
  const Slot slots = setting_.slots(coat, section);
  const bool very_first = coat == 0 && section == 0 && setting_.standing.bare;
  const std::vector<Slot>& open = setting_.painting().slots();
  DryBefore dry(setting_.problem.wet, capped(setting_.problem.anchor.rain_free));
  // The slots from an open one are in a row where the last of so many lies so far from it.
  const auto first = std::lower_bound(open.begin(), open.end(), earliest(coat, section));
  for (auto start = first; open.end() - start >= slots; ++start) {
    const Slot last = *start + slots - 1;
    if (*(start + (slots - 1)) == last && setting_.date(last) == setting_.date(*start) &&
        (!very_first || dry.holds(*start))) {
      result.add(*start);
    }
  }
  return result;
}

// By the section before, which has its coat first.
Slot UnitStarts::earliest(std::size_t coat, std::size_t section) const {
  if (section == 0 || setting_.standing.done(coat, section - 1)) {
    return setting_.standing.clock;
  }
  return reached_[index(coat, section - 1)].next(0) + setting_.slots(coat, section - 1);
}

bool UnitStarts::reached(const ChainReach& reach,
                         std::size_t coat,
                         std::size_t section,
                         Slot start) const {
  if (coat == 0) {
    return latest_first_coat(setting_, reach, start) >= start;
  }
  const SectionStanding& standing = setting_.standing.sections[section];
  if (coat > standing.done) {
    return reached_[index(coat - 1, section)].any(before_coat(setting_, coat, section, start)) ||
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
  const Slot end = coat > standing.done ? reached_[index(coat - 1, section)].next(0) +
                                              setting_.slots(coat - 1, section)
                                        : standing.end;
  const Slot last = setting_.reworking().last_before(start - capped(rule.dry));
  if (last == no_slot || last + 1 < start - setting_.rework_max()) {
    return false;
  }
  const Stretch stretch = setting_.reworking().resumed_until(last + 1, rule.slots[section]);
  return stretch.possible() && stretch.start >= setting_.standing.clock &&
         stretch.start >= end + capped(setting_.problem.units.recoat[coat - 1].min);
}

// The sections after this one are still to be coated after its last coat.
UnitStarts::Leads UnitStarts::last_leads(std::size_t section) const {
  const std::size_t coat = setting_.coats() - 1;
  Slot rest = 0;
  for (std::size_t after = section; after < setting_.sections(); ++after) {
    rest += setting_.standing.done(coat, after) ? 0 : setting_.slots(coat, after);
  }
  Leads result(at(setting_.length) + 1, never);
  const StartSet& set = reached_[index(coat, section)];
  for (Slot start = set.next(0); start + rest <= setting_.length; start = set.next(start + 1)) {
    result[at(start)] = setting_.best_finish[at(start + rest)];
  }
  return result;
}

UnitStarts::Leads UnitStarts::rework_leads(std::size_t coat, std::size_t section) const {
  Leads result(at(setting_.length) + 2, never);
  const Rework& rule = *setting_.problem.units.rework;
  const Openings& openings = setting_.reworking();
  const Leads& next = leads_[index(coat + 1, section)];
  const StartSet& set = reached_[index(coat + 1, section)];
  WindowBest<Slot, std::less<>> window;
  Slot entered = set.next(0);
  for (Slot slot = openings.next(0); slot < setting_.length; slot = openings.next(slot + 1)) {
    const Slot end = openings.resumed(slot, rule.slots[section]).end;
    if (end == no_slot) {
      break;
    }
    for (; entered <= end + setting_.rework_max() && entered != never;
         entered = set.next(entered + 1)) {
      window.enter(entered, next[at(entered)]);
    }
    window.leave_before(end + capped(rule.dry));
    result[at(slot)] = window.empty() ? never : window.best();
  }
  for (Slot slot = setting_.length; slot-- > 0;) {
    result[at(slot)] = std::min(result[at(slot)], result[at(slot + 1)]);
  }
  return result;
}

UnitStarts::Leads UnitStarts::leads(std::size_t coat, std::size_t section) const {
  Leads result(at(setting_.length) + 1, never);
  Leads rework;
  if (setting_.problem.units.rework) {
    rework = rework_leads(coat, section);
  }
  const StartSet& set = reached_[index(coat, section)];
  const StartSet& following = reached_[index(coat + 1, section)];
  const Leads& next = leads_[index(coat + 1, section)];
  const Slot slots = setting_.slots(coat, section);
  // The same for every start.
  const Reach apart = after_coat(setting_, coat + 1, section, {coat + 1, 0, slots, no_slot});
  WindowBest<Slot, std::less<>> window;
  Slot entered = following.next(0);
  for (Slot start = set.next(0); start != never; start = set.next(start + 1)) {
    const Slot until = start + apart.until;
    for (; entered <= until && entered != never; entered = following.next(entered + 1)) {
      window.enter(entered, next[at(entered)]);
    }
    window.leave_before(start + std::max(apart.from, slots));
    result[at(start)] = window.empty() ? never : window.best();
    const Slot from = start + slots + capped(setting_.problem.units.recoat[coat].min);
    if (!rework.empty() && from < setting_.length) {
      result[at(start)] = std::min(result[at(start)], rework[at(from)]);
    }
  }
  return result;
}

Slot UnitStarts::least_finish() const {
  Slot result = 0;
  for (std::size_t section = 0; section < setting_.sections(); ++section) {
    if (first_coat(section) < setting_.coats()) {
      const Leads& all = leads_[index(first_coat(section), section)];
      const StartSet& set = reached_[index(first_coat(section), section)];
      Slot least = never;
      for (Slot start = set.next(0); start != never; start = set.next(start + 1)) {
        least = std::min(least, all[at(start)]);
      }
      result = std::max(result, least);
    }
  }
  return result;
}

void UnitStarts::limit(Slot finish) {
  if (finish == limit_) {
    return;
  }
  limit_ = finish;
  for (std::size_t section = setting_.sections(); section-- > 0;) {
    for (std::size_t coat = first_coat(section); coat < setting_.coats(); ++coat) {
      const Leads& all = leads_[index(coat, section)];
      const bool last =
          section + 1 == setting_.sections() || setting_.standing.done(coat, section + 1);
      // The section after has the same coat after this one.
      const Slot until =
          last ? setting_.length
               : limited_[index(coat, section + 1)].previous(never) - setting_.slots(coat, section);
      StartSet starts(setting_.length);
      const StartSet& set = reached_[index(coat, section)];
      for (Slot start = set.next(0); start <= until; start = set.next(start + 1)) {
        if (all[at(start)] <= finish) {
          starts.add(start);
        }
      }
      limited_[index(coat, section)] = std::move(starts);
    }
  }
}

}  // namespace basinwright::schedule
