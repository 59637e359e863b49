// A question about a job that has begun, cut so that everything in it is done or still to do;
// private to the room.
#pragma once

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// Work broken off is split into what is done and the rest, a section painted in part into two
/// sections; an etch broken off is done again whole, since acid goes to its last rinse in one
/// shift. Work before anything that was begun counts as done, recorded or not.
[[nodiscard]] ProgrammeQuestion frozen(const ProgrammeQuestion& question);

}  // namespace basinwright::sequence
