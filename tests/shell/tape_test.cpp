// Tapes that do not agree: each is told with the size of its misfit. All figures by hand, from the
// triangle inequality and Pythagoras.
#include "make.hpp"

using namespace make;

namespace {

std::string message_of(const shell::Pool& p, const std::string& code) {
  for (const auto& f : faults(p)) {
    if (f.code == code) return f.message;
  }
  return "";
}

bool says(const std::string& message, const std::string& part) {
  INFO(message);
  return message.find(part) != std::string::npos;
}

/// 8 x 4 m by two tapes from the ends of its long side.
shell::Pool taped() {
  const double diagonal = std::sqrt(80.0);
  return pool(shell::TwoTape{m(8),
                             {{m(0.001), m(8), 1, 0},
                              {m(8), m(0.001), 1, 0},
                              {m(diagonal), m(4), 1, 0},
                              {m(4), m(diagonal), 1, 0}}},
              flat(1.5));
}

}  // namespace

TEST_CASE("two tapes that cannot meet say by how much") {
  auto p = taped();
  auto& points = std::get<shell::TwoTape>(p.outline.shape).points;
  points[2] = {m(3), m(4.75), 1, 0};  // 8 - 3 - 4.75
  CHECK(says(message_of(p, "circles-do-not-meet"), "miss by 250 mm"));
  points[2] = {m(12.4), m(4.1), 1, 0};  // 12.4 - 4.1 - 8
  CHECK(says(message_of(p, "circles-do-not-meet"), "miss by 300 mm"));
}

TEST_CASE("arcs of a kidney that do not touch say what would do") {
  auto p = pool(shell::Kidney{m(2), m(2.4), m(4.5), m(4), m(3)}, flat(1.4));
  // Outer circle round both ends: 2 R > 2 + 2.4 + 4.5.
  CHECK(says(message_of(p, "circles-do-not-meet"), "over 4.450 m"));
  p.outline.shape = shell::Kidney{m(2), m(2.4), m(0.3), m(4), m(3)};
  CHECK(says(message_of(p, "circles-do-not-meet"), "over 0.400 m"));
  p.outline.shape = shell::Kidney{m(1), m(1), m(6), m(9), m(1.5)};
  CHECK(says(message_of(p, "circles-do-not-meet"), "over 2.000 m"));
}

TEST_CASE("a diagonal that disagrees with the sides says by how much") {
  auto p = taped();
  p.checks = {{0, 2, m(std::sqrt(80.0) + 0.052)}};
  CHECK(says(message_of(p, "tape-misfit"), "52 mm longer"));
  p.checks = {{2, 3, m(7.955)}};
  CHECK(says(message_of(p, "tape-misfit"), "45 mm shorter"));
  p.checks = {{0, 1, m(8.01)}, {3, 0, m(4)}, {1, 3, m(std::sqrt(80.0))}};
  CHECK(message_of(p, "tape-misfit").empty());
}

TEST_CASE("a round that does not close says by how much") {
  // Back at the first point with 30 and 40 mm: 50 mm.
  const std::vector<shell::PathPoint> round{
      point(0, 0), point(8, 0), point(8, 4), point(0, 4), point(-0.03, 0.04)};
  auto p = pool(shell::Path{round}, flat(1.5));
  CHECK(has(faults(p), "closing-error", "/outline/points/4"));
  CHECK(says(message_of(p, "closing-error"), "50 mm"));
  // Clockwise the same walk tells the same point.
  auto back = round;
  for (auto& q : back) q.x = -q.x;
  p.outline.shape = shell::Path{back};
  CHECK(has(faults(p), "closing-error", "/outline/points/4"));
  // A short wall that is meant is 100 mm at least, or bent.
  for (const auto& last : {point(-0.06, 0.08), point(-0.03, 0.04, 0.3)}) {
    auto meant = round;
    meant.back() = last;
    p.outline.shape = shell::Path{meant};
    CHECK(message_of(p, "closing-error").empty());
  }
  auto tapes = taped();
  auto& points = std::get<shell::TwoTape>(tapes.outline.shape).points;
  points.push_back({m(0.05), m(8), 1, 0});
  CHECK(has(faults(tapes), "closing-error", "/outline/points/4"));
}
