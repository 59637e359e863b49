// The useful ways in which one need can take from scarce stock.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "plan.hpp"

namespace basinwright::purchase {

/// Packs of each scarce item.
using Used = std::vector<std::int64_t>;

/// One way to cover a need: its scarce packs, and the whole plan with the best filling up.
struct Taking {
  Used used;
  Plan plan;
  std::int64_t excess = 0;  ///< Priced cost above the need's cheapest taking.
};

/// The items whose stock the needs could exhaust together, as indices into `items`: only these tie
/// the needs together.
[[nodiscard]] std::vector<std::size_t> scarce_items(const std::vector<std::int64_t>& needs,
                                                    const std::vector<Item>& items);

/// For each need every taking that a best total may hold: all counts of scarce items without a pack
/// to spare, each filled up with the best of the other items.
[[nodiscard]] std::vector<std::vector<Taking>> list_takings(const std::vector<std::int64_t>& needs,
                                                            const std::vector<Item>& items,
                                                            const std::vector<std::size_t>& scarce);

}  // namespace basinwright::purchase
