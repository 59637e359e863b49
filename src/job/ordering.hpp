#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The task that first needs an item.
[[nodiscard]] std::string first_use(const quote::Purchase& purchase);

/// Fills in how many kits of a coat to order by the ranges of area and cover, at the rate book's
/// confidence; records how at `orders`. Needs take-off, range, coats and cut of the plan.
void order_kits(const RateBook& rates, Plan& plan);

/// Fills the orders of each supplier and the last day of each purchase, from purchases and dates.
void order_all(const Job& job, const RateBook& rates, dates::Date today, Plan& plan);

}  // namespace basinwright::job
