// A closed chain of curves round a region, counter-clockwise.
#pragma once

#include <optional>
#include <vector>

#include "curve.hpp"

namespace basinwright::shell::geometry {

using Loop = std::vector<Piece>;

[[nodiscard]] Moments moments(const Loop& loop);
[[nodiscard]] double length(const Loop& loop);
[[nodiscard]] Box box_of(const Loop& loop);

/// The part of the region in the half-plane.
///
/// Pieces whose middle lies inside are kept and every gap is bridged by a straight line. Bridges
/// run on the cutting line and may overlap there; their contributions cancel, so neither reentrant
/// outlines nor parts that fall asunder need care.
[[nodiscard]] Loop clip(const Loop& loop, const HalfPlane& side);
[[nodiscard]] Loop clip(Loop loop, const std::vector<HalfPlane>& sides);

/// The pieces of one curve in the half-plane; a piece on the line itself is outside.
[[nodiscard]] std::vector<Piece> clip(const Piece& curve, const HalfPlane& side);

/// Whether the point is inside; undecided on the boundary itself.
[[nodiscard]] bool contains(const Loop& loop, Vec p);

/// Whether the point is within `gap` of the boundary.
[[nodiscard]] bool near_boundary(const Loop& loop, Vec p, double gap);

/// Whether all of the curve runs along one piece of the loop's boundary, within `gap` of it. A
/// short piece beside a corner is near the boundary but does not run along it.
[[nodiscard]] bool lies_along(const Piece& curve, const Loop& loop, double gap);

/// Least value of a linear height over the region and a place where it is taken.
struct Lowest {
  double value = 0.0;
  Vec at;
};
[[nodiscard]] Lowest lowest(const Loop& loop, const Plane& height);

}  // namespace basinwright::shell::geometry
