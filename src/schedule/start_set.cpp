#include "unit_starts.hpp"

namespace basinwright::schedule {

StartSet::StartSet(const std::vector<char>& possible)
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

}  // namespace basinwright::schedule
