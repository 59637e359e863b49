// What goes wrong in a season, and what helps.
#pragma once

#include "basinwright/report/season.hpp"
#include "sections.hpp"

namespace basinwright::report {

/// A day as the season's tables have it: the year stands above them, unless it is another one.
[[nodiscard]] Cell season_day(const SeasonSubject& s, dates::Date date);

/// Recoat windows and etches that begun jobs have lost, as `replan` has it: a hold point, then
/// abrade and clean.
[[nodiscard]] document::Section season_lost(const SeasonSubject& s);

/// Promises that cannot be kept, and what would help.
[[nodiscard]] document::Section season_late(const SeasonSubject& s);

}  // namespace basinwright::report
