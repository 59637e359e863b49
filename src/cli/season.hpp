#pragma once

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

/// `batch --programme`: books all jobs on the crews of a crews file over a season.
[[nodiscard]] Status season(const Request& request);

}  // namespace basinwright::cli
