#pragma once

#include <vector>

#include "basinwright/schedule/problem.hpp"
#include "instance.hpp"

namespace basinwright::sequence {

/// The solver's answer as the trade's bookings, drain to handover, each with what held it.
[[nodiscard]] Programme bookings_of(const ProgrammeQuestion& question,
                                    const Instance& instance,
                                    const schedule::Answer& answer);

}  // namespace basinwright::sequence
