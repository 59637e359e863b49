// What must hold for any pool: scale, mirror, turn, move, reorder, split, and what steps can do.
#include <cstdint>

#include "make.hpp"
#include "rows.hpp"

using namespace make;

namespace {

/// A small generator of its own, so that every machine draws the same pools.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  double operator()(double low, double high) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + (high - low) * static_cast<double>(state_ >> 11) / 9007199254740992.0;
  }

 private:
  std::uint64_t state_;
};

/// A star-shaped outline of gentle bends over a floor that falls along a slanting axis.
shell::Pool drawn(std::uint64_t seed) {
  Draw draw(seed);
  shell::Path path;
  const int corners = 5 + static_cast<int>(draw(0, 4));
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * 3.14159265358979 * (i + draw(-0.2, 0.2)) / corners;
    const double radius = draw(3.0, 5.0);
    path.points.push_back(
        point(5 + 1.5 * radius * std::cos(angle), 4 + radius * std::sin(angle), draw(-0.15, 0.3)));
  }
  shell::BreaksFloor floor;
  double s = draw(-4.0, -1.0);
  double depth = draw(0.9, 1.2);
  for (int i = 0; i < 3; ++i) {
    floor.points.push_back({m(s), m(depth)});
    s += draw(1.0, 4.0);
    depth += draw(0.0, 0.7);
  }
  floor.axis_deg = draw(-90.0, 90.0);
  floor.origin_x = m(5);
  floor.origin_y = m(4);
  auto made = pool(path, floor);
  made.rim_to_paint = m(0.15);
  made.rim_to_water = m(0.1);
  made.cove_radius = m(0.1);
  const std::vector<shell::PathPoint> low{
      point(4, 3), point(6.5, 3.2, 0.2), point(6, 5), point(4, 4.8, -0.1)};
  const std::vector<shell::PathPoint> high{point(4.7, 3.9, 1.0), point(5.5, 3.9, 1.0)};
  made.features = {shell::Block{low, m(0.8)}, shell::Block{high, m(0.4)}};
  return made;
}

shell::Path& random_path(shell::Pool& p) {
  return std::get<shell::Path>(p.outline.shape);
}
shell::BreaksFloor& floor_of(shell::Pool& p) {
  return std::get<shell::BreaksFloor>(p.floor);
}

template <class Move>
void move_points(shell::Pool& p, Move move) {
  for (auto& q : random_path(p).points) move(q);
  for (auto& feature : p.features) {
    for (auto& q : std::get<shell::Block>(feature).path) move(q);
  }
}

void check_same(const shell::TakeOff& a, const shell::TakeOff& b, double k, double tolerance) {
  const auto close = [&](double got, double expected) {
    INFO(got << " expected " << expected);
    CHECK(near(got, expected, tolerance));
  };
  close(b.plan_area.si(), k * k * a.plan_area.si());
  close(b.perimeter.si(), k * a.perimeter.si());
  close(b.floor_area.si(), k * k * a.floor_area.si());
  close(b.wall_area.si(), k * k * a.wall_area.si());
  close(b.tread_area.si(), k * k * a.tread_area.si());
  close(b.riser_area.si(), k * k * a.riser_area.si());
  close(b.cove_area_change.si(), k * k * a.cove_area_change.si());
  close(b.cove_true_angle_area_change.si(), k * k * a.cove_true_angle_area_change.si());
  close(b.painted_area.si(), k * k * a.painted_area.si());
  close(b.water_volume.si(), k * k * k * a.water_volume.si());
  close(b.mean_depth.si(), k * a.mean_depth.si());
  close(b.shallowest.si(), k * a.shallowest.si());
  close(b.deepest.si(), k * a.deepest.si());
}

constexpr std::uint64_t pools = 12;

}  // namespace

TEST_CASE("property, lengths scale by k, areas by k2 and volumes by k3") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    for (const double k : {0.5, 3.2808398950131235}) {
      auto b = a;
      move_points(b, [&](auto& q) { q.x *= k, q.y *= k; });
      auto& floor = floor_of(b);
      for (auto& q : floor.points) q.distance *= k, q.depth *= k;
      floor.origin_x *= k;
      floor.origin_y *= k;
      for (auto& f : b.features) std::get<shell::Block>(f).depth *= k;
      b.rim_to_paint *= k;
      b.rim_to_water *= k;
      b.cove_radius *= k;
      check_same(taken(a), taken(b), k, 1e-12);
    }
  }
}

TEST_CASE("property, a mirrored pool has the same areas") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    auto b = a;
    move_points(b, [](auto& q) { q.x = -q.x, q.bulge = -q.bulge; });
    floor_of(b).origin_x = -floor_of(b).origin_x;
    floor_of(b).axis_deg = 180.0 - floor_of(b).axis_deg;
    check_same(taken(a), taken(b), 1.0, 1e-12);
  }
}

TEST_CASE("property, a turned pool has the same areas") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    auto b = a;
    const double angle = 37.0;
    b.outline.place = shell::Place{angle, m(2), m(-3)};
    const double c = std::cos(angle * 3.14159265358979323846 / 180.0);
    const double s = std::sin(angle * 3.14159265358979323846 / 180.0);
    const auto turn = [&](Length& x, Length& y) {
      const Length u = c * x - s * y + m(2);
      y = s * x + c * y - m(3);
      x = u;
    };
    for (auto& f : b.features) {
      for (auto& q : std::get<shell::Block>(f).path) turn(q.x, q.y);
    }
    turn(floor_of(b).origin_x, floor_of(b).origin_y);
    floor_of(b).axis_deg += angle;
    check_same(taken(a), taken(b), 1.0, 1e-12);
  }
}

