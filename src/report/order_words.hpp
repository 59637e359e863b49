// What is said on an order: what to look at when the goods come, where they stand, whose the rest
// is.
#pragma once

#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"

namespace basinwright::report {

/// What is looked at before the driver leaves, for what is ordered. @source common practice
[[nodiscard]] std::vector<std::string> delivery_checks(const job::Plan& plan);

/// Where the goods stand until they are used. @source common practice
[[nodiscard]] std::vector<std::string> storage(const job::Plan& plan);

/// Who pays for what is left, and what becomes of it.
[[nodiscard]] std::vector<std::string> left_over_words(const job::Plan& plan);

}  // namespace basinwright::report
