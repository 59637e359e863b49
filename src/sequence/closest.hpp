// Staying near the programme until now; private to the room.
#pragma once

#include <optional>
#include <vector>

#include "basinwright/schedule/solve.hpp"

namespace basinwright::sequence {

/// Where each booking of an answer stood before; nothing where it is new.
using OldStarts = std::vector<std::optional<schedule::Slot>>;

/// An answer as good as the given one, with its starts moved towards the old ones as far as moving
/// all, a first or last part, or single bookings goes. Each candidate is held against the checker.
[[nodiscard]] schedule::Answer closest(const schedule::Problem& problem,
                                       const schedule::Answer& answer,
                                       const OldStarts& old);

}  // namespace basinwright::sequence
