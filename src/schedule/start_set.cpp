#include <bit>

#include "unit_starts.hpp"

namespace basinwright::schedule {

Slot StartSet::next(Slot from) const {
  const std::size_t first = at(std::max<Slot>(from, 0));
  std::size_t word = first / bits;
  if (word >= words_.size()) {
    return never;
  }
  std::uint64_t left = words_[word] & ~std::uint64_t{0} << first % bits;
  while (left == 0) {
    if (++word == words_.size()) {
      return never;
    }
    left = words_[word];
  }
  return static_cast<Slot>(word * bits) + std::countr_zero(left);
}

Slot StartSet::gap(Slot from) const {
  std::size_t word = at(from) / bits;
  if (word >= words_.size()) {
    return from;
  }
  std::uint64_t left = ~words_[word] & ~std::uint64_t{0} << at(from) % bits;
  while (left == 0) {
    if (++word == words_.size()) {
      return static_cast<Slot>(word * bits);
    }
    left = ~words_[word];
  }
  return static_cast<Slot>(word * bits) + std::countr_zero(left);
}

Slot StartSet::previous(Slot until) const {
  if (until < 0 || words_.empty()) {
    return no_slot;
  }
  const std::size_t last = std::min(at(until), words_.size() * bits - 1);
  std::size_t word = last / bits;
  std::uint64_t left = words_[word] & ~std::uint64_t{0} >> (bits - 1 - last % bits);
  while (left == 0) {
    if (word-- == 0) {
      return no_slot;
    }
    left = words_[word];
  }
  return static_cast<Slot>(word * bits + bits - 1) - std::countl_zero(left);
}

}  // namespace basinwright::schedule
