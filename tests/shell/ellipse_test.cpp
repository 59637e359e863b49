// The closed forms on an ellipse against integrals by Simpson's rule over the curve itself, and
// Legendre's E against Abramowitz and Stegun, table 17.1 (E(m) at m = 0.1, 0.5, 0.9) and its limits
// pi / 2 and 1.
#include "shell/ellipse.hpp"

#include <cmath>
#include <functional>
#include <numbers>

#include "support/catch.hpp"

using namespace basinwright::shell::geometry;

namespace {

double simpson(const std::function<double(double)>& f, double from, double to) {
  constexpr int halves = 2000;
  const double step = (to - from) / halves;
  double sum = f(from) + f(to);
  for (int i = 1; i < halves; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * f(from + i * step);
  return sum * step / 3.0;
}

// Away from the origin, turned, longer one way and then the other, and round.
const EllipseFrame frames[] = {{{3.0, -2.0}, {0.6, 0.8}, 5.0, 2.0},
                               {{-1.5, 4.0}, {0.8, -0.6}, 1.25, 3.5},
                               {{2.0, 1.0}, {1.0, 0.0}, 2.5, 2.5}};
constexpr double spans[][2] = {{0.3, 1.1}, {-2.0, 0.7}, {1.0, 6.9}};

double norm_of(Vec v) {
  return std::hypot(v.x, v.y);
}

}  // namespace

TEST_CASE("the E of Legendre is that of the tables and of its integral") {
  constexpr double quarter = std::numbers::pi / 2.0;
  CHECK(elliptic_e(quarter, 0.0) == Approx(quarter).epsilon(1e-15));
  CHECK(elliptic_e(quarter, 0.1) == Approx(1.530757637).epsilon(1e-9));
  CHECK(elliptic_e(quarter, 0.5) == Approx(1.350643881).epsilon(1e-9));
  CHECK(elliptic_e(quarter, 0.9) == Approx(1.104774733).epsilon(1e-9));
  for (const double m : {0.05, 0.4, 0.75, 0.95}) {
    for (const double phi : {-4.0, -0.3, 0.4, 1.2, 5.5}) {
      INFO(m << " " << phi);
      const auto f = [m](double t) { return std::sqrt(1.0 - m * std::sin(t) * std::sin(t)); };
      CHECK(elliptic_e(phi, m) == Approx(simpson(f, 0.0, phi)).epsilon(1e-12));
    }
  }
}

TEST_CASE("lengths and moments of elliptic arcs are those of their integrals") {
  for (const EllipseFrame& e : frames) {
    for (const auto& [from, to] : spans) {
      INFO(e.a << " " << e.b << " " << from << " " << to);
      const auto over = [&, from = from, to = to](const std::function<double(Vec, Vec)>& f) {
        return simpson([&](double t) { return f(e.at(t), e.speed(t)); }, from, to);
      };
      const auto fan = [](Vec p, Vec v) { return p.x * v.y - p.y * v.x; };
      const Moments m = ellipse_moments(e, from, to);
      CHECK(m.area == Approx(over([&](Vec p, Vec v) { return fan(p, v) / 2.0; })).epsilon(1e-10));
      // The centroid of a thin triangle from the origin stands at two thirds.
      CHECK(m.first.x ==
            Approx(over([&](Vec p, Vec v) { return p.x * fan(p, v) / 3.0; })).epsilon(1e-10));
      CHECK(m.first.y ==
            Approx(over([&](Vec p, Vec v) { return p.y * fan(p, v) / 3.0; })).epsilon(1e-10));
      CHECK(ellipse_length(e, from, to) ==
            Approx(over([](Vec, Vec v) { return norm_of(v); })).epsilon(1e-12));
      const Vec line = ellipse_line_moment(e, from, to);
      CHECK(line.x == Approx(over([](Vec p, Vec v) { return p.x * norm_of(v); })).epsilon(1e-10));
      CHECK(line.y == Approx(over([](Vec p, Vec v) { return p.y * norm_of(v); })).epsilon(1e-10));
    }
  }
}

TEST_CASE("a point on an ellipse has its place in the frame") {
  for (const EllipseFrame& e : frames) {
    const Vec place = e.local(e.at(0.9));
    CHECK(place.x == Approx(e.a * std::cos(0.9)).epsilon(1e-14));
    CHECK(place.y == Approx(e.b * std::sin(0.9)).epsilon(1e-14));
    // The least and the greatest radius of curvature: b2 / a and a2 / b.
    CHECK(1.0 / e.curvature(0.0) == Approx(e.b * e.b / e.a));
    CHECK(1.0 / e.curvature(std::numbers::pi / 2.0) == Approx(e.a * e.a / e.b));
  }
}
