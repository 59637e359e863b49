#include "timeline.hpp"

#include <algorithm>

namespace basinwright::schedule {

Openings::Openings(const Calendar& calendar, const Problem& problem, Slot horizon)
    : horizon_(horizon), run_(at(horizon) + 1, 0), rank_(at(horizon) + 1, 0) {
  const std::size_t size = std::min(calendar.size(), at(horizon));
  for (std::size_t slot = size; slot-- > 0;) {
    run_[slot] = calendar[slot] != 0 ? run_[slot + 1] + 1 : 0;
  }
  labour_.push_back(0);
  for (Slot slot = 0; slot < horizon; ++slot) {
    rank_[at(slot)] = static_cast<Slot>(slot_of_.size());
    if (run_[at(slot)] == 0) {
      continue;
    }
    const bool new_date =
        slot_of_.empty() || problem.date_of[at(slot_of_.back())] != problem.date_of[at(slot)];
    dates_.push_back((dates_.empty() ? 0 : dates_.back()) + (new_date ? 1 : 0));
    labour_.push_back(labour_.back() + problem.cost_of[at(slot)]);
    slot_of_.push_back(slot);
  }
  rank_[at(horizon)] = static_cast<Slot>(slot_of_.size());
}

Slot Openings::next(Slot from) const {
  if (from >= horizon_) {
    return horizon_;
  }
  const std::size_t rank = at(rank_[at(std::max<Slot>(from, 0))]);
  return rank < slot_of_.size() ? slot_of_[rank] : horizon_;
}

Stretch Openings::resumed(Slot start, Slot slots) const {
  if (slots == 0) {
    return {start, start, 0, 0};
  }
  const std::size_t first = at(rank_[at(start)]);
  const std::size_t last = first + at(slots) - 1;
  if (last >= slot_of_.size()) {
    return {start, no_slot, 0, 0};
  }
  return {start,
          slot_of_[last] + 1,
          labour_[last + 1] - labour_[first],
          dates_[last] - dates_[first] + 1};
}

Stretch Openings::unbroken(Slot start, Slot slots) const {
  if (run(start) < slots) {
    return {start, no_slot, 0, 0};
  }
  return resumed(start, slots);
}

}  // namespace basinwright::schedule
