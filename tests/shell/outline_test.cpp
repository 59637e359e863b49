// Outlines against plane geometry.
#include <numbers>

#include "make.hpp"

using namespace make;
using std::numbers::pi;

namespace {

shell::VertexPath path_of(const shell::Outline& outline) {
  const auto made = shell::outline_path(outline);
  REQUIRE(std::holds_alternative<shell::OutlinePath>(made));
  return std::get<shell::VertexPath>(std::get<shell::OutlinePath>(made));
}

shell::TakeOff plan(shell::OutlineShape shape) {
  return taken(pool(std::move(shape), flat(1.0)));
}

}  // namespace

// Segment of a circle: R2 (angle - sin angle) / 2 (any table of plane figures).
TEST_CASE("a bulge is a circular segment of four times its arc tangent") {
  for (const double b : {1e-9, 1e-6, 1e-3, 0.05, 0.0751, 0.3, 0.41421356237309503, 1.0, 2.0, 5.0}) {
    const double chord = 4.0;
    const double angle = 4.0 * std::atan(b);
    const double radius = chord / (2.0 * std::sin(angle / 2.0));
    const double segment = b < 1e-5 ? chord * chord * 2.0 * b / 3.0  // thin: two thirds of the box
                                          * 0.5
                                    : 0.5 * radius * radius * (angle - std::sin(angle));
    const double arc = radius * angle;
    INFO("bulge " << b);
    const auto out =
        plan(shell::Path{{point(0, 0), point(chord, 0, b), point(chord, chord), point(0, chord)}});
    const auto up = plan(shell::Path{{point(0, 0), point(4, 0), point(4, 4, b), point(0, 4)}});
    CHECK_NEAR(out.plan_area.si(), 16.0 + segment);
    CHECK_NEAR(up.plan_area.si(), 16.0 + segment);
    CHECK_NEAR(out.perimeter.si(), 12.0 + arc);
  }
}

TEST_CASE("the first moment of a half disc puts the mean depth at its centroid") {
  // Centroid of a half disc 4 r / (3 pi) from its diameter.
  const auto t =
      taken(pool(shell::Path{{point(0, -2), point(0, 2, 1)}}, breaks({{-2, 1}, {0, 2}})));
  CHECK_NEAR(t.mean_depth.si(), 2.0 - 0.5 * 4.0 * 2.0 / (3.0 * pi));
}

TEST_CASE("a circle is a circle however it is given") {
  const double area = pi * 9.0;
  CHECK_NEAR(plan(shell::Circle{m(6)}).plan_area.si(), area);
  CHECK_NEAR(plan(shell::Ellipse{m(6), m(6)}).plan_area.si(), area);
  CHECK_NEAR(plan(shell::Ellipse{m(6), m(6)}).perimeter.si(), 6.0 * pi);
  CHECK_NEAR(plan(shell::Stadium{m(6), m(6)}).plan_area.si(), area);
  CHECK_NEAR(plan(shell::RoundedRectangle{m(6), m(6), m(3)}).plan_area.si(), area);
  CHECK_NEAR(plan(shell::Path{{point(0, 0, 3), point(0, -6.0 * 0.6)}}).plan_area.si() > 0, true);
}

// Complete integral of the second kind E(m = 3/4) = 1.2110560276 (Abramowitz and Stegun, table
// 17.1, from memory): perimeter of an ellipse twice as long as wide, 4 a E.
TEST_CASE("the perimeter of an ellipse follows the complete elliptic integral") {
  CHECK(plan(shell::Ellipse{m(10), m(5)}).perimeter.si() ==
        Approx(20.0 * 1.2110560276).epsilon(1e-10));
  CHECK_NEAR(plan(shell::Ellipse{m(5), m(10)}).perimeter.si(),
             plan(shell::Ellipse{m(10), m(5)}).perimeter.si());
}

TEST_CASE("a rounded corner saves (4 - pi) r2 of plan and (8 - 2 pi) r of rim") {
  const auto t = plan(shell::RoundedRectangle{m(9), m(4), m(0.8)});
  CHECK_NEAR(t.plan_area.si(), 36.0 - (4.0 - pi) * 0.64);
  CHECK_NEAR(t.perimeter.si(), 26.0 - (8.0 - 2.0 * pi) * 0.8);
}

