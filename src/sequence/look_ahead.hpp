// What may be begun next, and what stands in the way; private to the room.
#pragma once

#include "basinwright/sequence/programme.hpp"
#include "basinwright/weather/conditions.hpp"

namespace basinwright::sequence {

/// Every task that what is done allows next, each with its first failing gate and when it opens.
/// @param lost what has to be made good first
[[nodiscard]] std::vector<Chance> look_ahead(const ProgrammeQuestion& question,
                                             const weather::Conditions* conditions,
                                             const Programme& programme);

}  // namespace basinwright::sequence
