// What would make late jobs less late; private to the room.
#pragma once

#include "basinwright/job/season.hpp"
#include "season_pose.hpp"

namespace basinwright::job {

/// A season that was booked.
struct BookedSeason {
  const SeasonQuestion& question;
  const RateBook& rates;
  const Circumstances& now;
  const PosedSeason& posed;
  const season::Answer& answer;
};

/// Adds to the latest lines of `out` what would help them, each found by booking again.
void add_helps(const BookedSeason& booked, Season& out);

}  // namespace basinwright::job
