// Who is where on each date, of one crew; private to the room.
#pragma once

#include <map>
#include <vector>

#include "alone.hpp"

namespace basinwright::season {

struct Stay {
  std::size_t job = 0;
  Presence at;
};
/// By date; a day's stays in the order of the day.
using Diary = std::map<std::int32_t, std::vector<Stay>>;

void enter(Diary& diary, std::size_t job, const Booked& booked);

/// What the others leave a job of each date: the longest gap, travel taken off; of equals the
/// first.
/// @param kept  where given, the gap in which the job is already, on the dates on which it is
[[nodiscard]] Windows windows_for(const Problem& problem,
                                  std::size_t job,
                                  const Candidate& candidate,
                                  const Diary& diary,
                                  const std::vector<Presence>& kept = {});

}  // namespace basinwright::season
