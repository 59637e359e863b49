#pragma once

#include "basinwright/chemistry/saturation.hpp"
#include "basinwright/job/job.hpp"
#include "basinwright/job/water_plan.hpp"
#include "basinwright/trace/trace.hpp"

namespace basinwright::job {

/// Of water whose temperature nobody said.
inline constexpr Sourced<units::Temperature> usual_warmth{
    units::celsius(20), {sources::Kind::assumed, "start-up-targets", "water temperature"}};

/// The fill water, and the water once everything is in.
struct IndexQuestion {
  const Job& job;
  const chemistry::Water& fill;
  const chemistry::Water& target;
  trace::Trace& trace;
};

/// Both waters by the table and by the standard equations, each also with the stabiliser taken out
/// of the alkalinity. A water whose pH, alkalinity or hardness nobody measured has none.
/// Records quantities.saturation.<water>.<method>.
void add_indices(WaterPlan& plan, const IndexQuestion& question);

}  // namespace basinwright::job
