// The route as work: tasks in order with their person-hours.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/coverage/coats.hpp"
#include "basinwright/dates/calendar.hpp"
#include "basinwright/preparation/route.hpp"
#include "basinwright/sequence/productivity.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::sequence {

/// The people, and when they work.
struct Crew {
  int people = 3;
  int painters = 2;
};

/// One task's work. Coats and the primer stand once a section.
struct Work {
  std::string task;
  std::string section;  ///< Empty: the whole shell.
  units::Duration person_hours;
  int people = 0;       ///< Who work on it at once.
  int of_sections = 1;  ///< Over how many sections the task is spread.
};

/// What the work depends on.
struct WorkQuestion {
  const preparation::Route& route;
  const coverage::Cut& cut;
  units::Length edge;  ///< Metres to mask.
  units::Area painted;
  Crew crew;
  double pebble_factor = 1.0;  ///< Area taken for flat over the true one.
};

/// Every task of the route with its person-hours: area over rate, or the fixed hours.
[[nodiscard]] std::vector<Work> work(const WorkQuestion& question,
                                     const Productivity& productivity,
                                     trace::Trace& trace);

/// How many people would bring the etch from the first acid to the last rinse in one shift, each of
/// its parts in whole quarter hours; 0 where nothing is etched or no number of them would.
/// @param clean_up what the end of a day takes
[[nodiscard]] int people_for_one_etch(const std::vector<Work>& work,
                                      const dates::Hours& hours,
                                      units::Duration clean_up);

}  // namespace basinwright::sequence
