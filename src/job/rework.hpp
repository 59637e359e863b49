#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// What abrading and cleaning a section takes, at the book's rates for abrading, dust and pressure
/// cleaning.
[[nodiscard]] sequence::ReworkRules rework_rules(const RateBook& rates, const Plan& plan);

/// The work, area and dust of reworks that the programme plans.
void add_reworks(const RateBook& rates, Plan& plan);

}  // namespace basinwright::job
