// One thing done, as a fact of the general problem; private to the room.
#pragma once

#include <string>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::sequence {

/// What was done and when, in slots.
struct Fact {
  std::string task, section;
  schedule::Slot start = 0, end = 0;
};

/// Adds a fact to the problem's by the names of its chain, coats and sections: `rework` is after
/// the last coat that was on, `clean-again` the last wash again; of tasks with one name the first
/// that is not done yet. An unknown section is the only one; an unknown task is passed over.
void add_fact(schedule::Problem& problem, const Fact& fact);

}  // namespace basinwright::sequence
