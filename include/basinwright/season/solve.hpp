// A season booked: the best one where that can be proven, else a good one with a bound.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "basinwright/season/problem.hpp"

namespace basinwright::season {

/// How much is done; counted in single jobs solved, never in time, so that a machine's speed
/// decides nothing.
struct Effort {
  std::size_t improving = 2000;  ///< While a season is made and bettered.
  std::size_t proving = 2000;    ///< While it is proven.
};

/// The season of least value found, with the bound that was proven for all. The method and its
/// proof stand in docs/season.md.
/// @throws std::invalid_argument for a problem that is not as its header says
[[nodiscard]] Answer solve(const Problem& problem, const Effort& effort = {});

/// Books the jobs one after the other, each on the crew where it is best beside those before it.
/// @param order each job once
/// @param crews one a job, to which it is bound; empty: any
[[nodiscard]] Answer book_in_order(const Problem& problem,
                                   const std::vector<std::size_t>& order,
                                   const std::vector<std::size_t>& crews = {});

/// Every rule of `problem` that `answer` breaks, in words; empty when it holds. Shares no code with
/// the search.
[[nodiscard]] std::vector<std::string> verify(const Problem& problem, const Answer& answer);

}  // namespace basinwright::season
