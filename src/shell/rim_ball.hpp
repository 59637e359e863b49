// How far a leaning wall can run inwards from a point of the rim before it meets another wall.
#pragma once

#include "loop.hpp"

namespace basinwright::shell::geometry {

/// A line down a leaning wall, seen in plan, and the strip it carries: a parameter step du sweeps
/// (width + widening z) du at depth z.
struct RimRay {
  Vec from;
  Vec inwards;
  double width = 0.0;
  double widening = 0.0;
  int owner = -1;  ///< Piece of the outline it starts on; -1 a reentrant corner.
};

/// Radius of the largest circle inside the outline that touches it where the ray starts.
struct Ball {
  double radius = 1e300;
  int held_by = -1;  ///< Piece (or, counted on, corner) that it touches as well.
};
[[nodiscard]] Ball ball_at(const Loop& outline, const RimRay& ray);

}  // namespace basinwright::shell::geometry
