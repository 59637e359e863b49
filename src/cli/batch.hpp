#pragma once

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

/// Many jobs, one result line each, in the order they came; a document for each too when the
/// request has a folder.
/// @return the worst status in the order 70, 4, 1, 3, 0
[[nodiscard]] Status batch(const Request& request);

}  // namespace basinwright::cli
