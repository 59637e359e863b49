#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Fills purchases, orders, counted lists, hire, labour and price from the plan's quantities and
/// dates.
void price_plan(const Job& job, const RateBook& rates, dates::Date today, Plan& plan);

}  // namespace basinwright::job
