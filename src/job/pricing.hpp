#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/quote/purchase_memory.hpp"

namespace basinwright::job {

/// Fills purchases, orders, counted lists, hire, labour and price from the plan's quantities and
/// dates.
/// @param today from which orders are dated; nothing: orders are left out
/// @param memory of purchases between jobs; may be nothing
void price_plan(const Job& job,
                const RateBook& rates,
                std::optional<dates::Date> today,
                quote::PurchaseMemory* memory,
                Plan& plan);

/// What the rules of the rate book count by.
[[nodiscard]] quote::Basis basis_of(const Job& job, const Plan& plan);

/// The days on which a task is worked, in order, all days on site where it names none.
[[nodiscard]] std::vector<dates::Date> hired_days(const sequence::Programme& programme,
                                                  const std::string& task);

}  // namespace basinwright::job
