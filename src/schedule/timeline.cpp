#include "timeline.hpp"

#include <algorithm>

namespace basinwright::schedule {

Openings::Openings(const Calendar& calendar, const Problem& problem, Slot length)
    : length_(length), run_(at(length) + 1, 0), rank_(at(length) + 1, 0) {
  const std::size_t size = std::min(calendar.size(), at(length));
  for (std::size_t slot = size; slot-- > 0;) {
    run_[slot] = calendar[slot] != 0 ? run_[slot + 1] + 1 : 0;
  }
  labour_.push_back(0);
  std::int32_t date = no_date;
  int dates = 0;
  for (Slot slot = 0; slot < length; ++slot) {
    rank_[at(slot)] = static_cast<Slot>(slot_of_.size());
    if (!open(slot)) {
      continue;
    }
    dates += problem.date_of[at(slot)] != date ? 1 : 0;
    date = problem.date_of[at(slot)];
    dates_.push_back(dates);
    labour_.push_back(labour_.back() + problem.cost_of[at(slot)]);
    slot_of_.push_back(slot);
  }
  rank_[at(length)] = static_cast<Slot>(slot_of_.size());
}

Slot Openings::next(Slot from) const {
  if (from >= length_) {
    return length_;
  }
  const std::size_t rank = at(rank_[at(std::max<Slot>(from, 0))]);
  return rank < slot_of_.size() ? slot_of_[rank] : length_;
}

Slot Openings::last_before(Slot end) const {
  if (end <= 0) {
    return no_slot;
  }
  const Slot rank = rank_[at(std::min(end, length_))];
  return rank > 0 ? slot_of_[at(rank - 1)] : no_slot;
}

Stretch Openings::ranks(std::size_t first, std::size_t count) const {
  const std::size_t last = first + count - 1;
  return {slot_of_[first],
          slot_of_[last] + 1,
          labour_[last + 1] - labour_[first],
          dates_[last] - dates_[first] + 1};
}

Stretch Openings::resumed(Slot start, Slot slots) const {
  if (slots == 0) {
    return {start, start, 0, 0};
  }
  const std::size_t first = at(rank_[at(start)]);
  return first + at(slots) <= slot_of_.size() ? ranks(first, at(slots)) : Stretch{};
}

Stretch Openings::resumed_until(Slot end, Slot slots) const {
  const Slot last = rank_[at(end)];
  return last >= slots ? ranks(at(last - slots), at(slots)) : Stretch{};
}

Stretch Openings::unbroken(Slot start, Slot slots) const {
  return run(start) >= slots ? resumed(start, slots) : Stretch{};
}

}  // namespace basinwright::schedule
