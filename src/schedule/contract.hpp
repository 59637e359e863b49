// What a problem must be for its rules to mean anything.
#pragma once

#include "basinwright/schedule/problem.hpp"

namespace basinwright::schedule {

/// @throws std::invalid_argument that names the part that is out of range or out of shape
void require_sound(const Problem& problem);

}  // namespace basinwright::schedule
