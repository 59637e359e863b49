// A closed path of corners with bulges, checked and turned counter-clockwise.
#pragma once

#include <string>
#include <vector>

#include "basinwright/shell/outline.hpp"
#include "findings.hpp"
#include "loop.hpp"

namespace basinwright::shell {

struct Corner {
  geometry::Vec at;
  double bulge = 0.0;  ///< Of the edge to the next corner.
  std::string where;   ///< Pointer to the measurement it was made from.
};
using Corners = std::vector<Corner>;

/// Edges as curves, wall k from corner k; an arc over half a turn becomes two curves of one wall.
[[nodiscard]] geometry::Loop loop_of(const Corners& corners);

/// Refuses too few points, edges under 1 mm, no area and self-intersection; turns a clockwise path
/// round so that its first corner stays the first.
/// @param where  Pointer to the whole path.
enum class Settled { refused, kept, turned };
Settled settle(Corners& corners, const std::string& where, Findings& findings);

/// Reads points as measured, refusing what is not finite.
[[nodiscard]] Corners corners_of(const VertexPath& points,
                                 const std::string& where,
                                 Findings& findings);

}  // namespace basinwright::shell
