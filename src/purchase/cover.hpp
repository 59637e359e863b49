// The best cover of one need, by dynamic programming.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "plan.hpp"

namespace basinwright::purchase {

/// The best plans for every need up to a largest one.
///
/// With g the greatest common divisor of the sizes, f_k[v] is the least (cost, packs) of items k
/// and later that hold exactly v g: f_k[v] = min over q <= stock of f_(k+1)[v - q s_k] + q (c_k,
/// 1). No best cover can spare a pack, so none exceeds the need by a largest pack and the table
/// ends there.
class CoverTable {
 public:
  /// Items without stock may be listed; they are never taken.
  /// @throws std::length_error when the table would take more than 2^26 entries
  /// @throws std::overflow_error when a cost in the table could leave 64 bits
  CoverTable(const std::vector<Item>& items, std::int64_t largest_need);

  /// The best plan that holds at least `need`, by `better`; nothing when the stock does not reach.
  [[nodiscard]] std::optional<Plan> best(std::int64_t need) const;

 private:
  struct Key {
    std::int64_t cost = std::numeric_limits<std::int64_t>::max();
    std::int64_t packs = 0;
    [[nodiscard]] bool reached() const { return cost != std::numeric_limits<std::int64_t>::max(); }
  };
  using Counts = std::vector<std::int32_t>;

  [[nodiscard]] std::size_t steps(std::int64_t size) const;
  void check_range(std::int64_t largest_need) const;
  void take_any(const Item& item, Counts& taken);
  void take_at_most(const Item& item, std::int64_t most, Counts& taken);
  void take_of_residue(const Item& item, std::size_t residue, std::int64_t most, Counts& taken);
  void rank();

  std::vector<Item> items_;
  std::int64_t unit_ = 1;              ///< g
  std::vector<Key> keys_;              ///< f of the items looked at so far, by v.
  std::vector<Counts> taken_;          ///< The largest best q of each item, by v.
  std::vector<std::size_t> cheapest_;  ///< By v: the best total at or above v.
};

}  // namespace basinwright::purchase
