// The smallest reason for having no dates, and the ways out; private to the room.
#pragma once

#include "trial.hpp"

namespace basinwright::sequence {

/// @param stuck where the search with everything in place ended
[[nodiscard]] Blocked why_blocked(const ProgrammeQuestion& question,
                                  const weather::Conditions* conditions,
                                  Blocked stuck);

}  // namespace basinwright::sequence
