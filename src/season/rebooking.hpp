// A season bettered by booking some of its jobs again; private to the room.
#pragma once

#include "insertion.hpp"

namespace basinwright::season {

/// A few jobs that are near to one another in time are taken out and booked again, one after the
/// other, where each is best beside all that stay; kept when the season is no worse, of equals
/// when the crews go to no more places. Which jobs and
/// in which order comes from a fixed row of numbers: the same season is always the same.
/// @param last  stops when so many single jobs are solved
[[nodiscard]] Season rebooked(Singles& singles, Season season, std::size_t last);

}  // namespace basinwright::season
