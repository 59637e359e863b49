// Leaning walls against the formula of inner parallels (Steiner): P(z) = P - 2 m z K and
// A(z) = A - m z P + (m z)^2 K, with K the half turning of arcs and tan(half turn) of corners; at a
// reentrant corner the nearest rim point is the corner itself and half its turn counts.
#include <numbers>

#include "make.hpp"

using namespace make;
using std::numbers::pi;

namespace {

struct Steiner {
  double area;
  double perimeter;
  double k;
};

void check_lean(shell::OutlineShape shape, const Steiner& s, double tolerance = 1e-9) {
  constexpr double lean = 0.12;
  constexpr double deep = 1.5;
  constexpr double band = 0.15;
  constexpr double water = 0.1;
  auto p = pool(std::move(shape), flat(deep));
  p.wall_lean = lean;
  p.rim_to_paint = m(band);
  p.rim_to_water = m(water);
  const auto t = taken(p);
  const auto cube = [](double z) { return z * z * z; };
  const double floor = s.area - lean * deep * s.perimeter + lean * lean * deep * deep * s.k;
  const double wall = std::sqrt(1.0 + lean * lean) *
                      (s.perimeter * (deep - band) - lean * s.k * (deep * deep - band * band));
  const double volume = s.area * (deep - water) -
                        lean * s.perimeter * (deep * deep - water * water) / 2.0 +
                        s.k * lean * lean * (cube(deep) - cube(water)) / 3.0;
  INFO(t.floor_area.si() << ' ' << floor << ", " << t.wall_area.si() << ' ' << wall << ", "
                         << t.water_volume.si() << ' ' << volume);
  CHECK(near(t.floor_area.si(), floor, tolerance));
  CHECK(near(t.floor_plan_at_toe.si(), floor, tolerance));
  CHECK(near(t.wall_area.si(), wall, tolerance));
  CHECK(near(t.water_volume.si(), volume, tolerance));
  CHECK(near(t.painted_area.si(), floor + wall, tolerance));
}

}  // namespace

TEST_CASE("leaning walls, shapes with right corners and round ends") {
  check_lean(shell::Rectangle{m(9), m(4)}, {36, 26, 4});
  check_lean(shell::Circle{m(5)}, {pi * 6.25, pi * 5, pi});
  check_lean(shell::Stadium{m(10), m(4)}, {24 + 4 * pi, 12 + 4 * pi, pi});
  check_lean(shell::RoundedRectangle{m(9), m(4), m(1)}, {32 + pi, 18 + 2 * pi, pi});
  const double r = 0.5;  // smaller would vanish under the lean of 0.18 m
  check_lean(shell::RoundedRectangle{m(9), m(4), m(r)},
             {36 - (4 - pi) * r * r, 26 - (8 - 2 * pi) * r, pi});
}

TEST_CASE("leaning walls, a reentrant corner leans like a cone") {
  check_lean(shell::LShape{m(11), m(6.5), m(4), m(2.5)}, {61.5, 35, 5 - pi / 4});
}

TEST_CASE("leaning walls, slanting corners") {
  // A right triangle of 6, 8 and 10: corners turn by 90 degrees and by pi minus two angles.
  const double a = std::atan2(6.0, 8.0);
  const double b = pi / 2 - a;
  check_lean(shell::Path{{point(0, 0), point(8, 0), point(0, 6)}},
             {24, 24, 1 + std::tan((pi - a) / 2) + std::tan((pi - b) / 2)});
}

TEST_CASE("leaning walls, arcs bending both ways") {
  // A box 6 x 4 with a shoulder 2 m higher over its left half, reached by two quarter circles of
  // radius 1: their turns cancel and so do their segments.
  const double q = std::tan(pi / 8);
  check_lean(shell::Path{{point(0, 0),
                          point(6, 0),
                          point(6, 4),
                          point(5, 4, -q),
                          point(4, 5, q),
                          point(3, 6),
                          point(0, 6)}},
             {32, 20 + pi, 4});
}

