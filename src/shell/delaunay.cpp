#include "delaunay.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>

namespace basinwright::shell::geometry {

namespace {

using Points = std::vector<Vec>;
using Edge = std::pair<int, int>;

Vec point_at(const Points& points, int i) {
  return points[static_cast<std::size_t>(i)];
}

double orientation(const Points& p, int a, int b, int c) {
  return cross(point_at(p, b) - point_at(p, a), point_at(p, c) - point_at(p, a));
}

bool strictly_left(const Points& p, int a, int b, int c) {
  const double scale =
      norm(point_at(p, b) - point_at(p, a)) * norm(point_at(p, c) - point_at(p, a));
  return orientation(p, a, b, c) > 1e-12 * scale;
}

// > 0 when d lies inside the circle through a, b, c (counter-clockwise); 0 within rounding.
double in_circle(const Points& p, int a, int b, int c, int d) {
  const Vec u = point_at(p, a) - point_at(p, d);
  const Vec v = point_at(p, b) - point_at(p, d);
  const Vec w = point_at(p, c) - point_at(p, d);
  const double uu = dot(u, u);
  const double vv = dot(v, v);
  const double ww = dot(w, w);
  const double value = uu * cross(v, w) - vv * cross(u, w) + ww * cross(u, v);
  const double longest = std::max({uu, vv, ww});
  return std::abs(value) < 1e-11 * longest * longest ? 0.0 : value;
}

std::vector<int> left_to_right(const Points& points) {
  std::vector<int> order(points.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
  std::ranges::sort(order, [&](int a, int b) {
    const Vec p = point_at(points, a);
    const Vec q = point_at(points, b);
    return p.x != q.x ? p.x < q.x : p.y < q.y;
  });
  return order;
}

// A counter-clockwise hull that grows by points outside it.
class Hull {
 public:
  Hull(const Points& points, std::vector<int> corners)
      : points_(points), corners_(std::move(corners)) {}

  /// Joins p to every hull edge it sees; the new triangles are appended.
  void grow(int p, std::vector<Triangle>& triangles) {
    const std::size_t n = corners_.size();
    std::size_t start = 0;
    while (start < n && !(sees(p, start) && !sees(p, (start + n - 1) % n))) ++start;
    if (start == n) return;
    std::size_t end = start;
    while (sees(p, end)) {
      const std::size_t next = (end + 1) % n;
      triangles.push_back({corners_[next], corners_[end], p});
      end = next;
    }
    std::vector<int> grown{p};
    for (std::size_t i = end; i != start; i = (i + 1) % n) grown.push_back(corners_[i]);
    grown.push_back(corners_[start]);
    corners_ = std::move(grown);
  }

 private:
  [[nodiscard]] bool sees(int p, std::size_t edge) const {
    return strictly_left(points_, corners_[(edge + 1) % corners_.size()], corners_[edge], p);
  }

  const Points& points_;
  std::vector<int> corners_;
};

// Some triangulation: a fan over the first points in line, then a growing hull.
std::vector<Triangle> sweep(const Points& points) {
  const std::vector<int> order = left_to_right(points);
  const auto side = [&](std::size_t i) {
    if (strictly_left(points, order[0], order[1], order[i])) return 1;
    return strictly_left(points, order[1], order[0], order[i]) ? -1 : 0;
  };
  std::size_t first = 2;
  while (first < order.size() && side(first) == 0) ++first;
  if (first >= order.size()) return {};
  std::vector<int> line(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(first));
  if (side(first) < 0) std::ranges::reverse(line);
  std::vector<Triangle> triangles;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    triangles.push_back({line[i], line[i + 1], order[first]});
  }
  line.push_back(order[first]);
  Hull hull(points, std::move(line));
  for (std::size_t k = first + 1; k < order.size(); ++k) hull.grow(order[k], triangles);
  return triangles;
}

class Flipper {
 public:
  Flipper(const Points& points, std::vector<Triangle>& triangles)
      : points_(points), triangles_(triangles) {
    for (std::size_t t = 0; t < triangles_.size(); ++t) enter(t);
  }

  /// Flips until nothing changes; says whether any tie was met.
  bool settle() {
    bool tie = false;
    bool changed = true;
    for (std::size_t pass = 0; changed && pass <= triangles_.size(); ++pass) {
      changed = false;
      tie = false;
      for (std::size_t t = 0; t < triangles_.size(); ++t) {
        for (std::size_t e = 0; e < 3; ++e) changed |= visit(t, e, tie);
      }
    }
    return tie;
  }

 private:
  void enter(std::size_t t) {
    const Triangle& v = triangles_[t];
    for (std::size_t e = 0; e < 3; ++e) owner_[{v[e], v[(e + 1) % 3]}] = t;
  }

  bool visit(std::size_t t, std::size_t e, bool& tie) {
    const Triangle v = triangles_[t];
    const int a = v[e];
    const int b = v[(e + 1) % 3];
    const int c = v[(e + 2) % 3];
    const auto found = owner_.find({b, a});
    if (found == owner_.end()) return false;
    const std::size_t other = found->second;
    int d = -1;
    for (const int i : triangles_[other]) {
      if (i != a && i != b) d = i;
    }
    const double inside = in_circle(points_, a, b, c, d);
    if (inside < 0.0) return false;
    if (!strictly_left(points_, c, d, b) || !strictly_left(points_, d, c, a)) return false;
    if (inside == 0.0) {
      tie = true;
      if (std::min(a, b) < std::min(c, d)) return false;
    }
    owner_.erase({a, b});
    owner_.erase({b, a});
    triangles_[t] = {a, d, c};
    triangles_[other] = {d, b, c};
    enter(t);
    enter(other);
    return true;
  }

  const Points& points_;
  std::vector<Triangle>& triangles_;
  std::map<Edge, std::size_t> owner_;
};

}  // namespace

Triangulation delaunay(const Points& points) {
  if (points.size() < 3) return {};
  Triangulation result{sweep(points), false};
  result.tie = Flipper(points, result.triangles).settle();
  for (Triangle& t : result.triangles) {
    std::rotate(t.begin(), std::ranges::min_element(t), t.end());
  }
  std::ranges::sort(result.triangles);
  return result;
}

}  // namespace basinwright::shell::geometry
