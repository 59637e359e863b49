#include "floor.hpp"

#include <algorithm>

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::Plane;
using geometry::Vec;

constexpr double no_width = 1e-9;

// Depth along an axis between two measured points.
Plane ramp(Vec axis, double from, double from_depth, double to, double to_depth) {
  const double slope = (to_depth - from_depth) / (to - from);
  return {from_depth - slope * from, slope * axis};
}

bool breaks_fine(const BreaksFloor& floor, Findings& findings) {
  const std::size_t before = findings.refusals();
  const std::string where = "/floor/points";
  if (floor.points.empty()) {
    findings.refuse("too-few-points", where, "a floor by break points needs at least one");
  }
  for (std::size_t i = 0; i < floor.points.size(); ++i) {
    const std::string here = at_index(where, i);
    findings.finite(floor.points[i].distance.si(), here + "/0", "the distance");
    findings.positive(floor.points[i].depth, here + "/1", "the depth");
    if (i == 0) continue;
    const Length last = floor.points[i - 1].distance;
    const Length now = floor.points[i].distance;
    if (now < last) {
      findings.refuse("overlapping-bands",
                      here + "/0",
                      "break points go backwards along the axis",
                      "list them in the order of their distance");
    } else if (i > 1 && now == last && floor.points[i - 2].distance == now) {
      findings.refuse("overlapping-bands",
                      here + "/0",
                      "three depths at one distance",
                      "two depths at one distance are a vertical drop");
    }
  }
  return findings.refusals() == before;
}

struct Rect {
  Vec low;
  Vec high;
};

bool rectangle_fine(const std::array<Length, 4>& r, const std::string& where, Findings& findings) {
  bool fine = true;
  for (std::size_t i = 0; i < 4; ++i) {
    fine &= findings.finite(r[i].si(), at_index(where, i), "a corner of the hopper");
  }
  if (fine && (r[2] <= r[0] || r[3] <= r[1])) {
    findings.refuse("not-positive", where, "the rectangle [x0, y0, x1, y1] has no area");
    return false;
  }
  return fine;
}

Rect rectangle(const std::array<Length, 4>& r, Vec origin) {
  return {Vec{r[0].si(), r[1].si()} - origin, Vec{r[2].si(), r[3].si()} - origin};
}

bool hopper_fine(const HopperFloor& floor, Findings& findings) {
  const std::size_t before = findings.refusals();
  findings.positive(floor.base_depth, "/floor/base_depth", "the base depth");
  findings.positive(floor.depth, "/floor/depth", "the depth of the hopper");
  const bool outer = rectangle_fine(floor.outer, "/floor/outer", findings);
  const bool inner = rectangle_fine(floor.inner, "/floor/inner", findings);
  if (outer && inner) {
    const auto& o = floor.outer;
    const auto& i = floor.inner;
    if (i[0] < o[0] || i[1] < o[1] || i[2] > o[2] || i[3] > o[3]) {
      findings.refuse(
          "hopper-not-nested", "/floor/inner", "the inner rectangle reaches beyond the outer one");
    }
  }
  return findings.refusals() == before;
}

std::vector<Cell> outside_cells(const Rect& r, Plane base) {
  const HalfPlane west{{-1.0, 0.0}, -r.low.x};
  const HalfPlane east{{1.0, 0.0}, r.high.x};
  const HalfPlane south{{0.0, -1.0}, -r.low.y};
  const HalfPlane north{{0.0, 1.0}, r.high.y};
  return {{{west}, base},
          {{east}, base},
          {{west.flipped(), east.flipped(), south}, base},
          {{west.flipped(), east.flipped(), north}, base}};
}

// Depth that grows along `axis` from one line to another.
void add_face(std::vector<Cell>& cells,
              const std::vector<Vec>& polygon,
              Vec axis,
              const HopperFloor& floor) {
  const double from = dot(axis, polygon[0]);
  const double to = dot(axis, polygon[2]);
  if (to - from < no_width) return;
  cells.push_back(
      {sides_of(polygon), ramp(axis, from, floor.base_depth.si(), to, floor.depth.si())});
}

}  // namespace

