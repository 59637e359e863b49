// Sets of slots under bounds on their differences.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "setting.hpp"

namespace basinwright::schedule {

/// All values of some variables with v_i - v_j <= bound(i, j); variable 0 is slot 0. Closed: no
/// bound is wider than what the others imply, so leaving a variable out is exact, and one zone
/// holds another just when each of its bounds does. `never`: no bound.
class Zone {
 public:
  explicit Zone(std::size_t variables);

  [[nodiscard]] Slot bound(std::size_t i, std::size_t j) const { return bounds()[i * size_ + j]; }
  [[nodiscard]] Slot most(std::size_t i) const { return bound(i, 0); }
  /// Minus `never` where there is none.
  [[nodiscard]] Slot least(std::size_t i) const { return -bound(0, i); }
  /// Adds v_i - v_j <= most; false when nothing is left, the zone is then of no more use.
  [[nodiscard]] bool tighten(std::size_t i, std::size_t j, Slot most);
  /// Adds low <= v_i - v_j <= high.
  [[nodiscard]] bool between(std::size_t i, std::size_t j, Reach reach) {
    return tighten(i, j, reach.until) && tighten(j, i, -reach.from);
  }
  void forget(std::size_t i);
  /// `i` takes the place of `j`, whose bounds are lost; `i` is forgotten.
  void move(std::size_t i, std::size_t j);
  [[nodiscard]] bool holds(const Zone& other) const;

 private:
  // Of up to three sections they stand in the zone itself: labels are copied often.
  static constexpr std::size_t most_within = 64;

  [[nodiscard]] const Slot* bounds() const {
    return size_ * size_ > most_within ? many_.data() : few_.data();
  }
  [[nodiscard]] Slot* bounds() { return size_ * size_ > most_within ? many_.data() : few_.data(); }

  std::size_t size_;
  std::array<Slot, most_within> few_;
  std::vector<Slot> many_;
};

}  // namespace basinwright::schedule