TEST_CASE("leaning walls, an ellipse") {
  auto p = pool(shell::Ellipse{m(10), m(6)}, flat(1.0));
  const auto upright = taken(p);
  check_lean(shell::Ellipse{m(10), m(6)}, {pi * 15, upright.perimeter.si(), pi});
}

TEST_CASE("leaning walls, a cone cut by a sloping floor") {
  // Round pool of radius 3 over depth 1 + 0.1 (x - 3), lean 0.2: the toe is the ellipse
  // r = (3 - 0.2 a) / (1 + 0.02 cos f) about the centre, with a = 1.0 there.
  auto p = pool(shell::Circle{m(6)}, breaks({{0, 0.7}, {6, 1.3}}));
  p.wall_lean = 0.2;
  const auto t = taken(p);
  const double e = 0.02;
  const double semilatus = 3.0 - 0.2;
  const double toe = pi * semilatus * semilatus / std::pow(1.0 - e * e, 1.5);
  CHECK_NEAR(t.floor_plan_at_toe.si(), toe);
  CHECK_NEAR(t.floor_area.si(), toe * std::sqrt(1.01));
}

TEST_CASE("leaning walls that hardly lean are upright walls") {
  for (const double lean : {2e-6, 1e-9}) {
    auto p = rectangle(11, 5, breaks({{3, 1.1}, {8, 2.1}}));
    p.rim_to_paint = m(0.2);
    const auto upright = taken(p);
    p.wall_lean = lean;
    const auto t = taken(p);
    CHECK(near(t.wall_area.si(), upright.wall_area.si(), 10 * lean + 1e-9));
    CHECK(near(t.floor_area.si(), upright.floor_area.si(), 10 * lean + 1e-9));
    CHECK(near(t.water_volume.si(), upright.water_volume.si(), 10 * lean + 1e-9));
  }
}

TEST_CASE("leaning walls against a grid of points") {
  // depth = min(floor, distance to the rim / lean), straight from the definition.
  auto p = pool(
      shell::Path{{point(0, 0), point(9, -1), point(10, 4), point(6, 4), point(5, 7), point(0, 6)}},
      breaks({{2, 1.2}, {7, 2.2}}));
  p.wall_lean = 0.3;
  const auto t = taken(p);
  const std::vector<std::pair<double, double>> v{{0, 0}, {9, -1}, {10, 4}, {6, 4}, {5, 7}, {0, 6}};
  const auto rim = [&](double x, double y) {
    double least = 1e300;
    for (std::size_t i = 0; i < v.size(); ++i) {
      const auto [ax, ay] = v[i];
      const auto [bx, by] = v[(i + 1) % v.size()];
      const double l2 = (bx - ax) * (bx - ax) + (by - ay) * (by - ay);
      const double u = std::clamp(((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / l2, 0.0, 1.0);
      least = std::min(least, std::hypot(x - ax - u * (bx - ax), y - ay - u * (by - ay)));
    }
    return least;
  };
  const auto inside = [&](double x, double y) {
    bool in = false;
    for (std::size_t i = 0; i < v.size(); ++i) {
      const auto [ax, ay] = v[i];
      const auto [bx, by] = v[(i + 1) % v.size()];
      if ((ay <= y) != (by <= y) && x < ax + (y - ay) / (by - ay) * (bx - ax)) in = !in;
    }
    return in;
  };
  double volume = 0.0;
  double toe = 0.0;
  constexpr double h = 0.02;
  for (double y = -1 + h / 2; y < 7; y += h) {
    for (double x = h / 2; x < 10; x += h) {
      if (!inside(x, y)) continue;
      const double floor = x < 2 ? 1.2 : x > 7 ? 2.2 : 1.2 + 0.2 * (x - 2);
      const double wall = rim(x, y) / 0.3;
      volume += std::min(floor, wall) * h * h;
      if (floor < wall) toe += h * h;
    }
  }
  CHECK(t.water_volume.si() == Approx(volume).epsilon(5e-4));
  CHECK(t.floor_plan_at_toe.si() == Approx(toe).epsilon(1e-3));
}
