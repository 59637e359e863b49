#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// What abrading and cleaning a section takes, at the book's rates for abrading, dust and pressure
/// cleaning.
[[nodiscard]] sequence::ReworkRules rework_rules(const RateBook& rates, const Plan& plan);

}  // namespace basinwright::job
