#include "zone.hpp"

namespace basinwright::schedule {

Zone::Zone(std::size_t variables) : size_(variables), bounds_(variables * variables, never) {
  for (std::size_t i = 0; i < size_; ++i) {
    bounds_[i * size_ + i] = 0;
  }
}

bool Zone::tighten(std::size_t i, std::size_t j, Slot most) {
  if (most >= bound(i, j)) {
    return true;
  }
  if (bound(j, i) < never && bound(j, i) + most < 0) {
    return false;
  }
  for (std::size_t from = 0; from < size_; ++from) {
    const Slot there = bound(from, i);
    if (there >= never) {
      continue;
    }
    for (std::size_t to = 0; to < size_; ++to) {
      const Slot onwards = bound(j, to);
      if (onwards < never) {
        Slot& known = bounds_[from * size_ + to];
        known = std::min(known, there + most + onwards);
      }
    }
  }
  return true;
}

void Zone::forget(std::size_t i) {
  for (std::size_t other = 0; other < size_; ++other) {
    bounds_[i * size_ + other] = bounds_[other * size_ + i] = i == other ? 0 : never;
  }
}

void Zone::move(std::size_t i, std::size_t j) {
  for (std::size_t other = 0; other < size_; ++other) {
    if (other != i && other != j) {
      bounds_[j * size_ + other] = bound(i, other);
      bounds_[other * size_ + j] = bound(other, i);
    }
  }
  forget(i);
}

bool Zone::holds(const Zone& other) const {
  for (std::size_t place = 0; place < bounds_.size(); ++place) {
    if (bounds_[place] < other.bounds_[place]) {
      return false;
    }
  }
  return true;
}

}  // namespace basinwright::schedule
