// Benches and swim-outs along one wall, straight or round.
#include <algorithm>

#include "wall_line.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;

// Where on a straight or circular curve a share of its length is reached.
double parameter_at(const Piece& curve, double share) {
  if (curve.straight()) return share;
  const double half = 2.0 * std::atan(curve.bulge);
  return 0.5 * (std::tan((share - 0.5) * half) / curve.bulge + 1.0);
}

// The stretch of a wall from one distance along it to another, however it is curved.
std::vector<Piece> stretch_of(const std::vector<Piece>& wall, const Stretch& along) {
  std::vector<Piece> found;
  double before = 0.0;
  for (const Piece& c : wall) {
    const double length = c.length();
    const double a = std::clamp((along.from - before) / length, 0.0, 1.0);
    const double b = std::clamp((along.to - before) / length, 0.0, 1.0);
    if (b > a) found.push_back(c.part(parameter_at(c, a), parameter_at(c, b)));
    before += length;
  }
  return found;
}

// The wall itself, then the line parallel to it on the way back.
Corners bench_corners(const std::vector<Piece>& stretch, double width) {
  Corners corners;
  for (const Piece& c : stretch) corners.push_back({c.from, c.bulge, {}});
  corners.push_back({stretch.back().to, 0.0, {}});
  for (auto c = stretch.rbegin(); c != stretch.rend(); ++c) {
    corners.push_back({c->to - width * c->right_normal(1.0), -c->bulge, {}});
  }
  const Piece& first = stretch.front();
  corners.push_back({first.from - width * first.right_normal(0.0), 0.0, {}});
  return corners;
}

bool bench_fits_bend(const std::vector<Piece>& stretch, double width) {
  return std::ranges::all_of(stretch, [&](const Piece& c) {
    return c.curvature(0.5) * (width + geometry::contact) < 1.0;
  });
}

}  // namespace

std::vector<Footprint> footprints(const Bench& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  const std::size_t before = findings.refusals();
  findings.not_negative(feature.from, place.where + "/from", "the distance along the wall");
  measurable(feature.length, place.where + "/length", "the length", findings);
  measurable(feature.width, place.where + "/width", "the width", findings);
  findings.positive(feature.depth, place.where + "/depth", "the depth");
  const auto wall = curves_of_wall(place.ground, feature.wall);
  if (wall.empty() || wall.front().ellipse) {
    static_cast<void>(straight_wall(feature.wall, place, findings));  // says why not
    return {};
  }
  if (findings.refusals() != before) return {};
  Stretch along{feature.from.si(), (feature.from + feature.length).si()};
  if (!stretch_fits(along, geometry::length(wall), place.where + "/length", findings)) return {};
  const auto stretch = stretch_of(wall, along);
  if (!bench_fits_bend(stretch, feature.width.si())) {
    findings.refuse("radius-too-large",
                    place.where + "/width",
                    "the bench is wider than the radius of its wall");
    return {};
  }
  return {footprint(bench_corners(stretch, feature.width.si()),
                    feature.depth.si(),
                    place,
                    {place.where + "/width", place.where + "/depth"})};
}

}  // namespace basinwright::shell
