#pragma once

#include <cmath>

#include "basinwright/job/job.hpp"
#include "basinwright/materials/coating_system.hpp"

namespace basinwright::job {

/// Coats of the coating: what the job says, else the least its data sheet wants.
[[nodiscard]] inline int coats_of(const Job& job, const materials::CoatingSystem& system) {
  return job.coating.coats.value_or(static_cast<int>(std::lround(system.least_coats.value)));
}

}  // namespace basinwright::job
