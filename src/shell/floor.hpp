// The floor as convex cells, each with one plane of depth.
#pragma once

#include <vector>

#include "basinwright/shell/pool.hpp"
#include "findings.hpp"
#include "loop.hpp"

namespace basinwright::shell {

struct Cell {
  std::vector<geometry::HalfPlane> sides;  ///< None: everywhere.
  geometry::Plane depth;
};

/// A line where two cells meet, and the planes on its two sides.
struct Seam {
  geometry::Piece line;
  geometry::Plane one;
  geometry::Plane other;
};

/// A line along which the floor drops, and by how much (never negative).
struct Drop {
  geometry::Piece line;
  geometry::Plane height;
};

/// The cells of a floor, or none when a measurement is refused.
/// @param origin  World position of the local (0, 0) in which cells are made.
[[nodiscard]] std::vector<Cell> floor_cells(const Floor& floor,
                                            geometry::Vec origin,
                                            Findings& findings);

[[nodiscard]] std::vector<Cell> cells_of(const ConstantFloor& floor,
                                         geometry::Vec origin,
                                         Findings& findings);
[[nodiscard]] std::vector<Cell> cells_of(const BreaksFloor& floor,
                                         geometry::Vec origin,
                                         Findings& findings);
[[nodiscard]] std::vector<Cell> cells_of(const HopperFloor& floor,
                                         geometry::Vec origin,
                                         Findings& findings);
[[nodiscard]] std::vector<Cell> cells_of(const SpotDepthsFloor& floor,
                                         geometry::Vec origin,
                                         Findings& findings);

/// The cell under a point, the nearest one outside all of them.
[[nodiscard]] const Cell& cell_at(const std::vector<Cell>& cells, geometry::Vec p);

/// Where cells meet, within the box.
[[nodiscard]] std::vector<Seam> seams_of(const std::vector<Cell>& cells,
                                         const geometry::Box& within);

/// Where they do not meet at one depth.
[[nodiscard]] std::vector<Drop> drops_of(const std::vector<Seam>& seams);

/// The cell inside a convex polygon, counter-clockwise; edges of no length are skipped.
[[nodiscard]] std::vector<geometry::HalfPlane> sides_of(const std::vector<geometry::Vec>& polygon);

}  // namespace basinwright::shell
