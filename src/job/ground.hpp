#pragma once

#include <optional>

#include "basinwright/job/job.hpp"
#include "basinwright/shell/flotation.hpp"
#include "basinwright/trace/trace.hpp"

namespace basinwright::job {

/// The shell that is nearest to floating.
struct GroundFound {
  preparation::Ground ground = preparation::Ground::unknown;
  std::optional<shell::Flotation> flotation;
};

/// Each body against the groundwater that was measured; unknown as long as the level or a thickness
/// is. Records flotation.* of the body, below its own key when there are several.
[[nodiscard]] GroundFound ground_of(const Job& job, trace::Trace& trace);

}  // namespace basinwright::job
