// What else the weather says about a programme; private to the room.
#pragma once

#include "instance.hpp"

namespace basinwright::sequence {

/// The basis of the dates, the kind of hardener, rain before the drain and after the dryness test.
void add_weather_facts(const ProgrammeQuestion& question,
                       const Instance& instance,
                       Programme& programme);

}  // namespace basinwright::sequence
