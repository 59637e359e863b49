// Why there is no programme.
#pragma once

#include "basinwright/schedule/solve.hpp"
#include "finish_search.hpp"

namespace basinwright::schedule {

/// The first part without a start, for a problem that has no programme; `whole` looks at all slots.
[[nodiscard]] Infeasible first_unreachable(const Look& whole);

}  // namespace basinwright::schedule
