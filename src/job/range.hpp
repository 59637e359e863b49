#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The painted area with every length of the tape out by its tolerance one way, (1 - t)^2 of the
/// measured area, and the other, (1 + t)^2: to first order twice the tolerance. Areas added by name
/// stay as given. Kits of all coats at the expected cover for both ends and for the area itself.
/// @source tape-tolerance; lengths scale areas by their square
[[nodiscard]] PaintedRange painted_range(const Job& job, Plan& plan);

}  // namespace basinwright::job
