#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "basinwright/units/unit.hpp"

namespace basinwright::sequence {

inline constexpr double quarters_in_hour = 4.0;

/// Twenty thousand years and more: a day so far off still is one, and sums of a few of them fit.
inline constexpr double most_quarters = 7e8;

/// Whole quarters that hold a time: rounded up, a hair (1e-6 of a quarter) forgiven.
[[nodiscard]] inline std::int32_t quarters_up(units::Duration time) {
  const double quarters = std::ceil(time.in(units::hours)*quarters_in_hour - 1e-6);
  return static_cast<std::int32_t>(std::clamp(quarters, -most_quarters, most_quarters));
}
/// Whole quarters inside a time.
[[nodiscard]] inline std::int32_t quarters_down(units::Duration time) {
  const double quarters = std::floor(time.in(units::hours)*quarters_in_hour + 1e-6);
  return static_cast<std::int32_t>(std::clamp(quarters, -most_quarters, most_quarters));
}

/// Open slots by rank: where a resumable task of p slots ends that may start at a slot.
class OpenSlots {
 public:
  explicit OpenSlots(const std::vector<char>& open)
      : rank_(open.size() + 1),
        position_(open.size() -
                  static_cast<std::size_t>(std::count(open.begin(), open.end(), char{0}))) {
    std::int32_t rank = 0;
    const auto slot = [&](auto at) { return static_cast<std::size_t>(at - open.begin()); };
    for (auto at = open.begin(); at != open.end();) {
      const auto opens = std::find_if(at, open.end(), [](char on) { return on != 0; });
      std::fill(rank_.data() + slot(at), rank_.data() + slot(opens), rank);
      at = std::find(opens, open.end(), char{0});
      for (std::size_t s = slot(opens); s < slot(at); ++s) {
        position_[static_cast<std::size_t>(rank)] = static_cast<std::int32_t>(s);
        rank_[s] = rank++;
      }
    }
    rank_.back() = rank;
  }
  /// All of them, ascending.
  [[nodiscard]] const std::vector<std::int32_t>& all() const { return position_; }
  /// First open slot at or after s; -1 when there is none.
  [[nodiscard]] std::int32_t next(std::int32_t s) const { return at(rank(s)); }
  /// End of p open slots from the first at or after s; -1 when they do not all fit.
  [[nodiscard]] std::int32_t end_of(std::int32_t s, std::int32_t p) const {
    if (p <= 0) return s;
    const std::int32_t last = at(rank(s) + p - 1);
    return last < 0 ? -1 : last + 1;
  }
  /// Open slots in [from, to).
  [[nodiscard]] std::int32_t between(std::int32_t from, std::int32_t to) const {
    return rank(to) - rank(from);
  }

 private:
  [[nodiscard]] std::int32_t rank(std::int32_t s) const {
    const auto last = static_cast<std::int32_t>(rank_.size()) - 1;
    return rank_[static_cast<std::size_t>(s < 0 ? 0 : (s > last ? last : s))];
  }
  [[nodiscard]] std::int32_t at(std::int32_t k) const {
    return k < static_cast<std::int32_t>(position_.size()) ? position_[static_cast<std::size_t>(k)]
                                                           : -1;
  }
  std::vector<std::int32_t> rank_;
  std::vector<std::int32_t> position_;
};

}  // namespace basinwright::sequence
