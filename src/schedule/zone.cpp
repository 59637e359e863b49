#include "zone.hpp"

namespace basinwright::schedule {

Zone::Zone(std::size_t variables) : size_(variables) {
  few_.fill(never);
  if (size_ * size_ > most_within) {
    many_.assign(size_ * size_, never);
  }
  Slot* const bounds = this->bounds();
  for (std::size_t i = 0; i < size_; ++i) {
    bounds[i * size_ + i] = 0;
  }
}

bool Zone::tighten(std::size_t i, std::size_t j, Slot most) {
  if (most >= bound(i, j)) {
    return true;
  }
  if (bound(j, i) < never && bound(j, i) + most < 0) {
    return false;
  }
  Slot* const bounds = this->bounds();
  for (std::size_t from = 0; from < size_; ++from) {
    const Slot there = bounds[from * size_ + i];
    if (there >= never) {
      continue;
    }
    for (std::size_t to = 0; to < size_; ++to) {
      const Slot onwards = bounds[j * size_ + to];
      if (onwards < never) {
        Slot& known = bounds[from * size_ + to];
        known = std::min(known, there + most + onwards);
      }
    }
  }
  return true;
}

void Zone::forget(std::size_t i) {
  Slot* const bounds = this->bounds();
  for (std::size_t other = 0; other < size_; ++other) {
    bounds[i * size_ + other] = bounds[other * size_ + i] = i == other ? 0 : never;
  }
}

void Zone::move(std::size_t i, std::size_t j) {
  Slot* const bounds = this->bounds();
  for (std::size_t other = 0; other < size_; ++other) {
    if (other != i && other != j) {
      bounds[j * size_ + other] = bound(i, other);
      bounds[other * size_ + j] = bound(other, i);
    }
  }
  forget(i);
}

bool Zone::holds(const Zone& other) const {
  const Slot* const mine = bounds();
  const Slot* const others = other.bounds();
  for (std::size_t place = 0; place < size_ * size_; ++place) {
    if (mine[place] < others[place]) {
      return false;
    }
  }
  return true;
}

}  // namespace basinwright::schedule