std::vector<HalfPlane> sides_of(const std::vector<Vec>& polygon) {
  std::vector<HalfPlane> sides;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec a = polygon[i];
    const Vec b = polygon[(i + 1) % polygon.size()];
    if (geometry::norm(b - a) > no_width) sides.push_back(geometry::left_of(a, b));
  }
  return sides;
}

std::vector<Cell> cells_of(const ConstantFloor& floor, Vec, Findings& findings) {
  if (!findings.positive(floor.depth, "/floor/depth", "the depth")) return {};
  return {{{}, geometry::level_plane(floor.depth.si())}};
}

std::vector<Cell> cells_of(const BreaksFloor& floor, Vec origin, Findings& findings) {
  const bool axis_fine = findings.finite(floor.axis_deg, "/floor/axis_deg", "the axis angle");
  const bool x_fine = findings.finite(floor.origin_x.si(), "/floor/origin/0", "the origin");
  const bool y_fine = findings.finite(floor.origin_y.si(), "/floor/origin/1", "the origin");
  if (!breaks_fine(floor, findings) || !axis_fine || !x_fine || !y_fine) return {};
  const Vec axis = geometry::from_degrees(floor.axis_deg);
  const double shift = dot(axis, Vec{floor.origin_x.si(), floor.origin_y.si()} - origin);
  const auto& points = floor.points;
  const auto at = [&](std::size_t i) { return points[i].distance.si() + shift; };
  const auto depth = [&](std::size_t i) { return points[i].depth.si(); };
  const std::size_t last = points.size() - 1;
  std::vector<Cell> cells;
  cells.push_back({{{-1.0 * axis, -at(0)}}, geometry::level_plane(depth(0))});
  for (std::size_t i = 0; i < last; ++i) {
    if (at(i + 1) <= at(i)) continue;
    cells.push_back({{{axis, at(i)}, {-1.0 * axis, -at(i + 1)}},
                     ramp(axis, at(i), depth(i), at(i + 1), depth(i + 1))});
  }
  cells.push_back({{{axis, at(last)}}, geometry::level_plane(depth(last))});
  return cells;
}

std::vector<Cell> cells_of(const HopperFloor& floor, Vec origin, Findings& findings) {
  if (!hopper_fine(floor, findings)) return {};
  const Rect o = rectangle(floor.outer, origin);
  const Rect i = rectangle(floor.inner, origin);
  std::vector<Cell> cells = outside_cells(o, geometry::level_plane(floor.base_depth.si()));
  cells.push_back({sides_of({i.low, {i.high.x, i.low.y}, i.high, {i.low.x, i.high.y}}),
                   geometry::level_plane(floor.depth.si())});
  const Vec o_se{o.high.x, o.low.y};
  const Vec o_nw{o.low.x, o.high.y};
  const Vec i_se{i.high.x, i.low.y};
  const Vec i_nw{i.low.x, i.high.y};
  add_face(cells, {o.low, o_se, i_se, i.low}, {0.0, 1.0}, floor);
  add_face(cells, {o_se, o.high, i.high, i_se}, {-1.0, 0.0}, floor);
  add_face(cells, {o.high, o_nw, i_nw, i.high}, {0.0, -1.0}, floor);
  add_face(cells, {o_nw, o.low, i.low, i_nw}, {1.0, 0.0}, floor);
  return cells;
}

std::vector<Cell> floor_cells(const Floor& floor, Vec origin, Findings& findings) {
  return std::visit([&](const auto& kind) { return cells_of(kind, origin, findings); }, floor);
}

const Cell& cell_at(const std::vector<Cell>& cells, Vec p) {
  const Cell* best = &cells.front();
  double best_slack = -1e300;
  for (const Cell& cell : cells) {
    double slack = 1e300;
    for (const HalfPlane& side : cell.sides) slack = std::min(slack, side.at(p));
    if (slack > best_slack) {
      best = &cell;
      best_slack = slack;
    }
    if (slack >= 0.0) break;
  }
  return *best;
}

}  // namespace basinwright::shell
