// Pools small enough to work out by hand, and the worked job of the trade notes.
#include <numbers>

#include "make.hpp"

using namespace make;
using std::numbers::pi;

// Trade notes on coverage, worked job: 8 x 4 m, 1.2 to 1.8 m over the length.
TEST_CASE("the worked job has floor 32.090, walls 36.0 and 48.0 m3") {
  const auto t = taken(rectangle(8, 4, breaks({{0, 1.2}, {8, 1.8}})));
  CHECK(t.floor_area.si() == Approx(32.090).margin(0.0005));
  CHECK_NEAR(t.floor_area.si(), 4.0 * std::sqrt(8.0 * 8.0 + 0.6 * 0.6));
  CHECK_NEAR(t.wall_area.si(), 36.0);
  CHECK_NEAR(t.painted_area.si(), 36.0 + 4.0 * std::sqrt(64.36));
  CHECK_NEAR(t.water_volume.si(), 48.0);
  CHECK_NEAR(t.mean_depth.si(), 1.5);
  CHECK_NEAR(t.shallowest.si(), 1.2);
  CHECK_NEAR(t.deepest.si(), 1.8);
}

// Steps on a level floor 1.5 m deep, 8 x 4 m. Net change by the exposed and touching edges of each
// tread: sum (exposed - contact) x drop, worked out by hand for every kind.
namespace {

constexpr double deep = 1.5;

struct Change {
  double painted;
  double volume;
};

Change change_by(const shell::Feature& feature) {
  const auto plain = taken(rectangle(8, 4, flat(deep)));
  auto with = rectangle(8, 4, flat(deep));
  with.features.push_back(feature);
  const auto t = taken(with);
  return {t.painted_area.si() - plain.painted_area.si(),
          t.water_volume.si() - plain.water_volume.si()};
}

}  // namespace

TEST_CASE("straight steps against one wall add both cheeks") {
  const auto c =
      change_by(shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.3, 0.4}), ms({0.3, 0.6, 0.9})});
  const double goings = 0.3 * (deep - 0.3) + 0.3 * (deep - 0.6) + 0.4 * (deep - 0.9);
  CHECK_NEAR(c.painted, 2.0 * goings);
  CHECK_NEAR(c.volume, -2.0 * (0.3 * (deep - 0.3) + 0.3 * (deep - 0.6) + 0.4 * (deep - 0.9)));
}

TEST_CASE("straight steps in a corner change no area") {
  const auto c = change_by(shell::StraightSteps{3, m(0), m(2), ms({0.3, 0.3}), ms({0.3, 0.6})});
  CHECK_NEAR(c.painted, 0.0);
}

TEST_CASE("straight steps from side wall to side wall save both sides") {
  const auto c = change_by(shell::StraightSteps{3, m(0), m(4), ms({0.3, 0.5}), ms({0.3, 0.6})});
  CHECK_NEAR(c.painted, -2.0 * (0.3 * (deep - 0.3) + 0.5 * (deep - 0.6)));
}

TEST_CASE("quarter round corner steps change the area by (pi over 2 - 2) radius x drop") {
  const auto c = change_by(shell::CornerSteps{1, ms({0.5, 0.9}), ms({0.3, 0.6})});
  const double edges = 0.5 * 0.3 + 0.9 * (deep - 0.6);
  CHECK_NEAR(c.painted, (pi / 2.0 - 2.0) * edges);
  CHECK_NEAR(c.volume, -pi / 4.0 * (0.25 * 0.3 + 0.81 * (deep - 0.6)));
}

TEST_CASE("half round steps on a wall change the area by (pi - 2) radius x drop") {
  const auto c = change_by(shell::RoundSteps{0, m(4), ms({0.5, 0.9}), ms({0.3, 0.6})});
  CHECK_NEAR(c.painted, (pi - 2.0) * (0.5 * 0.3 + 0.9 * (deep - 0.6)));
}

