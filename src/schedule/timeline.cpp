#include "timeline.hpp"

#include <algorithm>
#include <cstring>

namespace basinwright::schedule {
namespace {

// The first open slot of [from, size), or the size: three slots of four are closed, eight at once.
std::size_t closed_until(const Calendar& calendar, std::size_t from, std::size_t size) {
  for (std::uint64_t eight = 0; from + sizeof eight <= size; from += sizeof eight) {
    std::memcpy(&eight, calendar.data() + from, sizeof eight);
    if (eight != 0) {
      break;
    }
  }
  while (from < size && calendar[from] == 0) {
    ++from;
  }
  return from;
}

}  // namespace

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
  for (std::size_t slot = 0; slot <= at(length);) {
    const std::size_t open = closed_until(calendar, slot, size);
    const std::size_t next = open < size ? open : at(length) + 1;
    std::fill(rank_.begin() + static_cast<std::ptrdiff_t>(slot),
              rank_.begin() + static_cast<std::ptrdiff_t>(next),
              static_cast<Slot>(rank));
    for (slot = next; slot < size && calendar[slot] != 0; ++slot) {
      rank_[slot] = static_cast<Slot>(rank);
      dates += problem.date_of[slot] != date ? 1 : 0;
      date = problem.date_of[slot];
      slot_of_[rank] = static_cast<Slot>(slot);
      dates_[rank] = dates;
      labour_[rank + 1] = labour_[rank] + problem.cost_of[slot];
      ++rank;
    }
  }
}

Slot Openings::last_before(Slot end) const {
  if (end <= 0) {
    return no_slot;
  }
  const Slot rank = rank_[at(std::min(end, length_))];
  return rank > 0 ? slot_of_[at(rank - 1)] : no_slot;
}

}  // namespace basinwright::schedule
