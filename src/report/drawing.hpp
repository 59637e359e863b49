// The drawing that goes with a take-off.
#pragma once

#include <cstddef>

#include "basinwright/document/drawing.hpp"
#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// One sheet for a body of water: plan and long section to one round scale with their dimensions,
/// the take-off's figures, a key and notes.
/// @param body  Index into the job's bodies.
[[nodiscard]] document::Drawing take_off_drawing(const Subject& subject, std::size_t body);

}  // namespace basinwright::report
