// Sections across a pool, against areas worked out by hand.
#include <cmath>
#include <stdexcept>

#include "basinwright/shell/sketch.hpp"
#include "make.hpp"
#include "rows.hpp"

using namespace make;

TEST_CASE("parts by surface follow the cuts") {
  auto p = rectangle(10, 4, breaks({{0, 1.0}, {10, 2.0}}));
  p.rim_to_paint = m(0.2);
  const auto found = shell::parts(p, ms({4}));
  REQUIRE(found.size() == 2);
  CHECK(found[0].from == m(4));
  CHECK(found[0].to == m(10));
  CHECK(found[1].from == m(0));
  CHECK_NEAR(found[0].floor.si(), 24.0 * std::sqrt(1.01));
  CHECK_NEAR(found[0].walls.si(), 2.0 * 6.0 * (1.7 - 0.2) + 4.0 * 1.8);
  CHECK_NEAR(found[1].walls.si(), 2.0 * 4.0 * (1.2 - 0.2) + 4.0 * 0.8);
  CHECK_NEAR(found[0].painted.si(), (found[0].floor + found[0].walls).si());
}

TEST_CASE("a face on a cut counts with the shallow side") {
  const auto p = rectangle(8, 4, breaks({{0, 1.0}, {4, 1.0}, {4, 1.6}, {8, 1.6}}));
  const auto found = shell::parts(p, ms({4}));
  CHECK_NEAR(found[0].floor.si(), 16.0);
  CHECK_NEAR(found[1].floor.si(), 16.0 + 4.0 * 0.6);
}

TEST_CASE("a pool that is deep at its near end is cut from there") {
  const auto far = rectangle(10, 4, breaks({{0, 1.0}, {10, 2.0}}));
  const auto near_end = rectangle(10, 4, breaks({{0, 2.0}, {10, 1.0}}));
  CHECK(shell::section_axis(far).deep_end_last);
  CHECK(!shell::section_axis(near_end).deep_end_last);
  const auto a = shell::section_areas(far, ms({3, 7})).deep_to_shallow;
  const auto b = shell::section_areas(near_end, ms({3, 7})).deep_to_shallow;
  REQUIRE(b.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) CHECK_NEAR(b[i].si(), a[i].si());
  using basinwright::units::square_metres;
  const auto k = shell::kit_boundaries(far, square_metres(25));
  const auto l = shell::kit_boundaries(near_end, square_metres(25));
  REQUIRE(k.size() == l.size());
  for (std::size_t i = 0; i < k.size(); ++i) CHECK_NEAR(k[i].si() + l[i].si(), 10.0);
}

TEST_CASE("sections follow the axis and origin of the breaks") {
  auto floor = std::get<shell::BreaksFloor>(breaks({{-2, 1.0}, {2, 2.0}}));
  floor.axis_deg = 90;
  floor.origin_x = m(100);
  floor.origin_y = m(2);
  const auto p = rectangle(8, 4, floor);
  const auto axis = shell::section_axis(p);
  CHECK(axis.direction_x == 0.0);
  CHECK(axis.direction_y == 1.0);
  CHECK_NEAR(axis.first.si(), -2.0);
  CHECK_NEAR(axis.last.si(), 2.0);
  const auto found = shell::parts(p, ms({0}));
  CHECK_NEAR(found[0].floor.si(), 16.0 * std::sqrt(1.0 + 1.0 / 16.0));
  CHECK_NEAR(found[0].walls.si(), 8.0 * 2.0 + 2.0 * 2.0 * 1.75);
}

TEST_CASE("every kit boundary leaves whole kits on its deep side") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    const auto p = rows::pool(row.at("pool"));
    if (p.wall_lean > 0.0) continue;
    INFO(row.at("name"));
    const double total = taken(p).painted_area.si();
    const double cover = total / 3.3;
    const auto cuts = shell::kit_boundaries(p, basinwright::units::square_metres(cover));
    REQUIRE(cuts.size() == 3);
    const auto areas = shell::section_areas(p, cuts).deep_to_shallow;
    double beyond = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
      beyond += areas[i].si();
      // Equal, unless the boundary sits on a face across the axis, which then lies beyond it.
      const auto past = shell::section_areas(p, {cuts[i] - m(1e-6)}).deep_to_shallow[0].si();
      CHECK(beyond <= static_cast<double>(i + 1) * cover + 1e-8);
      CHECK(past >= static_cast<double>(i + 1) * cover - 1e-8);
    }
  }
}

