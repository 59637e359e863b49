// A pool measured by brute force: points on a grid and points along walls, straight from the rule
// "depth = min(floor, block), max(floor, pit)". Shares nothing with the take-off.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace sampling {

struct Point {
  double x, y;
};
using Polygon = std::vector<Point>;

/// A vertex and the bulge to the next one.
struct Bend {
  double x, y, bulge;
};

inline Point on_arc(Point a, Point b, double bulge, double share) {
  const double half = 2.0 * std::atan(bulge);
  const double c = std::hypot(b.x - a.x, b.y - a.y);
  const double radius = c / (2.0 * std::sin(half));
  const double mx = 0.5 * (a.x + b.x);
  const double my = 0.5 * (a.y + b.y);
  const double nx = (b.y - a.y) / c;
  const double ny = -(b.x - a.x) / c;
  const double cx = mx - nx * radius * std::cos(half);
  const double cy = my - ny * radius * std::cos(half);
  const double turn = 2.0 * half * share;
  const double dx = a.x - cx;
  const double dy = a.y - cy;
  return {cx + dx * std::cos(turn) - dy * std::sin(turn),
          cy + dx * std::sin(turn) + dy * std::cos(turn)};
}

inline Polygon flatten(const std::vector<Bend>& path, int chords) {
  Polygon polygon;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const Point a{path[i].x, path[i].y};
    const Bend& next = path[(i + 1) % path.size()];
    for (int k = 0; k < chords; ++k) {
      const double share = static_cast<double>(k) / chords;
      if (path[i].bulge == 0.0) {
        polygon.push_back({a.x + share * (next.x - a.x), a.y + share * (next.y - a.y)});
      } else {
        polygon.push_back(on_arc(a, {next.x, next.y}, path[i].bulge, share));
      }
    }
  }
  return polygon;
}

/// Crossings of a horizontal line, ascending.
inline std::vector<double> crossings(const Polygon& polygon, double y) {
  std::vector<double> found;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    if ((a.y <= y) == (b.y <= y)) continue;
    found.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
  }
  std::sort(found.begin(), found.end());
  return found;
}

inline bool inside(const Polygon& polygon, Point p) {
  int left = 0;
  for (const double x : crossings(polygon, p.y)) left += x < p.x ? 1 : 0;
  return left % 2 == 1;
}

struct Body {
  Polygon polygon;
  double depth;
  bool pit;
};

struct Pool {
  Polygon outline;
  std::function<double(Point)> floor;
  std::vector<Body> bodies;  ///< Nested ones innermost last.

  [[nodiscard]] double depth(Point p) const {
    double d = floor(p);
    for (const Body& body : bodies) {
      if (inside(body.polygon, p)) d = body.pit ? std::max(d, body.depth) : std::min(d, body.depth);
    }
    return d;
  }
};

struct Result {
  double plan = 0.0;
  double volume = 0.0;  ///< Below the rim.
  double wall = 0.0;    ///< Below the rim.
  double risers = 0.0;  ///< Vertical faces of bodies, each boundary once.
};

inline Result measure(const Pool& pool, double step) {
  Result r;
  double low_y = 1e300, high_y = -1e300;
  for (const Point p : pool.outline) {
    low_y = std::min(low_y, p.y);
    high_y = std::max(high_y, p.y);
  }
  const int rows = static_cast<int>(std::ceil((high_y - low_y) / step));
  step = (high_y - low_y) / rows;
  for (int row = 0; row < rows; ++row) {
    const double y = low_y + (row + 0.5) * step;
    const auto ends = crossings(pool.outline, y);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
      const int n = 1 + static_cast<int>((ends[i + 1] - ends[i]) / step);
      const double dx = (ends[i + 1] - ends[i]) / n;
      for (int k = 0; k < n; ++k) {
        r.plan += dx * step;
        r.volume += dx * step * pool.depth({ends[i] + (k + 0.5) * dx, y});
      }
    }
  }
  const auto along = [](const Polygon& polygon, const auto& visit) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i];
      const Point b = polygon[(i + 1) % polygon.size()];
      const double l = std::hypot(b.x - a.x, b.y - a.y);
      if (l < 1e-12) continue;
      const Point n{-(b.y - a.y) / l, (b.x - a.x) / l};  // inwards
      visit(Point{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)}, n, l);
    }
  };
  constexpr double aside = 2e-3;
  along(pool.outline, [&](Point p, Point n, double l) {
    r.wall += l * pool.depth({p.x + aside * n.x, p.y + aside * n.y});
  });
  for (std::size_t i = 0; i < pool.bodies.size(); ++i) {
    along(pool.bodies[i].polygon, [&](Point p, Point n, double l) {
      const Point in{p.x + aside * n.x, p.y + aside * n.y};
      const Point out{p.x - aside * n.x, p.y - aside * n.y};
      if (!inside(pool.outline, out)) return;
      for (std::size_t j = 0; j < i; ++j) {  // a face shared with an earlier body
        const bool was_in = inside(pool.bodies[j].polygon, in);
        if (was_in != inside(pool.bodies[j].polygon, out)) return;
      }
      r.risers += l * std::abs(pool.depth(in) - pool.depth(out));
    });
  }
  return r;
}

}  // namespace sampling
