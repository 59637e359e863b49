// The season as bars over the weather.
#pragma once

#include "basinwright/report/season.hpp"

namespace basinwright::report {

/// One sheet lying across: the strip of weather, then a row a job, crew by crew, with the stays of
/// the crew, the time until the pool is full, and the promise; a row a crew where the jobs are too
/// many for one sheet.
[[nodiscard]] document::Drawing season_drawing(const SeasonSubject& s);

}  // namespace basinwright::report
