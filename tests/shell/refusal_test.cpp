// Everything a tape can get wrong: the code, and the pointer to the value that is wrong.
// Classes of refusal: the reference's own; the others by geometry.
#include <limits>

#include "make.hpp"

using namespace make;

namespace {

const double no_number = std::numeric_limits<double>::quiet_NaN();

shell::Pool usual() {
  return rectangle(8, 4, flat(1.5));
}

shell::Pool with(shell::Feature feature) {
  auto p = usual();
  p.features.push_back(std::move(feature));
  return p;
}

shell::Pool outlined(shell::OutlineShape shape) {
  return pool(std::move(shape), flat(1.5));
}

shell::Pool floored(shell::Floor floor) {
  return rectangle(8, 4, std::move(floor));
}

void refuses(const shell::Pool& p, const std::string& code, const std::string& where) {
  const auto found = faults(p);
  for (const auto& f : found) UNSCOPED_INFO("found " << f.code << " at " << f.where);
  INFO("wanted " << code << " at " << where);
  CHECK(has(found, code, where));
  CHECK(std::ranges::any_of(found, [](const auto& f) { return !f.warning; }));
  for (const auto& f : found) CHECK(!f.message.empty());
}

void warns(const shell::Pool& p, const std::string& code, const std::string& where) {
  const auto found = faults(p);
  for (const auto& f : found) UNSCOPED_INFO("found " << f.code << " at " << f.where);
  INFO("wanted " << code << " at " << where);
  CHECK(has(found, code, where));
  CHECK(std::ranges::all_of(found, [](const auto& f) { return f.warning; }));
}

shell::Path walls(const std::vector<shell::PathPoint>& points) {
  return {points};
}

}  // namespace

TEST_CASE("refused, measurements that are no lengths") {
  refuses(outlined(shell::Rectangle{m(no_number), m(4)}), "not-finite", "/outline/length");
  refuses(outlined(shell::Rectangle{m(8), m(-4)}), "not-positive", "/outline/width");
  refuses(outlined(shell::Circle{m(0)}), "not-positive", "/outline/diameter");
  refuses(outlined(shell::Kidney{m(2), m(2), m(3), m(-1), m(2)}),
          "not-positive",
          "/outline/outer_radius");
  refuses(outlined(walls({point(0, 0), point(no_number, 0), point(1, 1)})),
          "not-finite",
          "/outline/points/1/0");
  refuses(outlined(shell::Rectangle{m(1e200), m(4)}), "too-large", "/outline/length");
  auto p = usual();
  p.rim_to_paint = m(-0.1);
  p.cove_radius = m(no_number);
  p.wall_lean = -0.1;
  p.wall_thickness = m(0);
  p.tape_tolerance = basinwright::units::fraction(1.5);
  refuses(p, "negative", "/rim_to_paint");
  refuses(p, "not-finite", "/cove_radius");
  refuses(p, "negative", "/wall_lean");
  refuses(p, "not-positive", "/wall_thickness");
  refuses(p, "tolerance-out-of-range", "/tape_tolerance");
  p = usual();
  p.outline.place = shell::Place{no_number, m(0), m(0)};
  refuses(p, "not-finite", "/outline/place/rotation_deg");
}

TEST_CASE("refused, outlines whose parts do not fit") {
  refuses(outlined(shell::RoundedRectangle{m(8), m(4), m(2.5)}),
          "radius-too-large",
          "/outline/corner_radius");
  refuses(outlined(shell::Stadium{m(4), m(5)}), "radius-too-large", "/outline/width");
  refuses(
      outlined(shell::LShape{m(8), m(4), m(8), m(2)}), "notch-too-large", "/outline/notch_length");
  refuses(
      outlined(shell::LShape{m(8), m(4), m(3), m(4)}), "notch-too-large", "/outline/notch_width");
  refuses(outlined(shell::Kidney{m(2), m(2), m(6), m(4.5), m(3)}),
          "circles-do-not-meet",
          "/outline/outer_radius");
  refuses(outlined(shell::Kidney{m(1), m(1), m(6), m(8), m(1.5)}),
          "circles-do-not-meet",
          "/outline/inner_radius");
  refuses(outlined(shell::Kidney{m(3), m(1), m(1.5), m(8), m(3)}),
          "circles-do-not-meet",
          "/outline/centres");
}