TEST_CASE("a clockwise path is turned round and keeps its first point") {
  const auto p = path_of(
      {shell::Path{{point(0, 0, -0.2), point(0, 4, 0.1), point(6, 4), point(6, 0)}}, std::nullopt});
  REQUIRE(p.size() == 4);
  CHECK(p[0].x == m(0));
  CHECK(p[0].y == m(0));
  CHECK(p[1].x == m(6));
  CHECK(p[1].y == m(0));
  CHECK(p[3].y == m(4));
  CHECK(p[3].bulge == 0.2);   // the wall x = 0, walked the other way
  CHECK(p[2].bulge == -0.1);  // the wall y = 4
}

TEST_CASE("two tapes find the corners of a 3 4 5 triangle and a third tape agrees") {
  shell::TwoTape tapes{m(4), {{m(3), m(5), 1, 0}, {m(3), m(5), -1, 0}, {m(5), m(3), 1, 0}}};
  const auto p = path_of({tapes, std::nullopt});
  CHECK_NEAR(p[0].x.si(), 0.0);
  CHECK_NEAR(p[0].y.si(), 3.0);
  CHECK_NEAR(p[1].y.si(), -3.0);
  CHECK_NEAR(p[2].x.si(), 4.0);
  CHECK_NEAR(p[2].y.si(), 3.0);
  auto made = pool(tapes, flat(1.2));
  made.checks = {{0, 2, m(4)}, {0, 1, m(6)}};
  CHECK(!has(faults(made), "tape-misfit", "/check/0/2"));
  CHECK(!has(faults(made), "tape-misfit", "/check/1/2"));
}

TEST_CASE("offsets by arcs through points of one circle give that circle") {
  shell::Offsets offsets;
  offsets.curve = shell::Curve::arcs;
  for (int i = 0; i <= 4; ++i) {
    const double angle = pi * (1.0 - i / 4.0);
    offsets.stations.push_back(
        {m(3 + 3 * std::cos(angle)), m(3 - 3 * std::sin(angle)), m(3 + 3 * std::sin(angle))});
  }
  CHECK_NEAR(plan(offsets).plan_area.si(), 9.0 * pi);
  CHECK_NEAR(plan(offsets).perimeter.si(), 6.0 * pi);
}

TEST_CASE("place turns an outline about its origin and then moves it") {
  const auto p = path_of({shell::Rectangle{m(8), m(4)}, shell::Place{90.0, m(10), m(1)}});
  CHECK(p[0].x == m(10));
  CHECK(p[0].y == m(1));
  CHECK(p[1].x == m(10));
  CHECK(p[1].y == m(9));
  CHECK(p[2].x == m(6));
  const auto made =
      shell::outline_path({shell::Ellipse{m(8), m(4)}, shell::Place{90.0, m(1), m(0)}});
  const auto& e = std::get<shell::EllipsePath>(std::get<shell::OutlinePath>(made));
  CHECK_NEAR(e.centre_x.si(), -1.0);
  CHECK_NEAR(e.centre_y.si(), 4.0);
  CHECK(e.rotation_deg == 90.0);
}

TEST_CASE("place moves an outline under a floor that stays") {
  auto p = rectangle(8, 4, breaks({{0, 1.0}, {8, 2.0}}));
  p.outline.place = shell::Place{0.0, m(2), m(0)};
  // Now from x = 2 to 10: the last 2 m are flat at 2.0.
  CHECK_NEAR(taken(p).mean_depth.si(), (6.0 * (1.25 + 2.0) / 2.0 + 2.0 * 2.0) / 8.0);
}

TEST_CASE("an outline that cannot be made says why") {
  const auto made = shell::outline_path({shell::Rectangle{m(8), m(-4)}, std::nullopt});
  REQUIRE(std::holds_alternative<std::vector<shell::Fault>>(made));
  CHECK(has(std::get<std::vector<shell::Fault>>(made), "not-positive", "/outline/width"));
}
