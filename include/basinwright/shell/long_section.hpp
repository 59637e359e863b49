// The pool cut lengthwise: the floor as one sees it from the side.
#pragma once

#include <vector>

#include "basinwright/shell/pool.hpp"

namespace basinwright::shell {

/// A point of the floor along the section line.
struct ProfilePoint {
  Length position;          ///< Along `section_axis`.
  Length depth;             ///< Below the rim.
  bool on_feature = false;  ///< On a step, bench, block or pit.
};

/// An upright cut along the floor's axis.
struct LongSection {
  Length from_x, from_y, to_x, to_y;  ///< Where the line meets the outline, on the plan.
  Length from, to;                    ///< The same as positions along `section_axis`.
  /// The floor from toe to toe with everything that stands on it, positions growing; two points at
  /// one position are a vertical face. The walls run from the rim to its first and last point.
  std::vector<ProfilePoint> profile;
};

/// The long section where it tells most: through the middle of a hopper's bottom, through the
/// deepest measured spot, otherwise along the longest line that fits (the middle of all such).
///
/// A leaning wall is drawn by its lean where the line meets the rim.
/// @throws std::invalid_argument when `take_off` refuses the pool.
[[nodiscard]] LongSection long_section(const Pool& pool);

}  // namespace basinwright::shell
