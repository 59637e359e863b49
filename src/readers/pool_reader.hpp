#pragma once

#include "basinwright/job/job.hpp"
#include "view.hpp"

namespace basinwright::readers {

/// Reads a body of water and takes it off, to report what the geometry refuses. Parts that cannot
/// be read are left out and reported; the outline is then looked at alone.
[[nodiscard]] std::optional<job::Body> read_body(View& view, const job::Job& defaults);

}  // namespace basinwright::readers
