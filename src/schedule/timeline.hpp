// Calendars with ranks: where work that starts in a slot ends, on which dates, for what labour.
#pragma once

#include <cstdint>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule {

inline constexpr Slot no_slot = -1;

inline std::size_t at(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// Work on a calendar from its first worked slot to the end of its last.
struct Stretch {
  Slot start = no_slot;
  Slot end = no_slot;
  std::int64_t labour = 0;
  int dates = 0;  ///< Distinct dates with worked slots.
};

/// One calendar cut off at a horizon, with the ranks of its open slots.
class Openings {
 public:
  Openings(const Calendar& calendar, const Problem& problem, Slot horizon);

  [[nodiscard]] Slot horizon() const { return horizon_; }
  [[nodiscard]] bool open(Slot slot) const { return run_[at(slot)] > 0; }
  /// The first open slot at or after `from`; the horizon when there is none.
  [[nodiscard]] Slot next(Slot from) const;
  /// Consecutive open slots from `slot` on.
  [[nodiscard]] Slot run(Slot slot) const { return run_[at(slot)]; }
  /// The next `slots` open slots from an open `start`, pausing over closed ones; `end` is no_slot
  /// when the horizon comes first.
  [[nodiscard]] Stretch resumed(Slot start, Slot slots) const;
  /// `slots` consecutive slots from `start`, whatever their dates; `end` is no_slot when not open.
  [[nodiscard]] Stretch unbroken(Slot start, Slot slots) const;

 private:
  Slot horizon_;
  std::vector<Slot> run_;             // open slots in a row from here
  std::vector<Slot> rank_;            // open slots before here, one more than slots
  std::vector<Slot> slot_of_;         // of a rank
  std::vector<std::int64_t> labour_;  // of the open slots before a rank
  std::vector<int> dates_;            // dates begun by the open slots up to a rank, itself included
};

}  // namespace basinwright::schedule
