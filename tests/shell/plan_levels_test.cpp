// What stands on the plan, against the reference rows and plane geometry.
#include "basinwright/shell/plan_levels.hpp"

#include <numbers>

#include "make.hpp"
#include "rows.hpp"

using namespace make;

namespace {

shell::PlanLevels of_level_row(const std::string& name) {
  return shell::plan_levels(rows::pool(rows::row(name).at("pool")));
}

double polygon(const shell::VertexPath& path) {
  double twice = 0.0;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const auto& a = path[i];
    const auto& b = path[(i + 1) % path.size()];
    twice += a.x.si() * b.y.si() - b.x.si() * a.y.si();
  }
  return twice / 2.0;
}

}  // namespace

TEST_CASE("walls by number add up to the perimeter of every reference shell") {
  const auto file = rows::shells();
  REQUIRE(file.at("rows").size() > 20);
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    const auto walls = shell::plan_levels(rows::pool(row.at("pool"))).walls;
    double sum = 0.0;
    for (const Length wall : walls) sum += wall.si();
    CHECK_NEAR(sum, row.at("expected").at("perimeter_m").get<double>());
    if (row.contains("outline_path") && row.at("outline_path").is_array()) {
      CHECK(walls.size() == row.at("outline_path").size());
    }
  }
}

TEST_CASE("the walls of an L are those the tape gave") {
  // 11 x 6.5 less a notch of 4 x 2.5.
  const auto walls = of_level_row("L_breaks").walls;
  const std::vector<double> expected{11.0, 4.0, 4.0, 2.5, 7.0, 6.5};
  REQUIRE(walls.size() == expected.size());
  for (std::size_t i = 0; i < walls.size(); ++i) CHECK_NEAR(walls[i].si(), expected[i]);
}

TEST_CASE("footprints come one a tread with their depths") {
  const auto levels = of_level_row("rect_flight_bench").levels;
  REQUIRE(levels.size() == 4);
  const std::vector<std::pair<double, double>> expected{
      {0.3, 0.6}, {0.6, 1.2}, {0.9, 1.8}, {0.55, 1.35}};
  for (std::size_t i = 0; i < levels.size(); ++i) {
    CHECK_NEAR(levels[i].depth.si(), expected[i].first);
    CHECK_NEAR(polygon(levels[i].path), expected[i].second);
    CHECK(levels[i].feature == (i == 3 ? 1U : 0U));
    CHECK_FALSE(levels[i].sinks);
  }
  auto pit = rectangle(8, 4, flat(1.5));
  pit.features.push_back(shell::Pit{{point(3, 1), point(5, 1), point(5, 3), point(3, 3)}, m(2.5)});
  CHECK(shell::plan_levels(pit).levels.at(0).sinks);
}

TEST_CASE("a drop has two depths and a break has one") {
  const auto drop = of_level_row("drop_off").breaks;
  REQUIRE(drop.size() == 1);
  CHECK(drop[0].drops());
  const double here = drop[0].line.from_depth.si();
  const double there = drop[0].other_from_depth.si();
  CHECK_NEAR(std::min(here, there), 1.2);
  CHECK_NEAR(std::max(here, there), 1.7);
  for (const auto& line : of_level_row("rect_breaks_cove").breaks) {
    CHECK_FALSE(line.drops());
    CHECK_NEAR(line.other_to_depth.si(), line.line.to_depth.si());
  }
}

TEST_CASE("the outline reaches as far as its arcs do") {
  const auto reach = [](const shell::Pool& pool, double degrees) {
    return shell::span_along(pool, degrees).length().si();
  };
  const auto stadium = pool(shell::Stadium{m(12), m(5)}, flat(1.2));
  CHECK_NEAR(reach(stadium, 0.0), 12.0);
  CHECK_NEAR(reach(stadium, 90.0), 5.0);
  // A support line: the straight part's shadow and the diameter.
  CHECK_NEAR(reach(stadium, 60.0), 7.0 * std::cos(std::numbers::pi / 3.0) + 5.0);
  const auto ellipse = pool(shell::Ellipse{m(10), m(6)}, flat(1.2));
  // Width of an ellipse between parallel tangents: 2 sqrt(a2 cos2 + b2 sin2).
  CHECK_NEAR(reach(ellipse, 45.0), 2.0 * std::sqrt(0.5 * 25.0 + 0.5 * 9.0));
  auto placed = rectangle(9, 4, flat(1.2));
  placed.outline.place = shell::Place{30.0, m(5), m(2)};
  CHECK_NEAR(reach(placed, 30.0), 9.0);
  CHECK_NEAR(reach(placed, 120.0), 4.0);
}
