#include "features.hpp"

#include <numbers>

#include "wall_line.hpp"

namespace basinwright::shell {

namespace {

using geometry::Vec;

bool depths_fine(const std::vector<Length>& depths,
                 std::size_t count,
                 const FeaturePlace& place,
                 Findings& findings) {
  const std::size_t before = findings.refusals();
  const std::string where = place.where + "/depths";
  if (depths.size() != count || count == 0) {
    findings.refuse("wrong-number-of-depths",
                    where,
                    std::to_string(count) + " treads need as many depths, not " +
                        std::to_string(depths.size()));
  }
  for (std::size_t i = 0; i < depths.size(); ++i) {
    if (!findings.positive(depths[i], at_index(where, i), "the depth of a tread")) continue;
    if (i > 0 && depths[i] <= depths[i - 1]) {
      findings.refuse("treads-not-descending",
                      at_index(where, i),
                      "each tread must lie deeper than the one before it");
    }
  }
  return findings.refusals() == before;
}

bool all_measurable(const std::vector<Length>& values,
                    const std::string& where,
                    std::string_view what,
                    Findings& findings) {
  bool fine = true;
  for (std::size_t i = 0; i < values.size(); ++i) {
    fine &= measurable(values[i], at_index(where, i), what, findings);
  }
  return fine;
}

bool radii_fine(const std::vector<Length>& radii, const FeaturePlace& place, Findings& findings) {
  const std::string where = place.where + "/radii";
  bool fine = all_measurable(radii, where, "the radius", findings);
  for (std::size_t i = 1; i < radii.size(); ++i) {
    if (!fine || (radii[i] - radii[i - 1]).si() > geometry::contact) continue;
    findings.refuse("radii-not-ascending",
                    at_index(where, i),
                    "each radius must be larger than the one before");
    fine = false;
  }
  return fine;
}

Corners strip(const WallLine& wall, const Stretch& stretch, double reach) {
  return {{wall.at(stretch.from, 0.0), 0.0, {}},
          {wall.at(stretch.to, 0.0), 0.0, {}},
          {wall.at(stretch.to, reach), 0.0, {}},
          {wall.at(stretch.from, reach), 0.0, {}}};
}

std::vector<Footprint> path_footprint(const VertexPath& path,
                                      Length depth,
                                      const FeaturePlace& place,
                                      Findings& findings) {
  const std::string where = place.where + "/path";
  const std::size_t before = findings.refusals();
  findings.positive(depth, place.where + "/depth", "the depth");
  Corners corners = corners_of(path, where, findings);
  for (Corner& c : corners) c.at = c.at - place.ground.origin;
  if (findings.refusals() != before) return {};
  if (settle(corners, where, findings) == Settled::refused) return {};
  return {footprint(corners, depth.si(), place, {where, place.where + "/depth"})};
}

}  // namespace

std::vector<Footprint> footprints(const StraightSteps& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  const std::size_t before = findings.refusals();
  findings.not_negative(feature.from, place.where + "/from", "the distance along the wall");
  measurable(feature.width, place.where + "/width", "the width", findings);
  all_measurable(feature.treads, place.where + "/treads", "the tread", findings);
  depths_fine(feature.depths, feature.treads.size(), place, findings);
  const auto wall = straight_wall(feature.wall, place, findings);
  if (!wall || findings.refusals() != before) return {};
  Stretch stretch{feature.from.si(), (feature.from + feature.width).si()};
  if (!stretch_fits(stretch, wall->length, place.where + "/width", findings)) return {};
  std::vector<Footprint> made;
  double reach = 0.0;
  for (std::size_t i = 0; i < feature.treads.size(); ++i) {
    reach += feature.treads[i].si();
    made.push_back(
        footprint(strip(*wall, stretch, reach),
                  feature.depths[i].si(),
                  place,
                  {at_index(place.where + "/treads", i), at_index(place.where + "/depths", i)}));
  }
  return made;
}

std::vector<Footprint> footprints(const CornerSteps& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  const std::size_t before = findings.refusals();
  radii_fine(feature.radii, place, findings);
  depths_fine(feature.depths, feature.radii.size(), place, findings);
  const int count = static_cast<int>(place.ground.corners.size());
  if (feature.corner < 0 || feature.corner >= count) {
    findings.refuse("corner-out-of-range",
                    place.where + "/corner",
                    "the outline has no corner " + std::to_string(feature.corner),
                    "corner k is where wall k starts");
  }
  if (findings.refusals() != before) return {};
  const auto out = curves_of_wall(place.ground, feature.corner).front();
  const auto in = curves_of_wall(place.ground, (feature.corner + count - 1) % count).back();
  if (!out.straight() || !in.straight()) {
    findings.refuse("wall-not-straight",
                    place.where + "/corner",
                    "a wall at this corner is curved",
                    "give the footprint as a block with a path");
    return {};
  }
  const Vec a = geometry::unit(out.to - out.from);
  const Vec b = geometry::unit(in.from - in.to);
  double angle = std::atan2(cross(a, b), dot(a, b));
  if (angle <= 0.0) angle += 2.0 * std::numbers::pi;
  std::vector<Footprint> made;
  for (std::size_t i = 0; i < feature.radii.size(); ++i) {
    const double r = feature.radii[i].si();
    const Corners corners{{out.from, 0.0, {}},
                          {out.from + r * a, std::tan(angle / 4.0), {}},
                          {out.from + r * b, 0.0, {}}};
    made.push_back(
        footprint(corners,
                  feature.depths[i].si(),
                  place,
                  {at_index(place.where + "/radii", i), at_index(place.where + "/depths", i)}));
  }
  return made;
}

std::vector<Footprint> footprints(const RoundSteps& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  const std::size_t before = findings.refusals();
  findings.not_negative(feature.at, place.where + "/at", "the distance along the wall");
  radii_fine(feature.radii, place, findings);
  depths_fine(feature.depths, feature.radii.size(), place, findings);
  const auto wall = straight_wall(feature.wall, place, findings);
  if (!wall || findings.refusals() != before) return {};
  std::vector<Footprint> made;
  for (std::size_t i = 0; i < feature.radii.size(); ++i) {
    const double r = feature.radii[i].si();
    const Vec a = wall->at(feature.at.si() - r, 0.0);
    const Vec b = wall->at(feature.at.si() + r, 0.0);
    made.push_back(
        footprint({{a, 0.0, {}}, {b, 1.0, {}}},
                  feature.depths[i].si(),
                  place,
                  {at_index(place.where + "/radii", i), at_index(place.where + "/depths", i)}));
  }
  return made;
}

std::vector<Footprint> footprints(const Block& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  return path_footprint(feature.path, feature.depth, place, findings);
}

std::vector<Footprint> footprints(const Pit& feature,
                                  const FeaturePlace& place,
                                  Findings& findings) {
  auto made = path_footprint(feature.path, feature.depth, place, findings);
  for (Footprint& f : made) f.sinks = true;
  return made;
}

std::vector<Footprint> footprints_of(const std::vector<Feature>& features,
                                     const Ground& ground,
                                     Findings& findings) {
  std::vector<Footprint> all;
  for (std::size_t i = 0; i < features.size(); ++i) {
    const FeaturePlace place{ground, i, at_index("/features", i)};
    auto made = std::visit(
        [&](const auto& feature) { return footprints(feature, place, findings); }, features[i]);
    std::ranges::move(made, std::back_inserter(all));
  }
  return all;
}

}  // namespace basinwright::shell
