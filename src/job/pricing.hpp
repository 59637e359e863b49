#pragma once

#include "basinwright/job/plan.hpp"
#include "basinwright/quote/purchase_memory.hpp"

namespace basinwright::job {

/// Fills purchases, orders, counted lists, hire, labour and price from the plan's quantities and
/// dates.
/// @param memory of purchases between jobs; may be nothing
void price_plan(const Job& job,
                const RateBook& rates,
                dates::Date today,
                quote::PurchaseMemory* memory,
                Plan& plan);

}  // namespace basinwright::job