TEST_CASE("property, a pool a thousand kilometres away has the same areas") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    auto b = a;
    move_points(b, [](auto& q) { q.x += m(1e6), q.y -= m(1e6); });
    floor_of(b).origin_x += m(1e6);
    floor_of(b).origin_y -= m(1e6);
    check_same(taken(a), taken(b), 1.0, 2e-9);  // a double holds 1e6 m to 1.2e-10 m
  }
}

TEST_CASE("property, the first vertex and the direction do not matter") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    auto b = a;
    auto& points = random_path(b).points;
    std::rotate(points.begin(), points.begin() + 2, points.end());
    check_same(taken(a), taken(b), 1.0, 1e-12);
    auto c = a;
    auto& back = random_path(c).points;
    const auto given = back;
    for (std::size_t i = 0; i < back.size(); ++i) {
      const std::size_t j = given.size() - 1 - i;
      back[i] = given[j];
      back[i].bulge = -given[(j + given.size() - 1) % given.size()].bulge;
    }
    check_same(taken(a), taken(c), 1.0, 1e-12);
  }
}

TEST_CASE("property, splitting a floor plane anywhere changes nothing") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto a = drawn(seed);
    for (const double share : {0.1, 0.5, 0.77}) {
      auto b = a;
      auto& points = floor_of(b).points;
      const auto p = points[0];
      const auto q = points[1];
      points.insert(
          points.begin() + 1,
          {p.distance + share * (q.distance - p.distance), p.depth + share * (q.depth - p.depth)});
      check_same(taken(a), taken(b), 1.0, 1e-12);
    }
  }
}

TEST_CASE("property, splitting a triangle of spot depths anywhere changes nothing") {
  const auto row = rows::pool(rows::row("tin_rounded_rect").at("pool"));
  const auto whole = taken(row);
  Draw draw(7);
  for (std::size_t t = 0; t < std::get<shell::SpotDepthsFloor>(row.floor).triangles.size(); ++t) {
    auto split = row;
    auto& floor = std::get<shell::SpotDepthsFloor>(split.floor);
    const auto corners = floor.triangles[t];
    const auto a = corners[0];
    const auto b = corners[1];
    const auto c = corners[2];
    const double u = draw(0.1, 0.4);
    const double v = draw(0.1, 0.4);
    const auto mix = [&](Length shell::SpotDepth::*of) {
      const auto at = [&](int i) { return floor.points[static_cast<std::size_t>(i)].*of; };
      return (1.0 - u - v) * at(a) + u * at(b) + v * at(c);
    };
    const shell::SpotDepth middle{
        mix(&shell::SpotDepth::x), mix(&shell::SpotDepth::y), mix(&shell::SpotDepth::depth)};
    const int n = static_cast<int>(floor.points.size());
    floor.points.push_back(middle);
    floor.triangles[t] = {a, b, n};
    floor.triangles.push_back({b, c, n});
    floor.triangles.push_back({c, a, n});
    check_same(whole, taken(split), 1.0, 1e-12);
  }
}

TEST_CASE("property, parts between any cuts add up to the whole") {
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto p = drawn(seed);
    const auto t = taken(p);
    double floor = 0.0, walls = 0.0, steps = 0.0, cove = 0.0, painted = 0.0;
    for (const auto& part : shell::parts(p, ms({-1.3, 2.2, 0.4}))) {
      floor += part.floor.si();
      walls += part.walls.si();
      steps += part.steps.si();
      cove += part.cove_change.si();
      painted += part.painted.si();
      CHECK(part.from <= part.to);
      CHECK(part.painted.si() > -1e-9);
    }
    CHECK_NEAR(floor, t.floor_area.si());
    CHECK_NEAR(walls, t.wall_area.si());
    CHECK_NEAR(steps, (t.tread_area + t.riser_area).si());
    CHECK_NEAR(cove, t.cove_area_change.si());
    CHECK_NEAR(painted, t.painted_area.si());
  }
}

TEST_CASE("property, floor and treads together cover at least the plan") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    const auto p = rows::pool(row.at("pool"));
    if (p.wall_lean > 0.0) continue;
    INFO(row.at("name"));
    const auto t = taken(p);
    CHECK((t.floor_area + t.tread_area).si() >= t.plan_area.si() - 1e-9);
    CHECK((t.painted_area - t.cove_area_change).si() >= t.plan_area.si());
  }
  for (std::uint64_t seed = 1; seed <= pools; ++seed) {
    const auto t = taken(drawn(seed));
    CHECK((t.floor_area + t.tread_area).si() >= t.plan_area.si() - 1e-9);
  }
}

TEST_CASE("property, a footprint given as steps or as a path measures the same") {
  auto steps = rectangle(8, 4, breaks({{0, 1.2}, {8, 1.8}}));
  auto blocks = steps;
  steps.features = {shell::StraightSteps{3, m(1), m(2), ms({0.3, 0.4}), ms({0.3, 0.7})}};
  const auto strip = [](double reach) {
    return std::vector<shell::PathPoint>{
        point(0, 1), point(reach, 1), point(reach, 3), point(0, 3)};
  };
  // Outer one first and turned clockwise: neither may matter.
  auto outer = strip(0.7);
  std::reverse(outer.begin(), outer.end());
  blocks.features = {shell::Block{outer, m(0.7)}, shell::Block{strip(0.3), m(0.3)}};
  check_same(taken(steps), taken(blocks), 1.0, 1e-12);
}
