#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Every body taken off, and their sums.
/// @throws std::logic_error when a body's geometry is refused: a reader has checked it before
[[nodiscard]] TakeOffResult take_off_all(const Job& job, trace::Trace& trace);

}  // namespace basinwright::job
