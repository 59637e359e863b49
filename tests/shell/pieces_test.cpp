// Single pieces of boundary, held against the formulas of plane geometry.
#include <numbers>

#include "make.hpp"
#include "shell/loop.hpp"
#include "shell/rim_ball.hpp"

using namespace make;
using namespace basinwright::shell::geometry;

namespace {

Piece straight(Vec from, Vec to) {
  Piece piece;
  piece.from = from;
  piece.to = to;
  return piece;
}

Piece round(Vec from, Vec to, double bulge) {
  Piece piece = straight(from, to);
  piece.bulge = bulge;
  return piece;
}

Piece elliptic(const EllipseFrame& frame, double t0, double t1) {
  Piece piece = straight(frame.at(t0), frame.at(t1));
  piece.ellipse = EllipseArc{frame, t0, t1};
  return piece;
}

}  // namespace

// Inside is (x/a)2 + (y/b)2 < 1, the equation of the ellipse.
TEST_CASE("a point is in an ellipse by its equation") {
  constexpr double quarter = std::numbers::pi / 2.0;
  const EllipseFrame frame{{1.0, 2.0}, {0.6, 0.8}, 4.0, 2.0};
  Loop loop;
  for (int i = 0; i < 4; ++i) loop.push_back(elliptic(frame, i * quarter, (i + 1) * quarter));
  int inside = 0;
  for (int i = -12; i <= 12; ++i) {
    for (int j = -12; j <= 12; ++j) {
      const double x = 0.1003 * i;
      const double y = 0.1007 * j;
      const Vec p = frame.centre + 4.0 * x * frame.axis + 2.0 * y * Vec{-0.8, 0.6};
      INFO(x << ' ' << y);
      CHECK(contains(loop, p) == (x * x + y * y < 1.0));
      inside += contains(loop, p) ? 1 : 0;
    }
  }
  CHECK(inside > 250);
}

TEST_CASE("what lies beyond the end of a piece is nearest to the end") {
  const Piece line = straight({0.0, 0.0}, {4.0, 0.0});
  CHECK_NEAR(line.distance({4.5, 0.0}), 0.5);
  CHECK(line.nearest({4.5, 0.0}) == 1.0);
  CHECK_NEAR(line.distance({7.0, 4.0}), 5.0);
  CHECK_NEAR(line.distance({-3.0, 4.0}), 5.0);
  CHECK_NEAR(line.distance({2.0, 1.5}), 1.5);
  // A quarter of an ellipse ends on its axes.
  const Piece arc = elliptic({{0.0, 0.0}, {1.0, 0.0}, 4.0, 2.0}, 0.0, std::numbers::pi / 2.0);
  CHECK_NEAR(arc.distance({4.0, -1.0}), 1.0);
  CHECK_NEAR(arc.distance({-1.0, 2.0}), 1.0);
}

// By Pythagoras. A D: the half circle of 3 m over its diameter. A circle of radius r that touches
// the diameter 1 m off the middle touches the arc as well when 1 + r2 = (3 - r)2, so r = 4/3; in
// the middle r = 1.5. Where the arc bends inwards (radius 3, centre 5 m above the wall, 1 m aside):
// 1 + (5 - r)2 = (3 + r)2.
TEST_CASE("the largest circle beside a wall touches the arc opposite") {
  const Loop d{straight({-3.0, 0.0}, {3.0, 0.0}), round({3.0, 0.0}, {-3.0, 0.0}, 1.0)};
  const auto ball = [](const Loop& loop, Vec from) {
    return ball_at(loop, RimRay{from, {0.0, 1.0}, 1.0, 0.0, 0});
  };
  CHECK_NEAR(ball(d, {1.0, 0.0}).radius, 4.0 / 3.0);
  CHECK_NEAR(ball(d, {-1.0, 0.0}).radius, 4.0 / 3.0);
  CHECK_NEAR(ball(d, {0.0, 0.0}).radius, 1.5);
  CHECK(ball(d, {1.0, 0.0}).held_by == 1);
  const Loop bay{straight({-3.0, 0.0}, {3.0, 0.0}),
                 straight({3.0, 0.0}, {3.0, 5.0}),
                 round({3.0, 5.0}, {-3.0, 5.0}, -1.0),
                 straight({-3.0, 5.0}, {-3.0, 0.0})};
  CHECK_NEAR(ball(bay, {0.0, 0.0}).radius, 1.0);
  CHECK_NEAR(ball(bay, {1.0, 0.0}).radius, 17.0 / 16.0);
}

// By the law of cosines: an inner arc that only just touches both ends of a kidney has its centre
// close below their line. The corners lie on the lines from that centre to the centres of the ends.
TEST_CASE("the waist of a kidney with the least inner arc by the law of cosines") {
  constexpr double r1 = 2.0;
  constexpr double r2 = 1.5;
  constexpr double centres = 6.0;
  constexpr double inner = 1.26;  // 1.25 would be straight between them
  const auto made =
      shell::outline_path({shell::Kidney{m(r1), m(r2), m(centres), m(8), m(inner)}, {}});
  REQUIRE(std::holds_alternative<shell::OutlinePath>(made));
  const auto& path = std::get<shell::VertexPath>(std::get<shell::OutlinePath>(made));
  const double side = r1 + inner;
  const double cosine =
      (side * side + centres * centres - (r2 + inner) * (r2 + inner)) / (2.0 * side * centres);
  const double x = r1 + r1 * cosine;
  const double y = -r1 * std::sqrt(1.0 - cosine * cosine);
  const bool found = std::ranges::any_of(
      path, [&](const shell::PathPoint& p) { return near(p.x.si(), x) && near(p.y.si(), y); });
  CHECK(found);
}
