#include "loop.hpp"

#include <algorithm>
#include <array>
#include <numbers>

namespace basinwright::shell::geometry {

namespace {

bool same(Vec a, Vec b) {
  return a.x == b.x && a.y == b.y;
}

Piece bridge(Vec from, Vec to) {
  Piece line;
  line.from = from;
  line.to = to;
  return line;
}

// +1, 0 or -1: how often the circular segment on the chord winds round the point.
int segment_winding(const Piece& c, Vec p) {
  if (cross(c.to - c.from, p - c.from) * c.bulge > 0.0) return 0;  // on the chord's other side
  const RoundLine circle = circle_of(c);
  if (norm(p - circle.centre) > circle.radius) return 0;
  return c.bulge > 0.0 ? 1 : -1;
}

int chord_winding(Vec a, Vec b, Vec p) {
  if (a.y <= p.y) return b.y > p.y && cross(b - a, p - a) > 0.0 ? 1 : 0;
  return b.y <= p.y && cross(b - a, p - a) < 0.0 ? -1 : 0;
}

// The segment between an elliptic arc and its chord, arcs of at most half a turn.
int ellipse_winding(const Piece& c, Vec p) {
  if (cross(c.to - c.from, p - c.from) > 0.0) return 0;
  const EllipseFrame& e = c.ellipse->frame;
  const Vec q = e.local(p);
  const double x = q.x / e.a;
  const double y = q.y / e.b;
  return x * x + y * y <= 1.0 ? 1 : 0;
}

}  // namespace

Moments moments(const Loop& loop) {
  Moments sum;
  for (const Piece& c : loop) sum += c.moments();
  return sum;
}

double length(const Loop& loop) {
  double sum = 0.0;
  for (const Piece& c : loop) sum += c.length();
  return sum;
}

Box box_of(const Loop& loop) {
  Box box;
  for (const Piece& c : loop) {
    const Box part = box_of(c);
    box.add(part.low);
    box.add(part.high);
  }
  return box;
}

std::vector<Piece> clip(const Piece& curve, const HalfPlane& side) {
  std::vector<Piece> kept;
  take_parts(curve, curve.cuts(side), [&](const Piece& piece) {
    if (side.at(piece.at(0.5)) > on_plane) kept.push_back(piece);
  });
  return kept;
}

Loop clip(const Loop& loop, const HalfPlane& side) {
  Loop kept;
  kept.reserve(loop.size() + 4);
  const auto add = [&](const Piece& piece) {
    if (!kept.empty() && !same(kept.back().to, piece.from)) {
      kept.push_back(bridge(kept.back().to, piece.from));
    }
    kept.push_back(piece);
  };
  for (const Piece& c : loop) {
    take_parts(c, c.cuts(side), [&](const Piece& piece) {
      if (side.at(piece.at(0.5)) > 0.0) add(piece);
    });
  }
  if (!kept.empty() && !same(kept.back().to, kept.front().from)) {
    kept.push_back(bridge(kept.back().to, kept.front().from));
  }
  return kept;
}

Loop clip(Loop loop, const std::vector<HalfPlane>& sides) {
  for (const HalfPlane& side : sides) {
    if (loop.empty()) break;
    loop = clip(loop, side);
  }
  return loop;
}

bool contains(const Loop& loop, Vec p) {
  int winding = 0;
  for (const Piece& c : loop) {
    winding += chord_winding(c.from, c.to, p);
    if (c.ellipse) winding += ellipse_winding(c, p);
    if (c.bulge != 0.0) winding += segment_winding(c, p);
  }
  return winding > 0;
}

bool near_boundary(const Loop& loop, Vec p, double gap) {
  return std::ranges::any_of(loop, [&](const Piece& c) { return c.distance(p) <= gap; });
}

bool lies_along(const Piece& curve, const Loop& loop, double gap) {
  constexpr std::array ends{0.05, 0.95, 0.25, 0.75};
  constexpr double slant = 0.2;
  const Vec p = curve.at(0.5);
  const Vec n = curve.right_normal(0.5);
  return std::ranges::any_of(loop, [&](const Piece& c) {
    const double u = c.nearest(p);
    if (u <= 0.0 || u >= 1.0 || norm(p - c.at(u)) > gap) return false;
    if (std::abs(cross(n, c.right_normal(u))) > slant) return false;
    return std::ranges::all_of(ends, [&](double v) { return c.distance(curve.at(v)) <= gap; });
  });
}

Lowest lowest(const Loop& loop, const Plane& height) {
  Lowest least{1e300, {}};
  const auto look = [&](Vec p) {
    if (height.at(p) < least.value) least = {height.at(p), p};
  };
  for (const Piece& c : loop) {
    look(c.from);
    for (const double u : c.extremes(height.gradient)) look(c.at(u));
  }
  return least;
}

}  // namespace basinwright::shell::geometry
