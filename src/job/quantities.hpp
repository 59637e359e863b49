#pragma once

#include <vector>

#include "basinwright/job/plan.hpp"
#include "regions.hpp"

namespace basinwright::job {

/// What the quantities depend on, once the route is known.
struct NeedsQuestion {
  const Job& job;
  const RateBook& rates;
  const std::vector<Part>& parts;
  const preparation::Question& findings;
  const Plan& plan;  ///< Take-off, route and system are settled.
};

/// Litres, kilograms and kits for the route. @throws std::logic_error for an unfit acid, which the
/// reader's limits keep out
[[nodiscard]] Quantities quantities_of(const NeedsQuestion& question, trace::Trace& trace);

/// The needs of a plan as items of the rate book: those of the shell, of the wash waters and of the
/// new water.
[[nodiscard]] std::vector<quote::Need> needs_of(const Plan& plan);

}  // namespace basinwright::job