// Fronts and free sides, the side that two steps of a flight share counted once.
TEST_CASE("step edges by hand") {
  const auto edge = [](const shell::Feature& feature) {
    auto with = rectangle(8, 4, flat(deep));
    with.features.push_back(feature);
    return taken(with).step_edge.si();
  };
  const auto flight = [&](double from, double width) {
    return edge(
        shell::StraightSteps{3, m(from), m(width), ms({0.3, 0.3, 0.4}), ms({0.3, 0.6, 0.9})});
  };
  CHECK_NEAR(flight(1, 2), 3 * 2.0 + 2 * 1.0);  // free on both sides
  CHECK_NEAR(flight(0, 2), 3 * 2.0 + 1.0);      // in a corner
  CHECK_NEAR(flight(0, 4), 3 * 4.0);            // from side wall to side wall
  CHECK_NEAR(edge(shell::CornerSteps{1, ms({0.5, 0.9}), ms({0.3, 0.6})}), pi / 2 * (0.5 + 0.9));
  CHECK_NEAR(edge(shell::RoundSteps{0, m(4), ms({0.5, 0.9}), ms({0.3, 0.6})}), pi * (0.5 + 0.9));
  const std::vector<shell::PathPoint> square{point(3, 1), point(5, 1), point(5, 2), point(3, 2)};
  CHECK_NEAR(edge(shell::Block{square, m(1.0)}), 6.0);
  CHECK(edge(shell::Pit{square, m(1.8)}) == 0.0);  // Nobody steps on it.
  CHECK(taken(rectangle(8, 4, flat(deep))).step_edge.si() == 0.0);
}

TEST_CASE("a free block adds its sides and a pit adds its sides too") {
  const std::vector<shell::PathPoint> square{point(3, 1), point(5, 1), point(5, 2), point(3, 2)};
  CHECK_NEAR(change_by(shell::Block{square, m(0.5)}).painted, 6.0 * 1.0);
  CHECK_NEAR(change_by(shell::Block{square, m(0.5)}).volume, -2.0 * 1.0);
  CHECK_NEAR(change_by(shell::Pit{square, m(2.0)}).painted, 6.0 * 0.5);
  CHECK_NEAR(change_by(shell::Pit{square, m(2.0)}).volume, 2.0 * 0.5);
}

TEST_CASE("a bench round a round spa is a ring") {
  auto spa = pool(shell::Circle{m(2)}, flat(1.0));
  for (const int wall : {0, 1}) {
    spa.features.push_back(shell::Bench{wall, m(0), m(pi), m(0.4), m(0.5)});
  }
  const auto t = taken(spa);
  CHECK_NEAR(t.tread_area.si(), pi * (1.0 - 0.36));
  CHECK_NEAR(t.riser_area.si(), 2.0 * pi * 0.6 * 0.5);
  CHECK_NEAR(t.wall_area.si(), 2.0 * pi * 0.5);
  CHECK_NEAR(t.floor_area.si(), pi * 0.36);
  CHECK_NEAR(t.cove_length.si(), 0.0);
  CHECK_NEAR(t.water_volume.si(), pi * (0.5 + 0.36 * 0.5));
}

TEST_CASE("the same spa as a bench-deep floor with a pit") {
  auto spa = pool(shell::Circle{m(2)}, flat(0.5));
  spa.features.push_back(shell::Pit{{point(0.4, 1.0, 1.0), point(1.6, 1.0, 1.0)}, m(1.0)});
  const auto t = taken(spa);
  CHECK_NEAR(t.tread_area.si(), 0.0);
  CHECK_NEAR(t.floor_area.si(), pi);
  CHECK_NEAR(t.riser_area.si(), 2.0 * pi * 0.6 * 0.5);
  CHECK_NEAR(t.water_volume.si(), pi * (0.5 + 0.36 * 0.5));
}

