// A problem as the solver sees it: its first slots, with ranks, and what its facts leave.
#pragma once

#include <algorithm>
#include <memory>
#include <vector>

#include "standing.hpp"

namespace basinwright::schedule {

struct Setting {
 private:
  std::shared_ptr<const std::vector<Openings>> opened_;

 public:
  const Problem& problem;
  const Standing& standing;
  Slot length;                           ///< Slots looked at; nothing ends later.
  Slot kept;                             ///< Windows of units end this much sooner.
  const std::vector<Slot>& best_finish;  ///< Of all ends from a slot on; never when none.
  const std::vector<Openings>& calendars;

  Setting(const Problem& given, const Standing& left, Slot slots, const std::vector<Slot>& finish);
  /// As another, for a problem with the same calendars.
  Setting(const Setting& other,
          const Problem& given,
          const Standing& left,
          const std::vector<Slot>& finish);
  /// As another, with windows that end sooner by `slack`.
  Setting(const Setting& other, Slot slack);

  [[nodiscard]] std::size_t coats() const { return problem.units.coats.size(); }
  [[nodiscard]] std::size_t sections() const { return problem.units.sections.size(); }
  [[nodiscard]] const Openings& painting() const { return calendars[problem.units.calendar]; }
  /// The calendar of reworks; only where they are offered.
  [[nodiscard]] const Openings& reworking() const {
    return calendars[problem.units.rework->calendar];
  }
  [[nodiscard]] std::int32_t date(Slot slot) const {
    return slot < problem.horizon ? problem.date_of[at(slot)] : no_date;
  }
  [[nodiscard]] Slot slots(std::size_t coat, std::size_t section) const {
    return problem.units.slots[coat][section];
  }
  /// The slots of a link's task from an open start.
  [[nodiscard]] Stretch stretch(const Link& link, Slot start) const {
    const Task& task = problem.chain[link.task];
    const Openings& openings = calendars[task.calendar];
    switch (task.kind) {
      case Kind::attended:
        return openings.resumed(start, task.slots);
      case Kind::one_shift:
        return openings.unbroken(start, task.slots);
      case Kind::unattended:
        break;
    }
    return start + task.slots <= length ? Stretch{start, start + task.slots, 0, 0} : Stretch{};
  }
  /// May the chain's last wash be done again? Only before the first unit, and after a chain.
  [[nodiscard]] bool may_reclean() const {
    return standing.bare && problem.anchor.reclean && !problem.chain.empty();
  }
  /// The ends of the units' windows: after coat `coat`, after a rework, after the anchor.
  [[nodiscard]] Slot recoat_max(std::size_t coat) const {
    return ending(problem.units.recoat[coat].max);
  }
  [[nodiscard]] Slot rework_max() const { return ending(problem.units.rework->max); }
  [[nodiscard]] bool has_limit() const { return problem.anchor.limit && !problem.chain.empty(); }
  /// Only where there is one.
  [[nodiscard]] Slot limit() const { return ending(*problem.anchor.limit); }
  [[nodiscard]] Slot ending(Slot max) const { return max < endless ? max - kept : capped(max); }
  /// The latest start of a first coat after an anchor's end.
  [[nodiscard]] Slot deadline(Slot anchor) const;
};

/// The starts of a coat that a window allows after its coat before, [from, until].
struct Reach {
  Slot from = 0;
  Slot until = 0;
};

/// By the differences of starts and of ends: coat `coat` on `section` after one at `start`, `end`.
[[nodiscard]] Reach after_coat(const Setting& setting,
                               std::size_t coat,
                               std::size_t section,
                               SectionStanding before);
/// The starts of the coat before that allow `start` for coat `coat` on `section`.
[[nodiscard]] Reach before_coat(const Setting& setting,
                                std::size_t coat,
                                std::size_t section,
                                Slot start);

}  // namespace basinwright::schedule
