// Walls that lean in: depth = min(floor, distance to the outline / lean).
#pragma once

#include "model.hpp"

namespace basinwright::shell {

/// What leaning walls and the floor between them come to.
struct LeanSums {
  double floor = 0.0;
  double toe = 0.0;  ///< Plan area of the floor between the walls.
  double wall = 0.0;
  double volume = 0.0;        ///< Below the water line.
  double depth_volume = 0.0;  ///< Below the rim.
  bool meet = false;          ///< Some straight wall, or all of them, never reach the floor.
};

/// Sums over the whole pool, or over the part in the given half-planes.
///
/// Each point of the rim sends a line down the wall, p + lean z n, until it meets the floor or
/// another wall (where a circle that touches the rim at p touches it again). Strips between two
/// such lines have the area (1 - curvature lean z) dz ds in the wall's own measure, so everything
/// across is a polynomial in z and everything along is smooth between the places where the line
/// changes its cell or its end; those are found by halving and each stretch takes 16 nodes.
/// A reentrant corner is turned round as a fan.
[[nodiscard]] LeanSums lean_sums(const Model& model,
                                 const std::vector<geometry::HalfPlane>& within = {});

}  // namespace basinwright::shell