TEST_CASE("refused, paths that cannot be a wall") {
  refuses(outlined(walls({point(0, 0), point(5, 0), point(5, 0), point(5, 4), point(0, 4)})),
          "duplicate-point",
          "/outline/points/2");
  refuses(outlined(walls({point(0, 0), point(5, 0), point(5, 4), point(0, 0.0005)})),
          "duplicate-point",
          "/outline/points/3");
  refuses(
      outlined(walls({point(0, 0), point(5, 0), point(10, 0)})), "zero-area", "/outline/points");
  refuses(outlined(walls({point(0, 0, 0.5), point(4, 0, -0.5)})), "zero-area", "/outline/points");
  refuses(outlined(walls({point(0, 0), point(5, 0)})), "too-few-points", "/outline/points");
  refuses(outlined(walls({point(0, 0), point(6, 4), point(6, 1), point(0, 4)})),
          "self-intersection",
          "/outline/points/0");
  // Two arcs cross although the polygon of their chords is simple.
  refuses(outlined(walls({point(0, 0, -0.9), point(6, 0), point(6, 1.5, -0.9), point(0, 1.5)})),
          "self-intersection",
          "/outline/points/0");
  // A corner that touches a far wall.
  refuses(outlined(walls({point(0, 0), point(8, 0), point(8, 4), point(4, 0), point(0, 4)})),
          "self-intersection",
          "/outline/points/0");
  // An arc that touches a far wall from inside at one point: sagitta 2 on a chord of 4.
  refuses(outlined(walls(
              {point(0, 0), point(8, 0), point(8, 2), point(6, 2, -1), point(2, 2), point(0, 2)})),
          "self-intersection",
          "/outline/points/0");
  // Back along its own wall.
  refuses(outlined(walls({point(0, 0),
                          point(8, 0),
                          point(8, 4),
                          point(4, 4),
                          point(4, 6),
                          point(4, 4.5),
                          point(0, 4)})),
          "self-intersection",
          "/outline/points/3");
}

TEST_CASE("refused, surveys by offsets and by two tapes") {
  shell::Offsets offsets;
  offsets.stations = {{m(0), m(0), m(3)}, {m(2), m(0), m(3)}, {m(1), m(0), m(3)}};
  refuses(outlined(offsets), "stations-not-ascending", "/outline/stations/2/0");
  offsets.stations = {{m(0), m(0), m(3)}, {m(2), m(4), m(3)}, {m(4), m(0), m(3)}};
  refuses(outlined(offsets), "offsets-reversed", "/outline/stations/1/2");
  offsets.stations.pop_back();
  offsets.stations.back().near = m(0);
  offsets.curve = shell::Curve::arcs;
  refuses(outlined(offsets), "too-few-points", "/outline/stations");
  offsets.stations = {
      {m(0), m(0), m(3)}, {m(1), m(0), m(3)}, {m(2), m(0), m(3)}, {m(3), m(0), m(3)}};
  refuses(outlined(offsets), "wrong-number-of-stations", "/outline/stations");
  shell::TwoTape tapes{m(10), {{m(3), m(6), 1, 0}, {m(5), m(7), 1, 0}, {m(9), m(4), 1, 0}}};
  refuses(outlined(tapes), "circles-do-not-meet", "/outline/points/0");
  tapes.points[0] = {m(3), m(14), 1, 0};
  refuses(outlined(tapes), "circles-do-not-meet", "/outline/points/0");
  tapes.points[0] = {m(6), m(6), 2, 0};
  refuses(outlined(tapes), "side-not-known", "/outline/points/0/2");
  tapes.baseline = m(0);
  refuses(outlined(tapes), "not-positive", "/outline/baseline");
}

TEST_CASE("refused, floors") {
  refuses(floored(flat(0)), "not-positive", "/floor/depth");
  refuses(floored(breaks({})), "too-few-points", "/floor/points");
  refuses(
      floored(breaks({{0, 1.0}, {5, 1.4}, {4, 2.0}})), "overlapping-bands", "/floor/points/2/0");
  refuses(floored(breaks({{0, 1.0}, {4, 1.4}, {4, 1.6}, {4, 2.0}})),
          "overlapping-bands",
          "/floor/points/3/0");
  refuses(floored(breaks({{0, 1.0}, {4, -1.4}})), "not-positive", "/floor/points/1/1");
  shell::HopperFloor hopper{m(1.1), m(2), {m(0), m(0), m(8), m(4)}, {m(2), m(1), m(9), m(3)}};
  refuses(floored(hopper), "hopper-not-nested", "/floor/inner");
  hopper.outer[2] = m(0);
  refuses(floored(hopper), "not-positive", "/floor/outer");
  auto banded = floored(breaks({{0, 0.25}, {8, 1.8}}));
  banded.rim_to_paint = m(0.3);
  refuses(banded, "depth-not-below-band", "/rim_to_paint");
}

