#pragma once

#include <string>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Below what the doses of a reading are recorded: "quantities.sump.ph_2_0.".
[[nodiscard]] std::string sump_key(chemistry::Ph measured);

/// The water of each wash with its pH and verdict, and the sump's doses by what is read.
/// Records quantities.wash_water.* and quantities.sump.*.
/// @param sump whether the doses are wanted; nothing else follows from them
[[nodiscard]] Discharge discharge_of(const Job& job, const RateBook& rates, Plan& plan, bool sump);

}  // namespace basinwright::job
