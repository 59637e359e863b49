// What a plan view says besides its lines: wall lengths, and depths on both sides of every line.
#pragma once

#include <cstddef>
#include <vector>

#include "basinwright/shell/outline.hpp"
#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/sketch.hpp"

namespace basinwright::shell {

/// The footprint of one tread, block or pit with its depth below the rim.
struct Level {
  VertexPath path;
  Length depth;
  bool sinks = false;       ///< A pit.
  std::size_t feature = 0;  ///< Index into the pool's features.
};

/// A line on the floor with the depths on its two sides; they differ where the floor drops.
struct BreakLine {
  FloorLine line;
  Length other_from_depth, other_to_depth;
  [[nodiscard]] bool drops() const;
};

/// The placed outline with everything a plan view writes beside it.
struct PlanLevels {
  OutlinePath outline;
  std::vector<Length> walls;  ///< Along each wall, by number; they add up to the perimeter.
  std::vector<Level> levels;  ///< One a tread, in the order of the features.
  std::vector<BreakLine> breaks;
};

/// @throws std::invalid_argument when `take_off` refuses the pool.
[[nodiscard]] PlanLevels plan_levels(const Pool& pool);

/// The outline's ends along a direction, as distances from the world's origin.
struct Span {
  Length from, to;
  [[nodiscard]] Length length() const { return to - from; }
};

/// How far the outline reaches along a direction, arcs and ellipses included.
/// @param direction_deg  Against x, counter-clockwise.
/// @throws std::invalid_argument when `take_off` refuses the pool.
[[nodiscard]] Span span_along(const Pool& pool, double direction_deg);

}  // namespace basinwright::shell