TEST_CASE("refused, spot depths") {
  shell::SpotDepthsFloor spots{
      {{m(0), m(0), m(1)}, {m(6), m(0), m(2)}, {m(6), m(4), m(2)}, {m(0), m(4), m(1)}},
      {{0, 1, 2}, {0, 2, 3}}};
  refuses(floored(spots), "spot-depths-do-not-cover", "/floor/points");
  spots.triangles = {{0, 1, 2}, {0, 2, 7}};
  refuses(floored(spots), "point-number-out-of-range", "/floor/triangles/1/2");
  spots.triangles = {{0, 1, 2}, {0, 1, 1}};
  refuses(floored(spots), "triangle-without-area", "/floor/triangles/1");
  spots.triangles = {{0, 1, 2}, {0, 1, 3}};
  refuses(floored(spots), "triangles-overlap", "/floor/triangles/1");
  // Three points are the least; a fourth is missing to cover the rectangle.
  const auto three = shell::SpotDepthsFloor{{spots.points.begin(), spots.points.begin() + 3}, {}};
  CHECK(!has(faults(floored(three)), "too-few-points", "/floor/points"));
  const auto two = shell::SpotDepthsFloor{{spots.points.begin(), spots.points.begin() + 2}, {}};
  CHECK(has(faults(floored(two)), "too-few-points", "/floor/points"));
  spots.triangles.clear();
  spots.points[2] = {m(3), m(0), m(1)};
  spots.points[3] = {m(2), m(0), m(1)};
  refuses(floored(spots), "spot-depths-do-not-cover", "/floor/points");
  spots.points[3] = spots.points[0];
  refuses(floored(spots), "duplicate-point", "/floor/points/3");
  spots.points.resize(2);
  refuses(floored(spots), "too-few-points", "/floor/points");
}

TEST_CASE("refused, features that do not fit their wall") {
  refuses(with(shell::Bench{0, m(6), m(3), m(0.5), m(0.5)}), "block-outside", "/features/0/length");
  refuses(with(shell::Bench{0, m(1), m(3), m(4.5), m(0.5)}), "block-outside", "/features/0/width");
  refuses(
      with(shell::Bench{4, m(1), m(3), m(0.5), m(0.5)}), "wall-out-of-range", "/features/0/wall");
  refuses(with(shell::StraightSteps{3, m(3), m(2), ms({0.3}), ms({0.3})}),
          "block-outside",
          "/features/0/width");
  refuses(with(shell::StraightSteps{3, m(1), m(2), ms({0.3, 8}), ms({0.3, 0.6})}),
          "block-outside",
          "/features/0/treads/1");
  refuses(with(shell::StraightSteps{3, m(-1), m(2), ms({0.3}), ms({0.3})}),
          "negative",
          "/features/0/from");
  refuses(with(shell::CornerSteps{4, ms({0.5}), ms({0.3})}),
          "corner-out-of-range",
          "/features/0/corner");
  refuses(with(shell::CornerSteps{0, ms({0.5, 4.5}), ms({0.3, 0.6})}),
          "block-outside",
          "/features/0/radii/1");
  refuses(with(shell::RoundSteps{3, m(0.4), ms({0.5}), ms({0.3})}),
          "block-outside",
          "/features/0/radii/0");
  refuses(with(shell::Block{{point(7, 1), point(9, 1), point(9, 2)}, m(0.5)}),
          "block-outside",
          "/features/0/path");
  refuses(with(shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.0005}), ms({0.3, 0.6})}),
          "too-small",
          "/features/0/treads/1");
  auto round = pool(shell::Circle{m(6)}, flat(1.5));
  round.features = {shell::StraightSteps{0, m(1), m(2), ms({0.3}), ms({0.3})}};
  refuses(round, "wall-not-straight", "/features/0/wall");
  round.features = {shell::CornerSteps{0, ms({0.5}), ms({0.3})}};
  refuses(round, "wall-not-straight", "/features/0/corner");
  round.features = {shell::Bench{0, m(1), m(2), m(3.5), m(0.3)}};
  refuses(round, "radius-too-large", "/features/0/width");
}

