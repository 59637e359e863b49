// `new`: a starter job file from options, or from answers on a terminal.
#pragma once

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

/// Makes, checks and writes the file; asks on the terminal for what the options leave out.
[[nodiscard]] Status make_starter(const Request& request);

}  // namespace basinwright::cli
