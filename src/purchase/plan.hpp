// What the searches of this room speak of: packs in order of preference, and counts of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace basinwright::purchase {

/// A pack as the searches see it. Lists of items run from the largest size to the smallest.
struct Item {
  std::int64_t size = 0;
  std::int64_t price = 0;  ///< Minor units.
  std::optional<std::int64_t> stock;
  std::size_t pack = 0;  ///< Index into the packs the caller gave.
};

/// How many of each item, and what that makes.
struct Plan {
  std::int64_t cost = 0;
  std::int64_t size = 0;
  std::int64_t packs = 0;
  std::vector<std::int64_t> counts;  ///< One an item.

  /// @throws std::overflow_error when the cost leaves 64 bits
  void add(const Item& item, std::size_t index, std::int64_t count);
  /// Adds the counts of a plan over the same items.
  void add(const Plan& other);
};

/// a over b, rounded up; b above 0, a not below.
[[nodiscard]] inline std::int64_t ceil_of(std::int64_t a, std::int64_t b) {
  return a / b + (a % b == 0 ? 0 : 1);
}

/// No packs of any of `items`.
[[nodiscard]] Plan nothing_of(const std::vector<Item>& items);

/// Least cost, then least size, then fewest packs, then the most of the larger items.
[[nodiscard]] bool better(const Plan& a, const Plan& b);

}  // namespace basinwright::purchase
