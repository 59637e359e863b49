// Floors against solid geometry.
#include "make.hpp"
#include "shell/delaunay.hpp"

using namespace make;

namespace {

shell::SpotDepthsFloor spots(const std::vector<std::array<double, 3>>& points,
                             std::vector<std::array<int, 3>> triangles = {}) {
  shell::SpotDepthsFloor floor;
  for (const auto& p : points) floor.points.push_back({m(p[0]), m(p[1]), m(p[2])});
  floor.triangles = std::move(triangles);
  return floor;
}

std::vector<basinwright::shell::geometry::Triangle> triangles(
    const std::vector<basinwright::shell::geometry::Vec>& points) {
  return basinwright::shell::geometry::delaunay(points).triangles;
}

}  // namespace

// A prismatoid holds h (A + 4 M + B) / 6 (any table of solids).
TEST_CASE("a hopper is a prismatoid under a box") {
  const shell::HopperFloor hopper{
      m(1.0), m(2.4), {m(2), m(0.5), m(8), m(4.5)}, {m(4), m(1.5), m(7), m(3)}};
  const auto t = taken(rectangle(10, 5, hopper));
  const double top = 6.0 * 4.0;
  const double bottom = 3.0 * 1.5;
  const double middle = 4.5 * 2.75;
  CHECK_NEAR(t.mean_depth.si() * 50.0, 50.0 * 1.0 + 1.4 * (top + 4.0 * middle + bottom) / 6.0);
  // Four trapezoids between parallel edges at slant heights of the four sides.
  const double slanted = 0.5 * (4.0 + 1.5) * (std::hypot(2.0, 1.4) + std::hypot(1.0, 1.4)) +
                         0.5 * (6.0 + 3.0) * (std::hypot(1.0, 1.4) + std::hypot(1.5, 1.4));
  CHECK_NEAR(t.floor_area.si(), 50.0 - top + bottom + slanted);
  CHECK_NEAR(t.deepest.si(), 2.4);
  CHECK_NEAR(t.shallowest.si(), 1.0);
}

TEST_CASE("a hopper with an upright side adds that side to the floor") {
  const shell::HopperFloor hopper{
      m(1.0), m(2.0), {m(2), m(1), m(8), m(4)}, {m(2), m(1), m(5), m(4)}};
  const auto t = taken(rectangle(10, 5, hopper));
  // Upright faces: 3 m at x = 2, two of 3 m run below the inner edge and triangles of 3 m beyond.
  const double upright = 3.0 * 1.0 + 2.0 * (3.0 * 1.0 + 0.5 * 3.0 * 1.0);
  CHECK_NEAR(t.floor_area.si(), 50.0 - 18.0 + 9.0 + 3.0 * std::hypot(3.0, 1.0) + upright);
}

TEST_CASE("a drop counts where the floor is open and not under a block") {
  const auto floor = breaks({{0, 1.0}, {4, 1.0}, {4, 1.6}, {8, 1.6}});
  auto p = rectangle(8, 4, floor);
  CHECK_NEAR(taken(p).floor_area.si(), 32.0 + 4.0 * 0.6);
  p.features = {shell::Block{{point(3, 1), point(5, 1), point(5, 2), point(3, 2)}, m(0.5)}};
  auto t = taken(p);
  CHECK_NEAR(t.floor_area.si(), 32.0 - 2.0 + 3.0 * 0.6);
  CHECK_NEAR(t.riser_area.si(), 1.0 * 0.5 + 1.0 * 1.1 + 2.0 * (0.5 + 1.1));
  // A block that ends on the drop: its face runs down to the deep floor.
  p.features = {shell::Block{{point(3, 1), point(4, 1), point(4, 2), point(3, 2)}, m(0.5)}};
  t = taken(p);
  CHECK_NEAR(t.floor_area.si(), 32.0 - 1.0 + 3.0 * 0.6);
  CHECK_NEAR(t.riser_area.si(), 3.0 * 0.5 + 1.0 * 1.1);
}

TEST_CASE("a drop at the wall makes the wall taller and nothing else") {
  const auto t = taken(rectangle(8, 4, breaks({{0, 1.0}, {8, 1.0}, {8, 1.6}})));
  CHECK_NEAR(t.floor_area.si(), 32.0);
  CHECK_NEAR(t.wall_area.si(), 24.0);
  const auto u = taken(rectangle(8, 4, breaks({{0, 1.6}, {0, 1.0}, {8, 1.0}})));
  CHECK_NEAR(u.wall_area.si(), 24.0);
}

TEST_CASE("spot depths on one plane are that plane") {
  const auto plane = [](double x, double y) { return 1.0 + 0.1 * x + 0.05 * y; };
  std::vector<std::array<double, 3>> points;
  for (const auto& [x, y] : {std::pair{0.0, 0.0},
                             {8.0, 0.0},
                             {8.0, 4.0},
                             {0.0, 4.0},
                             {3.0, 1.0},
                             {5.5, 2.5},
                             {2.0, 3.2},
                             {6.7, 0.9}}) {
    points.push_back({x, y, plane(x, y)});
  }
  const auto t = taken(rectangle(8, 4, spots(points)));
  CHECK_NEAR(t.floor_area.si(), 32.0 * std::sqrt(1.0 + 0.01 + 0.0025));
  CHECK_NEAR(t.mean_depth.si(), plane(4, 2));
  CHECK_NEAR(t.deepest.si(), plane(8, 4));
}

