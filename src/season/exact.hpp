// The best season by branch and bound over what jobs give up to one another; private to the room.
#pragma once

#include "alone.hpp"
#include "bound.hpp"

namespace basinwright::season {

struct Proof {
  Value bound;                                   ///< No season is better.
  std::optional<std::vector<SinglePtr>> better;  ///< A season better than the one that was known.
};

/// @param known the value of a season that is at hand
/// @param most  single jobs that may be solved
[[nodiscard]] Proof prove(Singles& singles,
                          const Bound& bound,
                          const Value& known,
                          std::size_t most);

}  // namespace basinwright::season
