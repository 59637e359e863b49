// Triangles between scattered points.
#pragma once

#include <array>
#include <vector>

#include "vec.hpp"

namespace basinwright::shell::geometry {

using Triangle = std::array<int, 3>;  ///< Counter-clockwise indices.

struct Triangulation {
  std::vector<Triangle> triangles;  ///< Sorted; empty when all points lie in line.
  bool tie = false;                 ///< Four points on one circle: the answer is a choice.
};

/// Delaunay triangles of the points; where four or more lie on one circle, the diagonals start
/// at the lowest index among them.
///
/// A sweep builds some triangulation, then edges are flipped while the opposite corner lies inside
/// the circle. Flips lower the lifted surface or, at a tie, the least index of the edge, so they
/// end.
[[nodiscard]] Triangulation delaunay(const std::vector<Vec>& points);

}  // namespace basinwright::shell::geometry
