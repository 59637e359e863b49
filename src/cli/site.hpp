// The pages of a running job.
#pragma once

#include "basinwright/cli/request.hpp"
#include "inputs.hpp"

namespace basinwright::cli {

/// Carries out `replan`, `today` or `coating-record`.
[[nodiscard]] Status running_job(const Request& request, const Inputs& inputs);

}  // namespace basinwright::cli
