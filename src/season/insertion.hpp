// Seasons made by booking jobs one after the other; private to the room.
#pragma once

#include <vector>

#include "alone.hpp"
#include "diary.hpp"

namespace basinwright::season {

using Order = std::vector<std::size_t>;

/// A season as single jobs, one a job of the problem.
struct Season {
  std::vector<SinglePtr> jobs;
  Value value;
};

/// A job on the crew where it is best beside those of the diaries, and entered there; of equals the
/// first crew.
/// @param only  the crew to which it is bound
[[nodiscard]] SinglePtr best_beside(Singles& singles,
                                    std::size_t job,
                                    std::vector<Diary>& diaries,
                                    std::optional<std::size_t> only = {});

/// Each job in its turn where it is best beside those before it.
/// @param crews one a job, to which it is bound; empty: any
[[nodiscard]] Season insert_all(Singles& singles, const Order& order, const Order& crews = {});

/// The best season of several orders, bettered by moving jobs to earlier places in the order, until
/// so many single jobs are solved.
[[nodiscard]] Season best_by_insertion(Singles& singles, std::size_t most);

}  // namespace basinwright::season
