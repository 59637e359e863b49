#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The refill and the dated start-up. Records quantities.refill.* and quantities.start_up.*.
[[nodiscard]] WaterPlan water_plan_of(const Job& job, const RateBook& rates, Plan& plan);

/// How many of the meter's units a volume is.
[[nodiscard]] double billed_of(units::Volume water, WaterUnit unit);

}  // namespace basinwright::job
