// Prices on scarce packs that tell how dear a total must at least be.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "takings.hpp"

namespace basinwright::purchase {

/// For any prices p >= 0 on scarce packs, the sum over needs of the least (cost + p used), less
/// p stock, is at most the cost of the best total (Lagrangian relaxation).
struct Scarcity {
  std::vector<std::int64_t> prices;   ///< One a scarce item, minor units.
  std::int64_t at_least = 0;          ///< No total within the stock costs less.
  std::optional<std::int64_t> known;  ///< The cost of some total within the stock.
};

/// Good prices for `takings`, by subgradient steps, and the cheapest total met on the way.
[[nodiscard]] Scarcity price_scarcity(const std::vector<std::vector<Taking>>& takings,
                                      const Used& stock);

/// The cost of a taking with its scarce packs priced.
[[nodiscard]] std::int64_t priced(const Taking& taking, const std::vector<std::int64_t>& prices);

}  // namespace basinwright::purchase
