// Pages of a season: many jobs on shared crews.
#pragma once

#include <optional>

#include "basinwright/job/season.hpp"
#include "basinwright/report/pages.hpp"

namespace basinwright::report {

/// A season that was booked.
struct SeasonSubject {
  /// The first job, for units, paper, day and the weather's strip; the strip covers the season.
  const Subject& first;
  const job::SeasonQuestion& question;
  const job::Season& season;
  std::optional<std::size_t> crew = {};  ///< Only this crew's calendar.
};

/// Which crew does which job when, what is late and what would help, how good that is, with a chart
/// and a calendar. Text formats leave the crews' days to machines where there are over 20 jobs.
[[nodiscard]] document::Document season(const SeasonSubject& subject);

/// The season as bars over the weather, on a sheet of its own.
[[nodiscard]] document::Document season_chart(const SeasonSubject& subject);

}  // namespace basinwright::report
