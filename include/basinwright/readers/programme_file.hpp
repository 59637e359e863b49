// A programme as the program wrote it in JSON, read back.
#pragma once

#include <optional>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/job/site_past.hpp"
#include "basinwright/readers/read.hpp"

namespace basinwright::readers {

/// The tasks and promised dates of a job sheet or re-plan in JSON; keys that are not asked for are
/// passed over. Nothing comes back when there is an error.
[[nodiscard]] std::optional<job::Promised> read_programme(const Input& input,
                                                          diagnostics::Problems& problems);

}  // namespace basinwright::readers