TEST_CASE("refused, features whose depths make no sense") {
  refuses(with(shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.3}), ms({0.8, 0.4})}),
          "treads-not-descending",
          "/features/0/depths/1");
  refuses(with(shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.3}), ms({0.8})}),
          "wrong-number-of-depths",
          "/features/0/depths");
  refuses(with(shell::RoundSteps{3, m(2), {}, {}}), "wrong-number-of-depths", "/features/0/depths");
  refuses(with(shell::CornerSteps{0, ms({0.6, 0.5}), ms({0.3, 0.6})}),
          "radii-not-ascending",
          "/features/0/radii/1");
  refuses(with(shell::Bench{0, m(1), m(3), m(0.5), m(1.6)}),
          "block-top-not-above-floor",
          "/features/0/depth");
  refuses(with(shell::Pit{{point(1, 1), point(2, 1), point(2, 2)}, m(1.2)}),
          "pit-not-below-floor",
          "/features/0/depth");
  auto p = with(shell::Bench{0, m(1), m(3), m(0.5), m(0.2)});
  p.rim_to_paint = m(0.3);
  refuses(p, "depth-not-below-band", "/features/0/depth");
  // The floor rises through the top of the block.
  auto q = floored(breaks({{0, 0.6}, {8, 1.6}}));
  q.features = {shell::Bench{0, m(1), m(6), m(0.5), m(1.0)}};
  refuses(q, "block-top-not-above-floor", "/features/0/depth");
}

TEST_CASE("refused, features in each others way") {
  auto p = with(shell::Bench{0, m(1), m(3), m(0.5), m(0.5)});
  p.features.push_back(shell::Bench{0, m(3), m(3), m(0.8), m(0.4)});
  refuses(p, "blocks-overlap", "/features/1/width");
  p.features[1] = p.features[0];
  refuses(p, "blocks-overlap", "/features/1/width");
  p.features[1] = shell::Block{{point(2, 0.1), point(3, 0.1), point(3, 0.4)}, m(0.7)};
  refuses(p, "block-top-not-above-floor", "/features/1/depth");
}

TEST_CASE("refused, coves and leaning walls that do not fit") {
  auto p = rectangle(8, 4, flat(1.0));
  p.rim_to_paint = m(0.2);
  p.cove_radius = m(0.9);
  refuses(p, "cove-too-large", "/cove_radius");
  p = rectangle(8, 0.6, flat(1.0));
  p.cove_radius = m(0.4);
  refuses(p, "cove-too-large", "/cove_radius");
  p = rectangle(8, 2, flat(2.0));
  p.wall_lean = 0.6;
  refuses(p, "lean-too-large", "/wall_lean");
  p = pool(shell::Circle{m(3)}, flat(2.0));
  p.wall_lean = 0.8;
  refuses(p, "lean-too-large", "/wall_lean");
  p = with(shell::Bench{0, m(1), m(3), m(0.5), m(0.5)});
  p.wall_lean = 0.1;
  refuses(p, "lean-with-features", "/wall_lean");
  p = usual();
  p.wall_lean = 0.1;
  p.cove_radius = m(0.1);
  refuses(p, "lean-with-cove", "/wall_lean");
  p = floored(breaks({{0, 1}, {4, 1.2}, {4, 1.8}}));
  p.wall_lean = 0.1;
  refuses(p, "lean-with-drop", "/wall_lean");
}

TEST_CASE("refused, everything is said at once") {
  auto p = pool(shell::Rectangle{m(-8), m(no_number)}, breaks({{0, 1}, {-2, -1}}));
  p.rim_to_paint = m(-1);
  const auto found = faults(p);
  CHECK(has(found, "not-positive", "/outline/length"));
  CHECK(has(found, "not-finite", "/outline/width"));
  CHECK(has(found, "negative", "/rim_to_paint"));
  CHECK(has(found, "overlapping-bands", "/floor/points/1/0"));
  CHECK(has(found, "not-positive", "/floor/points/1/1"));
  auto q = with(shell::Bench{9, m(1), m(3), m(0.5), m(0.5)});
  q.features.push_back(shell::CornerSteps{0, ms({0.5}), ms({2.5})});
  q.checks = {{0, 7, m(3)}};
  CHECK(has(faults(q), "wall-out-of-range", "/features/0/wall"));
  CHECK(has(faults(q), "block-top-not-above-floor", "/features/1/depths/0"));
  CHECK(has(faults(q), "corner-out-of-range", "/check/0/1"));
  q.cove_radius = m(1.9);
  CHECK(has(faults(q), "cove-too-large", "/cove_radius"));
}

