#include "basinwright/shell/plan_levels.hpp"

#include <cmath>

#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::Plane;
using geometry::Vec;

using geometry::beside;
using geometry::flush;

Level level_of(const Footprint& footprint, Vec origin) {
  Level level;
  for (const geometry::Piece& piece : footprint.loop) {
    level.path.push_back({Length::from_si(piece.from.x + origin.x),
                          Length::from_si(piece.from.y + origin.y),
                          piece.bulge});
  }
  level.depth = Length::from_si(footprint.depth);
  level.sinks = footprint.sinks;
  level.feature = footprint.feature;
  return level;
}

std::vector<Length> walls_of(const geometry::Loop& outline) {
  std::vector<Length> walls;
  for (const geometry::Piece& piece : outline) {
    const auto wall = static_cast<std::size_t>(piece.wall);
    if (walls.size() <= wall) walls.resize(wall + 1);
    walls[wall] += Length::from_si(piece.length());
  }
  return walls;
}

// The plane on the line's side that the line's own depths do not belong to.
BreakLine with_both_sides(const FloorLine& line, const Model& model) {
  const Vec a = Vec{line.from_x.si(), line.from_y.si()} - model.ground.origin;
  const Vec b = Vec{line.to_x.si(), line.to_y.si()} - model.ground.origin;
  const Vec aside = beside * geometry::unit(geometry::left(b - a));
  const Plane& left = cell_at(model.cells, geometry::middle(a, b) + aside).depth;
  const Plane& right = cell_at(model.cells, geometry::middle(a, b) - aside).depth;
  const auto off = [&](const Plane& p) {
    return std::abs(p.at(a) - line.from_depth.si()) + std::abs(p.at(b) - line.to_depth.si());
  };
  const Plane& other = off(left) > off(right) ? left : right;
  return {line, Length::from_si(other.at(a)), Length::from_si(other.at(b))};
}

}  // namespace

bool BreakLine::drops() const {
  return units::abs(line.from_depth - other_from_depth).si() > flush ||
         units::abs(line.to_depth - other_to_depth).si() > flush;
}

PlanLevels plan_levels(const Pool& pool) {
  const Survey survey = surveyed(pool);
  const Model& model = survey.model;
  Sketch lines = sketch(pool);
  PlanLevels made{std::move(lines.outline), walls_of(model.outline()), {}, {}};
  for (const Footprint& f : model.footprints) {
    made.levels.push_back(level_of(f, model.ground.origin));
  }
  for (const FloorLine& line : lines.break_lines) {
    made.breaks.push_back(with_both_sides(line, model));
  }
  return made;
}

Span span_along(const Pool& pool, double direction_deg) {
  const Survey survey = surveyed(pool);
  const Vec direction = geometry::from_degrees(direction_deg);
  const double shift = dot(direction, survey.model.ground.origin);
  const Extent extent = extent_along(survey.model.outline(), direction);
  return {Length::from_si(extent.from + shift), Length::from_si(extent.to + shift)};
}

}  // namespace basinwright::shell
