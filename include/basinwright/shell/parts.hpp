// The painted area by section and by surface.
#pragma once

#include <vector>

#include "basinwright/shell/pool.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

using units::Area;

/// The line along which sections are measured: the floor's axis and origin (breaks), else world x.
struct SectionAxis {
  Length origin_x, origin_y;
  double direction_x = 1.0;  ///< Unit vector of growing position.
  double direction_y = 0.0;
  Length first, last;         ///< Positions of the two ends of the outline.
  bool deep_end_last = true;  ///< Whether the deeper half lies at growing positions.
};
/// @throws std::invalid_argument when `take_off` refuses the pool.
[[nodiscard]] SectionAxis section_axis(const Pool& pool);

/// What is painted between two cuts, by surface; `steps` are the treads and risers of features.
struct Part {
  Length from, to;  ///< Positions along the axis, `from` the smaller.
  Area floor;
  Area walls;
  Area steps;        ///< Treads and risers.
  Area cove_change;  ///< Negative: what the cove saves.
  Area painted;      ///< The sum of the four.
  Area treads;
  Area risers;
};

/// The painted area between cuts, deep end first; the parts add up to the take-off's painted area.
/// @param cuts  Positions along `section_axis`, in any order.
/// @throws std::invalid_argument when `take_off` refuses the pool or a cut is not finite.
[[nodiscard]] std::vector<Part> parts(const Pool& pool, const std::vector<Length>& cuts);

/// The painted area in shares of given sizes, deep end first, and a last one with what is left. A
/// share that ends inside a face across the axis takes its part of that face.
/// @param ends  Painted area from the deep end to the end of each share, not falling.
/// @throws std::invalid_argument when `take_off` refuses the pool or an end is not finite, falls,
///         is negative or lies beyond the painted area.
[[nodiscard]] std::vector<Part> parts_by_area(const Pool& pool, const std::vector<Area>& ends);

}  // namespace basinwright::shell
