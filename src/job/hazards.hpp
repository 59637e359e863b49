#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The cautions that belong to this plan: the ones that always hold, and those its route brings.
[[nodiscard]] std::vector<Caution> cautions_of(const Job& job,
                                               const RateBook& rates,
                                               const Plan& plan);

/// What has to go somewhere, step by step.
[[nodiscard]] std::vector<Waste> waste_of(const Plan& plan);

}  // namespace basinwright::job