TEST_CASE("warned, a tape that does not fit the outline") {
  auto p = usual();
  p.checks = {{0, 2, m(std::sqrt(80.0) + 0.019)}, {1, 3, m(std::sqrt(80.0) - 0.031)}};
  warns(p, "tape-misfit", "/check/1/2");
  CHECK(!has(faults(p), "tape-misfit", "/check/0/2"));
  CHECK(faults(p).front().message.find("31 mm") != std::string::npos);
  p.checks = {{0, 1, m(0)}};
  refuses(p, "not-positive", "/check/0/2");
}

TEST_CASE("warned, tapes that cross too flat") {
  // Angles at the points by the cosine rule: 20 degrees and 160 degrees.
  const auto base = [](double a, double b, double angle) {
    return std::sqrt(a * a + b * b - 2 * a * b * std::cos(angle * 3.14159265358979 / 180.0));
  };
  const double c = base(9.0, 6.0, 20.0);
  shell::TwoTape tapes{m(c), {{m(9), m(6), 1, 0}, {m(2.5), m(3.1), -1, 0}, {m(2.6), m(2.9), 1, 0}}};
  warns(outlined(tapes), "tapes-cross-too-flat", "/outline/points/0");
  CHECK(!has(faults(outlined(tapes)), "tapes-cross-too-flat", "/outline/points/1"));
  CHECK(faults(outlined(tapes)).front().message.find("20 degrees") != std::string::npos);
  // 130 degrees is within what a tape stands.
  const double wide = base(3.0, 3.0, 130.0);
  tapes = {m(wide), {{m(3), m(3), 1, 0}, {m(4), m(5), 1, 0}, {m(5), m(4), -1, 0}}};
  CHECK(!has(faults(outlined(tapes)), "tapes-cross-too-flat", "/outline/points/0"));
  const double d = base(3.0, 3.0, 160.0);
  tapes = {m(d), {{m(3), m(3), 1, 0}, {m(4), m(5), 1, 0}, {m(5), m(4), -1, 0}}};
  warns(outlined(tapes), "tapes-cross-too-flat", "/outline/points/0");
}

TEST_CASE("warned, a pool unlike a pool") {
  warns(rectangle(8, 4, flat(0.25)), "unusual-depth", "/floor");
  warns(rectangle(8, 4, flat(7)), "unusual-depth", "/floor");
  warns(rectangle(25, 2, flat(1.2)), "unusual-proportions", "/outline");
  warns(
      rectangle(8, 4, breaks({{0, 1.0}, {2, 1.8}, {8, 1.8}})), "steep-in-shallow-water", "/floor");
  warns(
      rectangle(8, 4, breaks({{0, 1.0}, {9, 1.8}})), "break-outside-outline", "/floor/points/1/0");
  CHECK(faults(rectangle(8, 4, breaks({{0, 1.0}, {8, 1.8}}))).empty());
  // Wherever on the plan it stands, also astride of its origin.
  auto astride = rectangle(8, 4, flat(1.5));
  astride.outline.place = shell::Place{0.0, m(-4), m(-2)};
  CHECK(faults(astride).empty());
  CHECK(faults(outlined(shell::Ellipse{m(8), m(4)})).empty());
  // Wherever on the rim its first point is.
  CHECK(faults(outlined(walls({point(4, 0), point(7, 0), point(8, 4), point(0, 4), point(1, 0)})))
            .empty());
  auto p = with(shell::Bench{0, m(1), m(3), m(0.5), m(0.2)});
  p.rim_to_water = m(0.25);
  warns(p, "top-above-water", "/features/0/depth");
}

TEST_CASE("warned, a triangle whose first point was measured again") {
  warns(outlined(walls({point(0, 0), point(8, 0), point(4, 6), point(0.02, 0.04)})),
        "closing-error",
        "/outline/points/3");
  // A triangle that nobody measured again has three walls of its own.
  CHECK(faults(outlined(walls({point(0, 0), point(8, 0), point(4, 6)}))).empty());
}

TEST_CASE("warned, a clockwise path with walls that are referred to by number") {
  auto p = outlined(walls({point(0, 0), point(0, 4), point(8, 4), point(8, 0)}));
  CHECK(faults(p).empty());
  p.features = {shell::Bench{0, m(1), m(3), m(0.5), m(0.5)}};
  warns(p, "clockwise-outline", "/outline/points");
}
