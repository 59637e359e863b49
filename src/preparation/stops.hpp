#pragma once

#include <optional>

#include "basinwright/preparation/route.hpp"

namespace basinwright::preparation {

/// The first reason, in the order of the work, for which nobody may go on; nothing when none holds.
[[nodiscard]] std::optional<Stop> reason_to_stop(const Question& question);

}  // namespace basinwright::preparation
