// The programme itself, once its price is known.
#pragma once

#include <vector>

#include "chain_cost.hpp"
#include "endings.hpp"

namespace basinwright::schedule {

/// The bookings at the best price whose starts come first: chain, then the rest in order of start.
[[nodiscard]] std::vector<Booking> first_bookings(const Setting& setting,
                                                  const UnitStarts& starts,
                                                  const Goals& goals,
                                                  const ChainCost& chain,
                                                  Endings& suffixes);

}  // namespace basinwright::schedule
