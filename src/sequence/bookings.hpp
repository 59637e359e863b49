#pragma once

#include <vector>

#include "basinwright/schedule/problem.hpp"
#include "instance.hpp"

namespace basinwright::sequence {

/// When each coat of each section would start by the calendar alone; empty where nobody asked.
using UnitStarts = std::vector<std::vector<schedule::Slot>>;

[[nodiscard]] UnitStarts unit_starts(const schedule::Problem& problem,
                                     const schedule::Answer& answer);

/// The solver's answer as the trade's bookings, drain to handover, each with what held it.
/// @param by_calendar what the weather is blamed from
[[nodiscard]] Programme bookings_of(const ProgrammeQuestion& question,
                                    const Instance& instance,
                                    const schedule::Answer& answer,
                                    const UnitStarts& by_calendar);

}  // namespace basinwright::sequence
