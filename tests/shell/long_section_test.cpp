// The long section against the reference rows: where the floor depends on the axis alone, the area
// of the section times the width is the volume that tests/reference/shells.json gives.
#include "basinwright/shell/long_section.hpp"

#include "make.hpp"
#include "rows.hpp"

using namespace make;

namespace {

struct Expected {
  double position, depth;
};

void check_profile(const shell::LongSection& cut, const std::vector<Expected>& expected) {
  REQUIRE(cut.profile.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    INFO("point " << i);
    CHECK_NEAR(cut.profile[i].position.si(), expected[i].position);
    CHECK_NEAR(cut.profile[i].depth.si(), expected[i].depth);
  }
}

/// Area between a depth and the floor.
double area_below(const shell::LongSection& cut, double depth) {
  double area = 0.0;
  for (std::size_t i = 1; i < cut.profile.size(); ++i) {
    const auto& a = cut.profile[i - 1];
    const auto& b = cut.profile[i];
    area += (b.position - a.position).si() * (0.5 * (a.depth + b.depth).si() - depth);
  }
  return area;
}

shell::LongSection of_row(const std::string& name) {
  return shell::long_section(rows::pool(rows::row(name).at("pool")));
}

}  // namespace

TEST_CASE("the long section holds the water of a rectangle") {
  for (const char* name :
       {"rect_constant", "rect_breaks_cove", "rect_four_breaks", "drop_off", "competition_50m"}) {
    INFO(name);
    const auto row = rows::row(name);
    const auto pool = rows::pool(row.at("pool"));
    const auto cut = shell::long_section(pool);
    const double width = std::get<shell::Rectangle>(pool.outline.shape).width.si();
    CHECK_NEAR(area_below(cut, pool.rim_to_water.si()) * width,
               row.at("expected").at("water_volume_before_cove_m3").get<double>());
    CHECK_NEAR(cut.from_y.si(), width / 2.0);
    CHECK_NEAR(cut.to_y.si(), width / 2.0);
  }
}

// The points below are the measurements of the rows themselves.
TEST_CASE("breaks, drops and steps stand where the tape found them") {
  check_profile(of_row("rect_breaks_cove"), {{0, 1.1}, {3, 1.1}, {8, 2.3}, {12, 2.3}});
  check_profile(of_row("drop_off"), {{0, 1.0}, {6, 1.2}, {6, 1.7}, {12, 2.2}});
  const auto steps = of_row("rect_flight_bench");
  check_profile(steps,
                {{0, 0.3},
                 {0.3, 0.3},
                 {0.3, 0.6},
                 {0.6, 0.6},
                 {0.6, 0.9},
                 {0.9, 0.9},
                 {0.9, 1.2},
                 {4, 1.2},
                 {8, 2.2},
                 {10, 2.2}});
  CHECK(steps.profile[5].on_feature);
  CHECK_FALSE(steps.profile[6].on_feature);
}

TEST_CASE("a hopper is cut through the middle of its bottom") {
  const auto cut = of_row("hopper_four_sides");
  check_profile(cut, {{0, 1.1}, {3.5, 1.1}, {6.4, 2.5}, {8.8, 2.5}, {10, 1.1}});
  CHECK_NEAR(cut.from_y.si(), 2.5);
}

TEST_CASE("spot depths are cut through the deepest spot") {
  const auto cut = of_row("tin_rounded_rect");
  CHECK_NEAR(cut.from_y.si(), 2.4);
  double deepest = 0.0;
  for (const auto& p : cut.profile) deepest = std::max(deepest, p.depth.si());
  CHECK_NEAR(deepest, 2.3);
}

TEST_CASE("the line is the longest that fits") {
  const auto l = of_row("L_breaks");
  CHECK_NEAR(l.to.si() - l.from.si(), 11.0);
  CHECK(l.from_y.si() == Approx(2.0).margin(0.05));  // the leg is 4 m wide
  const auto circle = of_row("circle_tilted");
  CHECK_NEAR(circle.to.si() - circle.from.si(), 7.0);
  CHECK_NEAR(circle.from_y.si(), circle.to_y.si());
}

TEST_CASE("leaning walls meet the floor at their toe") {
  // 1 in 10 over 1.6 m.
  check_profile(of_row("batter_rect_constant"), {{0.16, 1.6}, {8.84, 1.6}});
  // 0.08 over 1.1 m and over 2.1 m.
  check_profile(of_row("batter_rect_breaks"),
                {{0.088, 1.1}, {3, 1.1}, {8, 2.1}, {11 - 0.168, 2.1}});
  // Both toes on the slope of 0.2: s = 0.1 (1 + 0.2 s), and 10 - s = 0.1 (1 + 0.2 s).
  auto pool = rectangle(10, 4, breaks({{0, 1.0}, {10, 3.0}}));
  pool.wall_lean = 0.1;
  const double near = 0.1 / 0.98;
  const double far = 9.9 / 1.02;
  check_profile(shell::long_section(pool), {{near, 1.0 + 0.2 * near}, {far, 1.0 + 0.2 * far}});
}

TEST_CASE("positions are those of the axis wherever the pool stands") {
  auto pool = rectangle(12, 6, breaks({{3, 1.1}, {8, 2.3}}));
  pool.outline.place = shell::Place{90.0, m(20), m(5)};
  auto& floor = std::get<shell::BreaksFloor>(pool.floor);
  floor.axis_deg = 90.0;
  floor.origin_x = m(20);
  floor.origin_y = m(5);
  const auto cut = shell::long_section(pool);
  check_profile(cut, {{0, 1.1}, {3, 1.1}, {8, 2.3}, {12, 2.3}});
  CHECK_NEAR(cut.from_x.si(), 17.0);
  CHECK_NEAR(cut.from_y.si(), 5.0);
  CHECK_NEAR(cut.to_y.si(), 17.0);
  CHECK_NEAR(cut.from.si(), 0.0);
  CHECK_NEAR(cut.to.si(), 12.0);
  // A path that begins in the middle of its near end, positions from the axis's own origin.
  const auto six = make::pool(
      shell::Path{{point(2, 0), point(6, 0), point(8, 2), point(6, 4), point(2, 4), point(0, 2)}},
      breaks({{3, 1.1}, {5, 2.3}}));
  const auto hexagon = shell::long_section(six);
  check_profile(hexagon, {{0, 1.1}, {3, 1.1}, {5, 2.3}, {8, 2.3}});
  CHECK_NEAR(hexagon.from.si(), 0.0);
  CHECK_NEAR(hexagon.to.si(), 8.0);
}

TEST_CASE("a pool that is refused has no long section") {
  CHECK_THROWS_AS(shell::long_section(rectangle(8, -4, flat(1.0))), std::invalid_argument);
}
