// The objective without its finish: what adds up along a programme.
#pragma once

#include <compare>
#include <cstdint>
#include <limits>

namespace basinwright::schedule {

/// Adds by component and compares in order, so that adding the same to both sides of a comparison
/// never turns it.
struct Tally {
  int splits = 0;
  int reworks = 0;
  std::int64_t cost = 0;
  std::int64_t empty = 0;  ///< Slots; only once the task that empties is placed.

  friend auto operator<=>(const Tally&, const Tally&) = default;
  friend Tally operator+(const Tally& a, const Tally& b) {
    return {a.splits + b.splits, a.reworks + b.reworks, a.cost + b.cost, a.empty + b.empty};
  }
  friend Tally operator-(const Tally& a, const Tally& b) {
    return {a.splits - b.splits, a.reworks - b.reworks, a.cost - b.cost, a.empty - b.empty};
  }
  [[nodiscard]] Tally costing(std::int64_t more) const {
    return {splits, reworks, cost + more, empty};
  }
  [[nodiscard]] Tally without_empty() const { return {splits, reworks, cost, 0}; }
};

/// More than any programme's; stands for "there is none".
inline constexpr Tally no_tally{std::numeric_limits<int>::max() / 2, 0, 0, 0};

}  // namespace basinwright::schedule
