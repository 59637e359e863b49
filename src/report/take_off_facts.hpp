// The figures of a take-off, for one body of water or for all of them.
#pragma once

#include <vector>

#include "basinwright/job/plan.hpp"
#include "cells.hpp"

namespace basinwright::report {

/// What was measured, with what the job adds to it by name.
struct Measured {
  const shell::TakeOff& take_off;
  std::vector<job::Adjustment> adjust;
  units::Area painted;  ///< With the adjustments.
};

/// @param whole  Everything; otherwise only what the coat needs.
[[nodiscard]] document::Facts take_off_facts(const Measured& measured, const Cells& c, bool whole);

}  // namespace basinwright::report
