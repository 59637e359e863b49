// Several needs covered apart from one stock.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "plan.hpp"

namespace basinwright::purchase {

/// A plan for each need: the best total over whole covers, by `better` on the sums, within the
/// stock that the needs share; among equal totals the earlier needs take the larger packs. Nothing
/// when the stock does not reach.
[[nodiscard]] std::optional<std::vector<Plan>> cover_apart(const std::vector<std::int64_t>& needs,
                                                           const std::vector<Item>& items);

}  // namespace basinwright::purchase
