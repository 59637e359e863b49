// The plan as a calendar's entries.
#pragma once

#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// Work as stretches, orders and hold points as things to do, the close of each recoat window as a
/// deadline. An entry keeps its identifier from run to run.
[[nodiscard]] document::Agenda agenda_of(const Subject& s);

}  // namespace basinwright::report
