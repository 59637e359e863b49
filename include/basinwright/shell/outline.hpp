// The outline of any pool as one path, for drawings and for whoever needs its walls by number.
#pragma once

#include <variant>
#include <vector>

#include "basinwright/shell/fault.hpp"
#include "basinwright/shell/pool.hpp"

namespace basinwright::shell {

/// A true ellipse: never turned into chords or arcs. It has one wall, number 0.
struct EllipsePath {
  Length centre_x, centre_y;
  Length semi_length, semi_width;
  double rotation_deg = 0.0;  ///< Of the `semi_length` axis against x, counter-clockwise.
};

/// Vertices in counter-clockwise order, each with the bulge of the edge to the next one; wall k and
/// corner k start at vertex k.
using VertexPath = std::vector<PathPoint>;
using OutlinePath = std::variant<VertexPath, EllipsePath>;

/// The placed outline as one path, or what is wrong with its measurements.
///
/// A path given clockwise is turned round; its first point stays the first.
/// Tangent points of a kidney and two-tape points come from circle intersections; arcs through
/// three points from the angle at the middle one.
/// @source plane-geometry, method.md "Outlines"
[[nodiscard]] std::variant<OutlinePath, std::vector<Fault>> outline_path(const Outline& outline);

}  // namespace basinwright::shell
