// What a sound outline, floor and footprints may still get wrong between them.
#include <algorithm>
#include <cmath>

#include "limits.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::Loop;
using geometry::Piece;
using geometry::Plane;
using geometry::Vec;

using geometry::flush;

double lowest_on(const Piece& piece, const Plane& height) {
  double least = std::min(height.at(piece.from), height.at(piece.to));
  for (const double u : piece.extremes(height.gradient)) {
    least = std::min(least, height.at(piece.at(u)));
  }
  return least;
}

double across(const Loop& outline, Vec from, Vec inwards) {
  const HalfPlane ray{geometry::left(inwards), dot(geometry::left(inwards), from)};
  double least = 1e300;
  const auto look = [&](Vec p) {
    const double t = dot(p - from, inwards);
    if (t > geometry::shortest_edge) least = std::min(least, t);
  };
  for (const Piece& piece : outline) {
    for (const double u : piece.cuts(ray)) look(piece.at(u));
    if (std::abs(ray.at(piece.from)) < flush) look(piece.from);
  }
  return least;
}

}  // namespace

double narrowest_width(const Loop& outline) {
  if (const auto& arc = outline.front().ellipse) {
    return 2.0 * std::min(arc->frame.a, arc->frame.b);
  }
  double least = 1e300;
  for (const Piece& piece : outline) {
    least = std::min(least, across(outline, piece.at(0.5), -1.0 * piece.right_normal(0.5)));
  }
  return least;
}

Extent extent_along(const Loop& outline, Vec direction) {
  const Plane height{0.0, direction};
  const Plane depth{0.0, -1.0 * direction};
  return {geometry::lowest(outline, height).value, -geometry::lowest(outline, depth).value};
}

void check_cover(const Pool& pool, const Survey& survey, Findings& findings) {
  if (!std::holds_alternative<SpotDepthsFloor>(pool.floor)) return;
  double covered = 0.0;
  for (const Cell& cell : survey.model.cells) {
    covered += geometry::moments(geometry::clip(survey.model.outline(), cell.sides)).area;
  }
  // A strip of a millimetre along the walls is the rounding of the tape.
  const double strip = geometry::contact * geometry::length(survey.model.outline());
  if (survey.model.plan_area - covered <= strip) return;
  findings.refuse("spot-depths-do-not-cover",
                  "/floor/points",
                  "the triangles between the spot depths leave part of the pool without a floor",
                  "add depths at or beyond the walls");
}

void check_band(const Survey& survey, Findings& findings) {
  std::vector<std::string> said;
  for (const Upright& wall : survey.surfaces.uprights) {
    if (wall.face != Face::wall || lowest_on(wall.curve, wall.height) > flush) continue;
    const std::string where =
        wall.footprint < 0
            ? std::string("/rim_to_paint")
            : survey.model.footprints[static_cast<std::size_t>(wall.footprint)].depth_where;
    if (std::ranges::find(said, where) != said.end()) continue;
    said.push_back(where);
    findings.refuse("depth-not-below-band",
                    where,
                    "the tile band of " + in_metres(survey.model.band) +
                        " reaches down to what stands below it at the wall");
  }
}

void check_cove(const Survey& survey, Findings& findings) {
  const double radius = survey.model.cove;
  if (radius == 0.0) return;
  double height = 1e300;
  for (const Upright& wall : survey.surfaces.uprights) {
    if (wall.coved) height = std::min(height, lowest_on(wall.curve, wall.height));
  }
  if (radius > height + flush) {
    findings.refuse("cove-too-large",
                    "/cove_radius",
                    "the cove is larger than the lowest painted wall (" + in_metres(height) + ")");
  }
  const double width = narrowest_width(survey.model.outline());
  if (2.0 * radius > width + flush) {
    findings.refuse("cove-too-large",
                    "/cove_radius",
                    "the cove is larger than half the narrowest width (" + in_metres(width) + ")");
  }
}

void check_tapes(const Pool& pool, const Ground& ground, Findings& findings) {
  const int count = static_cast<int>(ground.corners.size());
  for (std::size_t i = 0; i < pool.checks.size(); ++i) {
    const TapeCheck& check = pool.checks[i];
    const std::string here = at_index("/check", i);
    bool known = true;
    for (const auto& [corner, place] : {std::pair{check.from, "/0"}, std::pair{check.to, "/1"}}) {
      if (corner >= 0 && corner < count) continue;
      known = false;
      findings.refuse("corner-out-of-range",
                      here + place,
                      "the outline has no corner " + std::to_string(corner));
    }
    if (!findings.positive(check.measured, here + "/2", "the measured length") || !known) continue;
    const Vec run = ground.corners[static_cast<std::size_t>(check.to)] -
                    ground.corners[static_cast<std::size_t>(check.from)];
    const double misfit = check.measured.si() - geometry::norm(run);
    if (std::abs(misfit) <= limits::tape_misfit.value.si()) continue;
    findings.warn("tape-misfit",
                  here + "/2",
                  "the tape between corners " + std::to_string(check.from) + " and " +
                      std::to_string(check.to) + " is " + in_millimetres(std::abs(misfit)) +
                      (misfit > 0.0 ? " longer" : " shorter") + " than the outline gives",
                  "measure both again");
  }
}

}  // namespace basinwright::shell
