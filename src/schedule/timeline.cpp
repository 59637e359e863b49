#include "timeline.hpp"

#include <algorithm>

namespace basinwright::schedule {

Openings::Openings(const Calendar& calendar, const Problem& problem, Slot length)
    : length_(length), rank_(at(length) + 1) {
  const std::size_t size = std::min(calendar.size(), at(length));
  const auto opened =
      size - static_cast<std::size_t>(std::count(
                 calendar.begin(), calendar.begin() + static_cast<std::ptrdiff_t>(size), char{0}));
  slot_of_.resize(opened);
  dates_.resize(opened);
  labour_.resize(opened + 1);
  std::int32_t date = no_date;
  int dates = 0;
  std::size_t rank = 0;
  for (Slot slot = 0; slot < length; ++slot) {
    rank_[at(slot)] = static_cast<Slot>(rank);
    if (at(slot) >= size || calendar[at(slot)] == 0) {
      continue;
    }
    dates += problem.date_of[at(slot)] != date ? 1 : 0;
    date = problem.date_of[at(slot)];
    slot_of_[rank] = slot;
    dates_[rank] = dates;
    labour_[rank + 1] = labour_[rank] + problem.cost_of[at(slot)];
    ++rank;
  }
  rank_[at(length)] = static_cast<Slot>(rank);
}

Slot Openings::last_before(Slot end) const {
  if (end <= 0) {
    return no_slot;
  }
  const Slot rank = rank_[at(std::min(end, length_))];
  return rank > 0 ? slot_of_[at(rank - 1)] : no_slot;
}

}  // namespace basinwright::schedule
