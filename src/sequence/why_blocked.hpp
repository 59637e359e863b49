// The smallest reason for having no dates, and the ways out; private to the room.
#pragma once

#include "trial.hpp"

namespace basinwright::sequence {

/// @param trial the search with everything in place
[[nodiscard]] Blocked why_blocked(const ProgrammeQuestion& question,
                                  const weather::Conditions* conditions,
                                  Trial trial);

}  // namespace basinwright::sequence
