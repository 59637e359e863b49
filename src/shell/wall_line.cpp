#include "wall_line.hpp"

#include <algorithm>
#include <iterator>

namespace basinwright::shell {

using geometry::Piece;
using geometry::Vec;

std::vector<Piece> curves_of_wall(const Ground& ground, int wall) {
  std::vector<Piece> found;
  std::ranges::copy_if(
      ground.outline, std::back_inserter(found), [&](const Piece& c) { return c.wall == wall; });
  return found;
}

std::optional<WallLine> straight_wall(int wall, const FeaturePlace& place, Findings& findings) {
  const auto curves = curves_of_wall(place.ground, wall);
  if (curves.empty()) {
    findings.refuse("wall-out-of-range",
                    place.where + "/wall",
                    "the outline has no wall " + std::to_string(wall),
                    "walls are numbered from 0, counter-clockwise");
    return std::nullopt;
  }
  if (!curves.front().straight()) {
    findings.refuse("wall-not-straight",
                    place.where + "/wall",
                    "wall " + std::to_string(wall) + " is curved",
                    "give the footprint as a block with a path");
    return std::nullopt;
  }
  const Vec run = curves.front().to - curves.front().from;
  return WallLine{curves.front().from, geometry::unit(run), geometry::norm(run)};
}

bool measurable(units::Length value,
                const std::string& where,
                std::string_view what,
                Findings& findings) {
  if (!findings.positive(value, where, what)) return false;
  if (value.si() > geometry::contact) return true;
  findings.refuse("too-small", where, std::string(what) + " is less than 1 mm");
  return false;
}

bool stretch_fits(Stretch& stretch, double wall, const std::string& where, Findings& findings) {
  if (stretch.to <= wall + geometry::contact && stretch.from < wall) {
    stretch.to = std::min(stretch.to, wall);
    return true;
  }
  findings.refuse("block-outside",
                  where,
                  "it ends at " + in_metres(stretch.to) + " along a wall of " + in_metres(wall));
  return false;
}

Footprint footprint(const Corners& corners,
                    double depth,
                    const FeaturePlace& place,
                    Pointers pointers) {
  Footprint made;
  made.loop = loop_of(corners);
  made.depth = depth;
  made.feature = place.index;
  made.where = std::move(pointers.reach);
  made.depth_where = std::move(pointers.depth);
  made.area = geometry::moments(made.loop).area;
  made.box = geometry::box_of(made.loop);
  return made;
}

}  // namespace basinwright::shell
