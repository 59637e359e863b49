// Warnings: a pool that can be taken off but looks unlike a pool.
#include <algorithm>
#include <cmath>
#include <vector>

#include "limits.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::Loop;
using geometry::Vec;

using geometry::flush;

void doubt_depths(const Survey& survey, Findings& findings) {
  if (survey.shallowest < limits::usual_least_depth.value.si()) {
    findings.warn("unusual-depth",
                  "/floor",
                  "the floor comes up to " + in_metres(survey.shallowest) + " below the rim");
  }
  if (survey.deepest > limits::usual_greatest_depth.value.si()) {
    findings.warn("unusual-depth",
                  "/floor",
                  "the floor goes down to " + in_metres(survey.deepest) + " below the rim");
  }
}

void doubt_slopes(const Survey& survey, Findings& findings) {
  for (const Cell& cell : survey.model.cells) {
    const double slope = geometry::norm(cell.depth.gradient);
    if (slope <= limits::standing_slope.value + flush) continue;
    const Loop part = geometry::clip(survey.model.outline(), cell.sides);
    if (part.empty() || geometry::moments(part).area < limits::least_area) continue;
    if (geometry::lowest(part, cell.depth).value >= limits::standing_depth.value.si()) continue;
    findings.warn("steep-in-shallow-water",
                  "/floor",
                  "the floor falls more than 1 in 3 where people stand",
                  "check the distances of the depth readings");
    return;
  }
}

void doubt_breaks(const BreaksFloor& floor, const Model& model, Findings& findings) {
  const Vec axis = geometry::from_degrees(floor.axis_deg);
  const double shift =
      dot(axis, Vec{floor.origin_x.si(), floor.origin_y.si()} - model.ground.origin);
  const Extent reach = extent_along(model.outline(), axis);
  for (std::size_t i = 0; i < floor.points.size(); ++i) {
    const double at = floor.points[i].distance.si() + shift;
    if (at >= reach.from - flush && at <= reach.to + flush) continue;
    findings.warn("break-outside-outline",
                  at_index("/floor/points", i) + "/0",
                  "the break line at " + in_metres(floor.points[i].distance.si()) +
                      " does not cross the pool");
  }
}

/// Along each wall; for an outline of very many, degree by degree, which is near enough for a
/// doubt.
std::vector<Vec> directions_of(const Loop& outline) {
  constexpr std::size_t half_turn = 180;
  std::vector<Vec> out;
  if (outline.size() <= half_turn) {
    for (const geometry::Piece& piece : outline) {
      out.push_back(piece.ellipse ? piece.ellipse->frame.axis
                                  : geometry::unit(piece.to - piece.from));
    }
    return out;
  }
  for (std::size_t deg = 0; deg < half_turn; ++deg) {
    out.push_back(geometry::from_degrees(static_cast<double>(deg)));
  }
  return out;
}

}  // namespace

void doubt_floor(const Pool& pool, const Survey& survey, Findings& findings) {
  doubt_depths(survey, findings);
  doubt_slopes(survey, findings);
  if (const auto* breaks = std::get_if<BreaksFloor>(&pool.floor)) {
    doubt_breaks(*breaks, survey.model, findings);
  }
  if (survey.shallowest <= survey.model.water) {
    findings.warn("floor-above-water",
                  "/rim_to_water",
                  "part of the floor lies above the water line and holds no water");
  }
  for (const Footprint& f : survey.model.footprints) {
    if (f.depth > survey.model.water) continue;
    findings.warn(
        "top-above-water", f.depth_where, "it lies above the water line and holds no water");
  }
}

void doubt_outline(const Survey& survey, Findings& findings) {
  const geometry::Loop& outline = survey.model.outline();
  double aspect = 1.0;
  for (const Vec along : directions_of(outline)) {
    const Extent length = extent_along(outline, along);
    const Extent width = extent_along(outline, geometry::left(along));
    const double ratio = (length.to - length.from) / (width.to - width.from);
    aspect = std::max({aspect, ratio, 1.0 / ratio});
  }
  if (aspect <= limits::usual_aspect.value) return;
  findings.warn(
      "unusual-proportions", "/outline", "the pool is more than ten times as long as it is wide");
}

}  // namespace basinwright::shell
