// Adding to the site log.
#pragma once

#include "basinwright/cli/request.hpp"
#include "inputs.hpp"

namespace basinwright::cli {

/// Adds one entry, or each line of standard input, and says so once the disk has it. What cannot be
/// is refused; what breaks a rule is kept, with a warning.
[[nodiscard]] Status record(const Request& request, const Inputs& inputs);

/// The local time on this machine's clock.
[[nodiscard]] dates::Minute clock_now();

}  // namespace basinwright::cli
