// The pool's plan as lines, for a drawing.
#pragma once

#include <vector>

#include "basinwright/shell/outline.hpp"
#include "basinwright/shell/pool.hpp"

namespace basinwright::shell {

/// A straight line on the floor with the depths at its ends.
struct FloorLine {
  Length from_x, from_y, from_depth;
  Length to_x, to_y, to_depth;
};

/// Everything a plan view shows, in placed coordinates.
struct Sketch {
  OutlinePath outline;
  std::vector<VertexPath> footprints;  ///< Of features, one a tread, outermost last.
  std::vector<FloorLine> break_lines;  ///< Where floor planes meet, cut off at the outline.
};

/// @throws std::invalid_argument when `take_off` refuses the pool.
[[nodiscard]] Sketch sketch(const Pool& pool);

}  // namespace basinwright::shell
