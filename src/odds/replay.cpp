#include "basinwright/odds/replay.hpp"

#include <algorithm>

#include "basinwright/schedule/solve.hpp"

namespace basinwright::odds {
namespace {

using schedule::Booking;
using schedule::Slot;

}  // namespace

Run with_foresight(const sequence::Posed& year) {
  Run run;
  run.last_coat_end = year.problem().horizon;
  const auto solved = schedule::solve(year.problem());
  const auto* answer = std::get_if<schedule::Answer>(&solved);
  if (answer == nullptr) return run;
  run.last_coat_end = 0;
  for (const Booking& b : answer->bookings) {
    const dates::Moment start = year.moment(b.start);
    if (!run.start || start < *run.start) run.start = start;
    if (b.what != Booking::What::unit) continue;
    if (!run.first_coat || start < *run.first_coat) run.first_coat = start;
    run.last_coat_end = std::max(run.last_coat_end, b.end);
  }
  run.refill_done = year.full(answer->objective.finish);
  return run;
}

}  // namespace basinwright::odds
