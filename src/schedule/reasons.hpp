// Why there is no programme.
#pragma once

#include "basinwright/schedule/solve.hpp"
#include "setting.hpp"

namespace basinwright::schedule {

/// The first part without a start, for a setting over the whole horizon that has no programme.
[[nodiscard]] Infeasible first_unreachable(const Setting& setting);

}  // namespace basinwright::schedule
