// What else the weather says about a programme; private to the room.
#pragma once

#include "instance.hpp"

namespace basinwright::sequence {

/// What the dates rest on, whether there are any or not.
void add_weather_basis(const SiteWeather& weather, Programme& programme);

/// The kind of hardener, rain before the drain and after the dryness test.
void add_weather_facts(const ProgrammeQuestion& question,
                       const Instance& instance,
                       Programme& programme);

}  // namespace basinwright::sequence