// By hand: a box 8 x 4 x 1.5 m paints 4 x 1.5 at each end and 4 + 2 x 1.5 a metre between: 68 m2.
TEST_CASE("shares of a given area end where hand calculation says") {
  using basinwright::units::square_metres;
  const auto p = rectangle(8, 4, flat(1.5));
  const auto found = shell::parts_by_area(p, {square_metres(2), square_metres(20)});
  REQUIRE(found.size() == 3);
  // The first share ends inside the end wall of 6 m2 and takes a third of it.
  CHECK(found[0].from == m(8));
  CHECK(found[0].to == m(8));
  CHECK_NEAR(found[0].walls.si(), 2.0);
  CHECK_NEAR(found[0].floor.si(), 0.0);
  CHECK_NEAR(found[1].from.si(), 6.0);  // (20 - 6) / 7 = 2 m from the wall
  CHECK_NEAR(found[1].walls.si(), 4.0 + 2.0 * 2.0 * 1.5);
  CHECK_NEAR(found[1].floor.si(), 8.0);
  CHECK_NEAR(found[2].painted.si(), 48.0);
  const auto rest = shell::parts_by_area(p, {square_metres(66)});
  CHECK_NEAR(rest[0].to.si(), 8.0);  // the rest lies in the other end wall
  CHECK_NEAR(rest[1].walls.si(), 2.0);
  CHECK_NEAR(rest[1].floor.si(), 0.0);
  CHECK_NEAR(shell::parts_by_area(p, {square_metres(68)})[1].painted.si(), 0.0);
  CHECK_THROWS_AS(shell::parts_by_area(p, {square_metres(69)}), std::invalid_argument);
  CHECK_THROWS_AS(shell::parts_by_area(p, {square_metres(-1)}), std::invalid_argument);
  CHECK_THROWS_AS(shell::parts_by_area(p, {square_metres(9), square_metres(8)}),
                  std::invalid_argument);
}

TEST_CASE("shares of every reference shell have their area and add up to the whole") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    const auto p = rows::pool(row.at("pool"));
    INFO(row.at("name"));
    const auto t = taken(p);
    std::vector<basinwright::units::Area> ends;
    for (int k = 1; k < 5; ++k) ends.push_back(t.painted_area * (k / 5.0));
    shell::Part sum;
    for (const auto& part : shell::parts_by_area(p, ends)) {
      CHECK(make::near(part.painted.si(), t.painted_area.si() / 5.0, 1e-7));
      CHECK(part.from <= part.to);
      sum.floor += part.floor;
      sum.walls += part.walls;
      sum.treads += part.treads;
      sum.risers += part.risers;
      sum.cove_change += part.cove_change;
    }
    CHECK_NEAR(sum.floor.si(), t.floor_area.si());
    CHECK_NEAR(sum.walls.si(), t.wall_area.si());
    CHECK_NEAR(sum.treads.si(), t.tread_area.si());
    CHECK_NEAR(sum.risers.si(), t.riser_area.si());
    CHECK_NEAR(sum.cove_change.si(), t.cove_area_change.si());
  }
}

TEST_CASE("a whole number of kits opens no new one") {
  const auto p = rectangle(8, 4, flat(1.5));  // 32 + 36 m2
  using basinwright::units::square_metres;
  CHECK(shell::kit_boundaries(p, square_metres(17)).size() == 3);
  CHECK(shell::kit_boundaries(p, square_metres(68)).empty());
  for (const double none : {0.0, -1.0, std::nan(""), HUGE_VAL})
    CHECK_THROWS_AS(shell::kit_boundaries(p, square_metres(none)), std::invalid_argument);
  CHECK(shell::kit_boundaries(p, square_metres(100)).empty());
  CHECK_THROWS_AS(shell::kit_boundaries(p, square_metres(1e-9)), std::invalid_argument);
  CHECK_THROWS_AS(shell::section_areas(rectangle(8, -4, flat(1)), {}), std::invalid_argument);
}

TEST_CASE("leaning walls are cut across too") {
  const auto file = rows::shells();
  for (const char* name : {"batter_rect_breaks", "batter_circle_constant"}) {
    INFO(name);
    const auto p = rows::pool(rows::row(name).at("pool"));
    const auto t = taken(p);
    double floor = 0.0;
    double walls = 0.0;
    for (const auto& part : shell::parts(p, ms({1.0, 2.5, 4.0}))) {
      floor += part.floor.si();
      walls += part.walls.si();
    }
    CHECK_NEAR(floor, t.floor_area.si());
    CHECK_NEAR(walls, t.wall_area.si());
  }
  // Symmetric about the middle of a box with leaning walls.
  auto box = rectangle(9, 4, flat(1.6));
  box.wall_lean = 0.1;
  const auto halves = shell::parts(box, ms({4.5}));
  CHECK_NEAR(halves[0].floor.si(), halves[1].floor.si());
  CHECK_NEAR(halves[0].walls.si(), halves[1].walls.si());
}

TEST_CASE("a sketch has the outline, every tread and the break lines inside") {
  auto p = rectangle(8, 4, breaks({{0, 1.0}, {3, 1.2}, {6, 2.0}}));
  p.features = {shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.3}), ms({0.3, 0.6})}};
  const auto s = shell::sketch(p);
  CHECK(std::get<shell::VertexPath>(s.outline).size() == 4);
  CHECK(s.footprints.size() == 2);
  REQUIRE(s.break_lines.size() == 2);
  for (const auto& line : s.break_lines) {
    CHECK_NEAR(line.from_x.si(), line.to_x.si());
    CHECK_NEAR(std::abs((line.from_y - line.to_y).si()), 4.0);
  }
  CHECK_NEAR(s.break_lines[0].from_depth.si(), 1.2);
  const shell::HopperFloor hopper{
      m(1.0), m(2.0), {m(2), m(0.5), m(8), m(4.5)}, {m(4), m(1.5), m(7), m(3)}};
  CHECK(shell::sketch(rectangle(10, 5, hopper)).break_lines.size() == 12);
}
