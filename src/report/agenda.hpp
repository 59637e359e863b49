// The plan as a calendar's entries.
#pragma once

#include "basinwright/report/pages.hpp"
#include "basinwright/report/site.hpp"

namespace basinwright::report {

/// Work as stretches, orders and hold points as things to do, the close of each recoat window as a
/// deadline. An entry keeps its identifier from run to run.
[[nodiscard]] document::Agenda agenda_of(const Subject& s);

/// The same of a job that has begun, under the identifiers of its first plan: what is done is done,
/// what the programme until now had and this one has not is cancelled. The part of a section that
/// is painted keeps the section's entry, the rest gets its own. Orders are left as they are. A
/// later `now` makes a newer calendar.
[[nodiscard]] document::Agenda agenda_of(const Site& site);

}  // namespace basinwright::report
