// Two jobs that want one crew at once, and the ways in which no season has them so; private to the
// room.
#pragma once

#include <array>
#include <optional>

#include "alone.hpp"

namespace basinwright::season {

/// What one of two jobs gives up on a date: all of it outside the stretch.
struct Concession {
  std::size_t job = 0;
  Presence stretch;
};

/// Of two jobs of one crew on one date: the first is left before the second is come to, or the
/// second before the first. With a time m, the first order leaves the first job nothing from m on
/// or the second nothing before m + 1 + travel; the second order likewise. So a season in which
/// both are on this crew makes one of the four concessions, and each of them breaks up what stands.
struct Conflict {
  std::size_t crew = 0;
  std::array<std::size_t, 2> jobs{};
  std::array<Concession, 4> ways{};
};

/// Whether a crew can be at both stretches of one date.
[[nodiscard]] bool fits(const Problem& problem,
                        std::size_t first,
                        const Presence& at_first,
                        std::size_t second,
                        const Presence& at_second);

/// The earliest conflict of two jobs on the same crew; of one date the one of the first jobs.
[[nodiscard]] std::optional<Conflict> first_conflict(const Problem& problem,
                                                     const std::vector<SinglePtr>& singles);

}  // namespace basinwright::season
