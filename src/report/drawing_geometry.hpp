// From the pool's plan to places on a sheet.
#pragma once

#include <vector>

#include "basinwright/document/drawing.hpp"
#include "basinwright/shell/outline.hpp"

namespace basinwright::report {

using document::Spot;
using document::Trail;
using units::Length;

/// How the plan lies on the sheet: turned, scaled, moved; the plan's left stays left.
struct View {
  double right_deg = 0.0;  ///< Direction on the plan that runs to the right on the sheet.
  double right_x = 1.0;    ///< The same as a unit vector.
  double right_y = 0.0;
  double scale = 1.0;  ///< Millimetres on the sheet for a metre.
  Spot origin;         ///< Where the plan's (0, 0) comes to lie.

  [[nodiscard]] Spot at(Length x, Length y) const;
  /// A direction of the plan, as the sheet shows it.
  [[nodiscard]] Spot direction(double x, double y) const;
};

/// Unit vector at an angle; exact for quarter turns.
[[nodiscard]] Spot unit_at(double degrees);

/// A closed path. Arcs stay arcs, cut into parts of under a third of a turn: a rounded end of a
/// half circle would move its centre.
[[nodiscard]] Trail trail_of(const shell::VertexPath& path, const View& view);
[[nodiscard]] Trail trail_of(const shell::OutlinePath& outline, const View& view);

/// A closed chain of straight lines.
[[nodiscard]] Trail polygon(const std::vector<Spot>& corners);
[[nodiscard]] Trail segment(Spot from, Spot to);

/// A place on a path, close enough to the next one to keep labels off it.
struct PathSpot {
  Spot at;
  Spot outward;        ///< Unit vector to the right of travel.
  int wall = 0;        ///< Edge it lies on.
  double share = 0.0;  ///< Of the edge that lies behind it.
};

/// Places along a path, under a millimetre apart and at least eight an edge: for keeping labels
/// clear of it, not for drawing it.
[[nodiscard]] std::vector<PathSpot> spots_along(const shell::VertexPath& path, const View& view);
[[nodiscard]] std::vector<PathSpot> spots_along(const shell::OutlinePath& outline,
                                                const View& view);

/// Whether a place lies inside the path given by its spots.
[[nodiscard]] bool inside(const std::vector<PathSpot>& path, Spot place);

}  // namespace basinwright::report