TEST_CASE("a bench along more than half a turn of a kidney is a ring sector") {
  // The end wall of radius 2.4 turns by 4 atan(1.2500182932242894) (reference row kidney_constant).
  const double turn = 4.0 * std::atan(1.2500182932242894);
  auto p = pool(shell::Kidney{m(2.4), m(1.8), m(4.6), m(8.5), m(2.1)}, flat(1.45));
  p.features = {shell::Bench{3, m(0), m(2.4 * turn), m(0.4), m(0.5)}};
  const auto t = taken(p);
  CHECK_NEAR(t.tread_area.si(), 0.5 * turn * (2.4 * 2.4 - 2.0 * 2.0));
  CHECK_NEAR(t.riser_area.si(), (2.0 * turn + 2.0 * 0.4) * (1.45 - 0.5));
  CHECK_NEAR((t.perimeter - t.cove_length).si(), 2.4 * turn);
}

TEST_CASE("a round block in an ellipse") {
  auto p = pool(shell::Ellipse{m(10), m(6)}, flat(1.5));
  p.features = {shell::Block{{point(4, 3, 1), point(6, 3, 1)}, m(0.5)}};
  const auto t = taken(p);
  CHECK_NEAR(t.tread_area.si(), pi);
  CHECK_NEAR(t.floor_area.si(), pi * 15.0 - pi);
  CHECK_NEAR(t.riser_area.si(), 2.0 * pi);
  CHECK_NEAR(t.water_volume.si(), pi * (15.0 * 1.5 - 1.0));
}

TEST_CASE("a cove saves (2 - pi over 2) r by the metre and takes (1 - pi over 4) r2 of water") {
  auto p = rectangle(8, 4, flat(1.5));
  const auto plain = taken(p);
  p.cove_radius = m(0.15);
  const auto t = taken(p);
  CHECK_NEAR(t.cove_area_change.si(), -0.429203673205103 * 0.15 * 24.0);
  CHECK_NEAR(t.water_volume.si() - plain.water_volume.si(), -0.214601836602552 * 0.0225 * 24.0);
  CHECK_NEAR(t.cove_true_angle_area_change.si(), t.cove_area_change.si());
  // Per metre at 150 mm: -0.06438 m2 and -0.00483 m3.
  CHECK(t.cove_area_change.si() / 24.0 == Approx(-0.06438).margin(5e-6));
}

// At dihedral angles of 80, 85, 95 and 100 degrees the fillet saves 0.638, 0.525, 0.349 and 0.282
// of its radius: r ((pi - phi) - 2 cot(phi / 2)) by plane trigonometry.
TEST_CASE("the true angle cove follows the angle between end wall and floor") {
  for (const auto& [degrees, saved] : {std::pair{80.0, 0.638}, {85.0, 0.525}}) {
    const double slope = 1.0 / std::tan(degrees * pi / 180.0);
    auto p = rectangle(6, 3, breaks({{0, 2.0}, {6, 2.0 + 6.0 * slope}}));
    p.cove_radius = m(0.1);
    const auto t = taken(p);
    const double sides = (pi / 2.0 - 2.0) * 12.0 * std::sqrt(1.0 + slope * slope);
    const double other = (degrees * pi / 180.0) - 2.0 * std::tan(degrees * pi / 360.0);
    const double ends = t.cove_true_angle_area_change.si() / 0.1 - sides;
    CHECK(ends / 3.0 - other == Approx(-saved).margin(6e-4));
  }
}

TEST_CASE("a floor above the water line holds no water") {
  auto p = rectangle(10, 4, breaks({{0, 0.2}, {10, 1.2}}));
  p.rim_to_water = m(0.4);
  // A wedge from x = 2 m on: half of 8 m x 0.8 m, 4 m wide.
  CHECK_NEAR(taken(p).water_volume.si(), 0.5 * 8.0 * 0.8 * 4.0);
  CHECK(has(faults(p), "floor-above-water", "/rim_to_water"));
}