TEST_CASE("a pyramid of spot depths holds a third of its box") {
  const auto t =
      taken(rectangle(6, 4, spots({{0, 0, 1}, {6, 0, 1}, {6, 4, 1}, {0, 4, 1}, {2, 1, 2.5}})));
  CHECK_NEAR(t.mean_depth.si() * 24.0, 24.0 + 24.0 * 1.5 / 3.0);
}

TEST_CASE("a crack between triangles of different depth is a vertical face") {
  // Two halves 0.5 m apart in depth, each with its own points along x = 4 (one aside by 2 mm).
  const auto t = taken(rectangle(8,
                                 4,
                                 spots({{0, 0, 1},
                                        {4, 0, 1},
                                        {4, 4, 1},
                                        {0, 4, 1},
                                        {4.002, -1, 1.5},
                                        {9, -1, 1.5},
                                        {9, 5, 1.5},
                                        {4.002, 5, 1.5}},
                                       {{0, 1, 2}, {0, 2, 3}, {4, 5, 6}, {4, 6, 7}})));
  CHECK(t.wall_area.si() == Approx(1.0 * 12.0 + 1.5 * 12.0).margin(0.01));
}

TEST_CASE("delaunay triangles are the ones with empty circles") {
  // A point well inside a triangle, and a quadrangle whose short diagonal is the right one.
  CHECK(triangles({{0, 0}, {4, 0}, {2, 3}, {2, 1}}) ==
        std::vector<basinwright::shell::geometry::Triangle>{{0, 1, 3}, {0, 3, 2}, {1, 2, 3}});
  CHECK(triangles({{0, 0}, {10, 0}, {5, 1}, {5, -1}}) ==
        std::vector<basinwright::shell::geometry::Triangle>{{0, 3, 2}, {1, 2, 3}});
}

TEST_CASE("a tie takes the diagonal from the lowest point and says so") {
  const std::vector<std::array<int, 3>> from_first{{0, 1, 2}, {0, 2, 3}};
  CHECK(triangles({{0, 0}, {2, 0}, {2, 2}, {0, 2}}) == from_first);
  CHECK(triangles({{2, 2}, {0, 2}, {0, 0}, {2, 0}}) == from_first);
  // Six points on one circle: a fan from the first.
  std::vector<basinwright::shell::geometry::Vec> six;
  for (const int i : {3, 0, 4, 1, 5, 2}) {
    six.push_back({std::cos(i * 1.0471975511965976), std::sin(i * 1.0471975511965976)});
  }
  const auto fan = triangles(six);
  REQUIRE(fan.size() == 4);
  for (const auto& t : fan) CHECK(t[0] == 0);
  const auto p = rectangle(8, 4, spots({{0, 0, 1}, {8, 0, 2}, {8, 4, 2}, {0, 4, 1}}));
  CHECK(has(faults(p), "triangles-are-a-choice", "/floor/points"));
}

TEST_CASE("delaunay keeps every point and empty circles on a drawn cloud") {
  std::vector<basinwright::shell::geometry::Vec> points;
  std::uint64_t state = 7;
  const auto draw = [&] {
    state = state * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<double>(state >> 40) / 16777216.0;
  };
  for (int i = 0; i < 60; ++i) {
    const double x = 10 * draw();
    points.push_back({x, 5 * draw()});
  }
  const auto found = triangles(points);
  double area = 0.0;
  for (const auto& t : found) {
    const auto a = points[static_cast<std::size_t>(t[0])];
    const auto b = points[static_cast<std::size_t>(t[1])];
    const auto c = points[static_cast<std::size_t>(t[2])];
    const double twice = cross(b - a, c - a);
    CHECK(twice > 0.0);
    area += 0.5 * twice;
    // Circumcentre relative to a.
    const auto u = b - a;
    const auto v = c - a;
    const basinwright::shell::geometry::Vec centre{
        (v.y * dot(u, u) - u.y * dot(v, v)) / (2 * twice),
        (u.x * dot(v, v) - v.x * dot(u, u)) / (2 * twice)};
    for (const auto& p : points) CHECK(norm(p - a - centre) > norm(centre) - 1e-9);
  }
  // Euler: 2 n - 2 - h triangles fill a hull of h corners, found here by wrapping.
  std::size_t h = 0;
  double hull = 0.0;
  const auto start = std::ranges::min_element(points, {}, [](const auto& p) { return p.x; });
  auto here = *start;
  do {
    auto next = points[0];
    for (const auto& p : points) {
      const bool stays = next.x == here.x && next.y == here.y;
      if (stays || cross(next - here, p - here) < 0.0) next = p;
    }
    hull += 0.5 * cross(here - *start, next - *start);
    here = next;
    ++h;
  } while (here.x != start->x);
  CHECK(found.size() == 2 * points.size() - 2 - h);
  CHECK_NEAR(area, hull);
}
