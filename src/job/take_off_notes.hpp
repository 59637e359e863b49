// How the take-off's sums, sections and ranges came about, for `explain`.
#pragma once

#include <string>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// What the keys of a body begin with: "takeoff." for the only one.
[[nodiscard]] std::string keys_of_body(const Job& job, std::size_t body);
/// Where a body's measured area is recorded, before what is added by name.
[[nodiscard]] std::string measured_key(const Job& job, std::size_t body);

/// Named areas of each body, and the sums over all bodies.
void note_totals(const Job& job, const TakeOffResult& result, trace::Trace& trace);

/// The painted area of each section from its surfaces.
void note_parts(const TakeOffResult& result, trace::Trace& trace);

}  // namespace basinwright::job
