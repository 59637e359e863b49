#pragma once

#include <vector>

#include "basinwright/preparation/route.hpp"

namespace basinwright::preparation {

/// Every reason for which nobody may go on, each at the step that it stops.
[[nodiscard]] std::vector<Stop> reasons_to_stop(const Question& question);

}  // namespace basinwright::preparation
