// A checked pool in local coordinates, ready to be measured.
#pragma once

#include <vector>

#include "basinwright/shell/pool.hpp"
#include "features.hpp"
#include "findings.hpp"
#include "floor.hpp"

namespace basinwright::shell {

struct Model {
  Ground ground;
  std::vector<Cell> cells;
  std::vector<Drop> drops;
  std::vector<Footprint> footprints;
  double band = 0.0;
  double water = 0.0;
  double cove = 0.0;
  double lean = 0.0;
  double plan_area = 0.0;
  geometry::Box box;
  [[nodiscard]] const geometry::Loop& outline() const { return ground.outline; }
};

/// What stands against a piece of outline, innermost first: a footprint, or -1 for the floor.
[[nodiscard]] int against_wall(const Model& model, const geometry::Piece& wall);

/// What lies on either side of a piece of a footprint's edge: a footprint, or -1 for the floor.
struct Sides {
  int inner = -1;
  int outer = -1;
};
[[nodiscard]] Sides sides_of_edge(const Model& model,
                                  std::size_t footprint,
                                  const geometry::Piece& edge);

}  // namespace basinwright::shell
