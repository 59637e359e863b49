// The take-off of freeform pools against points counted on a grid.
#include <algorithm>

#include "make.hpp"
#include "sampling.hpp"

using namespace make;

namespace {

std::vector<shell::PathPoint> path(const std::vector<sampling::Bend>& bends) {
  std::vector<shell::PathPoint> points;
  for (const auto& b : bends) points.push_back(point(b.x, b.y, b.bulge));
  return points;
}

struct Both {
  shell::Pool pool;
  sampling::Pool sampled;
  void add(const std::vector<sampling::Bend>& bends, double depth, bool pit) {
    if (pit) {
      pool.features.push_back(shell::Pit{path(bends), m(depth)});
    } else {
      pool.features.push_back(shell::Block{path(bends), m(depth)});
    }
    sampled.bodies.push_back({sampling::flatten(bends, 60), depth, pit});
  }
};

double ramp(double x) {
  return x < 2.0 ? 1.1 : x > 8.0 ? 2.3 : 1.1 + 0.2 * (x - 2.0);
}

Both freeform() {
  const std::vector<sampling::Bend> outline{
      {0, 0, 0.1}, {6, -0.5, 0.3}, {10, 2, 0.5}, {7, 6, -0.3}, {3, 5, 0.6}, {0, 3, 0}};
  Both b{pool(shell::Path{path(outline)}, breaks({{2, 1.1}, {8, 2.3}})), {}};
  b.sampled.outline = sampling::flatten(outline, 150);
  b.sampled.floor = [](sampling::Point p) { return ramp(p.x); };
  return b;
}

void check_sampled(const Both& both) {
  const auto exact = taken(both.pool);
  const auto sampled = sampling::measure(both.sampled, 0.04);
  // A grid of 40 mm and walls looked at 2 mm away: about a part in a thousand.
  CHECK(exact.plan_area.si() == Approx(sampled.plan).epsilon(5e-4));
  CHECK(exact.mean_depth.si() * exact.plan_area.si() == Approx(sampled.volume).epsilon(1e-3));
  CHECK(exact.wall_area.si() == Approx(sampled.wall).epsilon(2e-3));
  CHECK(exact.riser_area.si() == Approx(sampled.risers).epsilon(4e-3).margin(1e-9));
}

}  // namespace

TEST_CASE("a freeform pool agrees with a grid of points") {
  check_sampled(freeform());
}

TEST_CASE("blocks and pits free, nested and side by side agree with a grid of points") {
  Both b = freeform();
  b.add({{4, 1, 0.2}, {7, 1, 0}, {7, 3, 0.4}, {4, 3, 0}}, 0.9, false);  // across break line slope
  b.add({{5, 1.5, 1}, {6, 1.5, 1}}, 0.5, false);                        // round, inside it
  b.add({{7, 1, 0}, {8, 1, 0}, {8, 3, 0}, {7, 3, 0}}, 0.7, false);      // shares a side with it
  b.add({{1, 1, 0}, {2.5, 1, 0}, {2.5, 2, 0}, {1, 2, 0}}, 1.6, true);   // sump across the break
  b.add({{8, 3.2, -0.3}, {9, 3.2, 0}, {9, 4.2, 0.5}}, 1.0, false);
  check_sampled(b);
}

TEST_CASE("a block against a bent wall agrees with a grid of points") {
  Both b = freeform();
  // Along all of the first wall, an arc of bulge 0.1, and back in a straight line.
  b.add({{0, 0, 0.1}, {6, -0.5, 0}, {5.5, 0.5, 0}, {0, 1, 0}}, 0.6, false);
  check_sampled(b);
  CHECK(taken(b.pool).cove_length.si() < taken(freeform().pool).cove_length.si() - 6.9);
}

TEST_CASE("a block inside a pit and a pit inside a block agree with a grid of points") {
  Both b = freeform();
  b.add({{3, 0.5, 0}, {6, 0.5, 0}, {6, 3, 0}, {3, 3, 0}}, 2.8, true);
  b.add({{4, 1, 0}, {5, 1, 0}, {5, 2, 0.5}, {4, 2, 0}}, 1.2, false);
  check_sampled(b);
}
