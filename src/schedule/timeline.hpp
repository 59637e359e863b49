// Calendars with ranks: where work that starts or ends in a slot goes, on which dates, for what
// labour.
#pragma once

#include <algorithm>
#include <cstdint>
#include <limits>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule {

inline constexpr Slot no_slot = -1;
/// Later than any slot, with room to add.
inline constexpr Slot never = std::numeric_limits<Slot>::max() / 4;
inline constexpr std::int32_t no_date = std::numeric_limits<std::int32_t>::min();

inline std::size_t at(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// A lag that can be added to any slot.
inline Slot capped(Slot lag) {
  return lag < never ? lag : never;
}

/// Work from its first worked slot to the end of its last.
struct Stretch {
  Slot start = no_slot;
  Slot end = no_slot;
  std::int64_t labour = 0;
  int dates = 0;  ///< Distinct dates with worked slots.

  [[nodiscard]] bool possible() const { return start != no_slot && end != no_slot; }
};

/// One calendar cut off at a length, with the ranks of its open slots.
class Openings {
 public:
  Openings(const Calendar& calendar, const Problem& problem, Slot length);

  [[nodiscard]] bool open(Slot slot) const {
    return slot < length_ && rank_[at(slot) + 1] > rank_[at(slot)];
  }
  /// The first open slot at or after `from`; the length when there is none.
  [[nodiscard]] Slot next(Slot from) const {
    const std::size_t rank = rank_from(from);
    return rank < slot_of_.size() ? slot_of_[rank] : length_;
  }
  /// The number, among the open slots, of the first at or after `from`.
  [[nodiscard]] std::size_t rank_from(Slot from) const {
    return from >= length_ ? slot_of_.size() : at(rank_[at(std::max<Slot>(from, 0))]);
  }
  /// All open slots, ascending.
  [[nodiscard]] const std::vector<Slot>& slots() const { return slot_of_; }
  /// The last open slot before `end`; no_slot when there is none.
  [[nodiscard]] Slot last_before(Slot end) const;
  /// How many slots are open.
  [[nodiscard]] Slot count() const { return rank_.back(); }
  /// The next `slots` open slots from an open `start`, pausing over closed ones.
  [[nodiscard]] Stretch resumed(Slot start, Slot slots) const {
    Stretch stretch;
    return resume(at(rank_[at(start)]), slots, stretch) ? stretch : Stretch{};
  }
  /// The same from the open slot of a rank, into a stretch without labour; false when there are not
  /// so many.
  [[nodiscard]] bool resume(std::size_t rank, Slot slots, Stretch& stretch) const {
    const std::size_t count = at(slots);
    if (rank + count > slot_of_.size()) {
      return false;
    }
    stretch.start = stretch.end = slot_of_[rank];
    if (count > 0) {
      const std::size_t last = rank + count - 1;
      stretch.end = slot_of_[last] + 1;
      stretch.labour = labour_[last + 1] - labour_[rank];
      stretch.dates = dates_[last] - dates_[rank] + 1;
    }
    return true;
  }
  /// The `slots` open slots before `end`, the last of them at `end - 1`, which is open.
  [[nodiscard]] Stretch resumed_until(Slot end, Slot slots) const {
    const Slot last = rank_[at(end)];
    return last >= slots ? ranks(at(last - slots), at(slots)) : Stretch{};
  }
  /// `slots` consecutive slots from `start`, whatever their dates.
  [[nodiscard]] Stretch unbroken(Slot start, Slot slots) const {
    Stretch stretch;
    return go_through(at(rank_[at(start)]), slots, stretch) ? stretch : Stretch{};
  }
  /// The same from the open slot of a rank, into a stretch without labour.
  [[nodiscard]] bool go_through(std::size_t rank, Slot slots, Stretch& stretch) const {
    const std::size_t last = rank + at(std::max<Slot>(slots, 1)) - 1;
    return last < slot_of_.size() &&
           slot_of_[last] - slot_of_[rank] == static_cast<Slot>(last - rank) &&
           resume(rank, slots, stretch);
  }

 private:
  [[nodiscard]] Stretch ranks(std::size_t first, std::size_t count) const {
    const std::size_t last = first + count - 1;
    return {slot_of_[first],
            slot_of_[last] + 1,
            labour_[last + 1] - labour_[first],
            dates_[last] - dates_[first] + 1};
  }

  Slot length_;
  std::vector<Slot> rank_;            // open slots before here, one more than slots
  std::vector<Slot> slot_of_;         // of a rank
  std::vector<std::int64_t> labour_;  // of the open slots before a rank
  std::vector<int> dates_;            // begun by the open slots up to a rank, itself included
};

}  // namespace basinwright::schedule
