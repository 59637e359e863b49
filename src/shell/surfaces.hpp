// The faces of a pool with upright walls, and what they add up to in any half of the plan.
#pragma once

#include <vector>

#include "model.hpp"

namespace basinwright::shell {

enum class Face { floor, tread, wall, riser };

/// A region of the plan with one plane of depth; counted negative where a footprint covers floor.
struct Flat {
  Face face = Face::floor;
  geometry::Loop loop;
  geometry::Plane depth;
  double sign = 1.0;
};

/// A vertical face over a curve; its height is linear over the plan.
struct Upright {
  Face face = Face::wall;
  geometry::Piece curve;
  geometry::Plane height;
  bool coved = false;     ///< An outline wall that meets the floor itself.
  geometry::Plane floor;  ///< Depth of the floor at its foot.
  int footprint = -1;     ///< What stands against a wall; -1 the floor.
  bool step = false;      ///< Its upper edge is one of a step, a bench or a block.
};

struct Surfaces {
  std::vector<Flat> flats;
  std::vector<Upright> uprights;
};

/// The outline cut to each of the floor's cells, in their order; empty where a cell has none of it.
[[nodiscard]] std::vector<geometry::Loop> floors_of(const Model& model);

[[nodiscard]] Surfaces surfaces_of(const Model& model);
/// @param floors what `floors_of` gave for the model
[[nodiscard]] Surfaces surfaces_of(const Model& model, std::vector<geometry::Loop> floors);

/// What the faces come to.
struct Sums {
  double floor = 0.0;
  double tread = 0.0;
  double wall = 0.0;
  double riser = 0.0;
  double volume = 0.0;        ///< Below the water line.
  double depth_volume = 0.0;  ///< Below the rim.
  double cove_length = 0.0;
  double step_edge = 0.0;
  /// Right-angle convention: (pi/2 - 2) r and -(1 - pi/4) r^2 a metre.
  [[nodiscard]] double cove_change(double radius) const;
  [[nodiscard]] double cove_volume_change(double radius) const;
};

[[nodiscard]] Sums sums_of(const Surfaces& surfaces, double water);

/// The faces in a half-plane; faces that stand on its edge are outside.
[[nodiscard]] Surfaces clip(const Surfaces& surfaces, const geometry::HalfPlane& side);

/// The part of a region whose floor lies below the water line.
[[nodiscard]] geometry::Moments wet_moments(const geometry::Loop& loop,
                                            const geometry::Plane& depth,
                                            double water);
/// Volume over a region between its floor and the water line.
[[nodiscard]] double volume_below(const geometry::Loop& loop,
                                  const geometry::Plane& depth,
                                  double water);

/// Change of the painted area by a cove of radius 1 at the true angle between walls and floor.
[[nodiscard]] double true_angle_change(const Surfaces& surfaces);

}  // namespace basinwright::shell
