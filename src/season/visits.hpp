// On how many dates jobs must be painted, and on how many a crew can paint them; private to the
// room.
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "alone.hpp"

namespace basinwright::season {

using Dates = std::map<std::int32_t, std::int64_t>;  // by date, ascending

/// On how many dates at least a job is painted, on whichever crew.
struct PaintingDates {
  std::int64_t least = 0;
  /// Whether those are at least two, each the day after the one before.
  bool in_a_row = false;
  std::int32_t from = 0;  ///< Where they are in a row: the first of them is not before.
};
[[nodiscard]] PaintingDates painting_dates(const Job& job);

/// How many jobs a crew can paint on each date at most: of their shortest units so many as fit with
/// the shortest way between two jobs between the first and the last time that is open to any.
/// @param from  nothing is painted before
[[nodiscard]] Dates visits_of(const Problem& problem, std::size_t crew, std::int32_t from);

/// How many times `length` dates in a row can be had until each date; each date as often as it may
/// be visited. Taking the earliest end first is the best there is, as all are of one length.
[[nodiscard]] Dates rows_of(const Dates& visits, std::int64_t length);

}  // namespace basinwright::season
