// How the take-off's sums came about, for the record.
#pragma once

#include "basinwright/shell/take_off.hpp"
#include "basinwright/trace/trace.hpp"
#include "survey.hpp"

namespace basinwright::shell {

/// Records every sum of the take-off: each adds its parts one after the other.
void explain(const Survey& survey, const TakeOff& t, trace::Trace& trace);

}  // namespace basinwright::shell
