// Where two curves meet.
#pragma once

#include <vector>

#include "curve.hpp"
#include "loop.hpp"

namespace basinwright::shell::geometry {

/// Common points of two curves: crossings, touches, and ends of one that lie on the other. Curves
/// on one line or circle give the ends of what they share.
/// @param gap  How near counts as common.
[[nodiscard]] std::vector<Vec> meeting_points(const Piece& a, const Piece& b, double gap);

/// Index of the first curve that meets another one anywhere but at the vertex they share, or -1.
[[nodiscard]] int first_self_crossing(const Loop& loop);

/// Parameters on `curve` where it should be cut to be judged against the loop: crossings, and the
/// feet of loop vertices within `gap`.
[[nodiscard]] std::vector<double> cuts_by(const Piece& curve, const Loop& loop, double gap);

}  // namespace basinwright::shell::geometry
