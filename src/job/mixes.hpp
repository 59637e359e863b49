#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// A card for each wash of the route in buckets, and for the etch in watering cans too.
/// Records quantities.mixes.* for the first full vessel of each.
[[nodiscard]] Mixes mixes_of(const RateBook& rates,
                             const Quantities& quantities,
                             trace::Trace& trace);

}  // namespace basinwright::job
