#include "drawing_geometry.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace basinwright::report {
namespace {

using document::Leg;
using shell::EllipsePath;
using shell::PathPoint;
using shell::VertexPath;

constexpr double half_turn = 180.0;

/// An edge on the sheet, from its bulge: tan(arc angle / 4), positive to the right of travel.
struct Edge {
  Spot from, to;
  double bulge = 0.0;
  [[nodiscard]] double chord() const { return std::hypot(to.x - from.x, to.y - from.y); }
  [[nodiscard]] double angle() const { return 4.0 * std::atan(bulge); }
  [[nodiscard]] double radius() const {
    return chord() * (1.0 + bulge * bulge) / (4.0 * std::abs(bulge));
  }
  /// Bends by less than the sheet can show.
  [[nodiscard]] bool straight() const { return std::abs(bulge) * chord() < 1e-3; }
  [[nodiscard]] Spot at(double share) const;
  [[nodiscard]] Spot outward(double share) const;

 private:
  [[nodiscard]] Spot centre() const;
};

// On the sheet y runs down, so what lies to the left of travel lies at (dy, -dx).
Spot Edge::centre() const {
  const double off = (1.0 - bulge * bulge) / (4.0 * bulge);
  return {0.5 * (from.x + to.x) + off * (to.y - from.y),
          0.5 * (from.y + to.y) - off * (to.x - from.x)};
}

Spot Edge::at(double share) const {
  if (straight()) return {from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
  const Spot c = centre();
  const double turn = -share * angle();
  const double cos = std::cos(turn);
  const double sin = std::sin(turn);
  const double x = from.x - c.x;
  const double y = from.y - c.y;
  return {c.x + cos * x - sin * y, c.y + sin * x + cos * y};
}

Spot Edge::outward(double share) const {
  if (straight()) {
    const double length = chord();
    if (length <= 0.0) return {1.0, 0.0};
    return {-(to.y - from.y) / length, (to.x - from.x) / length};
  }
  const Spot c = centre();
  const Spot p = at(share);
  const double out = bulge > 0.0 ? 1.0 : -1.0;
  return {out * (p.x - c.x) / radius(), out * (p.y - c.y) / radius()};
}

std::vector<Edge> edges_of(const VertexPath& path, const View& view) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const PathPoint& a = path[i];
    const PathPoint& b = path[(i + 1) % path.size()];
    edges.push_back({view.at(a.x, a.y), view.at(b.x, b.y), a.bulge});
  }
  return edges;
}

void add_legs(Trail& trail, const Edge& edge) {
  if (edge.straight()) {
    trail.legs.push_back({edge.to});
    return;
  }
  const double most = 2.0 * std::numbers::pi / 3.0;
  const int parts = static_cast<int>(std::ceil(std::abs(edge.angle()) / most));
  for (int i = 1; i <= parts; ++i) {
    const Spot to = i == parts ? edge.to : edge.at(static_cast<double>(i) / parts);
    trail.legs.push_back({to, edge.radius(), edge.radius(), 0.0, false, edge.bulge < 0.0});
  }
}

/// The ellipse's place at a quarter of the way round, from its left end downwards.
Spot on_ellipse(const EllipsePath& e, const View& view, double angle) {
  const Spot axis = unit_at(e.rotation_deg);
  const Length u = std::cos(angle) * e.semi_length;
  const Length v = std::sin(angle) * e.semi_width;
  return view.at(e.centre_x + axis.x * u - axis.y * v, e.centre_y + axis.y * u + axis.x * v);
}

Trail trail_of(const EllipsePath& e, const View& view) {
  const double pi = std::numbers::pi;
  Trail trail{on_ellipse(e, view, pi), {}, true};
  for (int i = 1; i <= 4; ++i) {
    Leg leg;
    leg.to = i == 4 ? trail.from : on_ellipse(e, view, pi + i * pi / 2.0);
    leg.radius_x = view.scale * e.semi_length.si();
    leg.radius_y = view.scale * e.semi_width.si();
    leg.turn_deg = std::remainder(view.right_deg - e.rotation_deg, 2.0 * half_turn);
    trail.legs.push_back(leg);
  }
  return trail;
}

std::vector<PathSpot> spots_along(const EllipsePath& e, const View& view) {
  constexpr int count = 360;
  std::vector<PathSpot> spots;
  const Spot axis = unit_at(e.rotation_deg);
  for (int i = 0; i < count; ++i) {
    const double share = static_cast<double>(i) / count;
    const double angle = std::numbers::pi * (1.0 + 2.0 * share);
    const double u = std::cos(angle) / e.semi_length.si();
    const double v = std::sin(angle) / e.semi_width.si();
    const double length = std::hypot(u, v);
    const Spot out =
        view.direction((axis.x * u - axis.y * v) / length, (axis.y * u + axis.x * v) / length);
    spots.push_back({on_ellipse(e, view, angle), out, 0, share});
  }
  return spots;
}

}  // namespace

Spot View::at(Length x, Length y) const {
  const Spot turned = direction(x.si(), y.si());
  return {origin.x + scale * turned.x, origin.y + scale * turned.y};
}

Spot View::direction(double x, double y) const {
  return {x * right_x + y * right_y, x * right_y - y * right_x};
}

Spot unit_at(double degrees) {
  const double rest = std::remainder(degrees, 2.0 * half_turn);
  if (rest == 0.0) return {1.0, 0.0};
  if (rest == half_turn / 2.0) return {0.0, 1.0};
  if (rest == -half_turn / 2.0) return {0.0, -1.0};
  if (std::abs(rest) == half_turn) return {-1.0, 0.0};
  const double angle = rest * std::numbers::pi / half_turn;
  return {std::cos(angle), std::sin(angle)};
}

Trail trail_of(const VertexPath& path, const View& view) {
  const std::vector<Edge> edges = edges_of(path, view);
  Trail trail{edges.front().from, {}, true};
  for (const Edge& edge : edges) add_legs(trail, edge);
  return trail;
}

Trail trail_of(const shell::OutlinePath& outline, const View& view) {
  return std::visit([&view](const auto& path) { return trail_of(path, view); }, outline);
}

Trail polygon(const std::vector<Spot>& corners) {
  Trail trail{corners.front(), {}, true};
  for (std::size_t i = 1; i < corners.size(); ++i) trail.legs.push_back({corners[i]});
  return trail;
}

Trail segment(Spot from, Spot to) {
  return {from, {{to}}, false};
}

std::vector<PathSpot> spots_along(const VertexPath& path, const View& view) {
  constexpr double apart = 0.8;
  constexpr double least = 8.0;
  constexpr double most = 4000.0;
  std::vector<PathSpot> spots;
  const std::vector<Edge> edges = edges_of(path, view);
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Edge& edge = edges[i];
    const double length = edge.straight() ? edge.chord() : edge.radius() * std::abs(edge.angle());
    const int count = static_cast<int>(std::clamp(std::ceil(length / apart), least, most));
    for (int k = 0; k < count; ++k) {
      const double share = static_cast<double>(k) / count;
      spots.push_back({edge.at(share), edge.outward(share), static_cast<int>(i), share});
    }
  }
  return spots;
}

std::vector<PathSpot> spots_along(const shell::OutlinePath& outline, const View& view) {
  return std::visit([&view](const auto& path) { return spots_along(path, view); }, outline);
}

bool inside(const std::vector<PathSpot>& path, Spot place) {
  bool odd = false;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const Spot a = path[i].at;
    const Spot b = path[(i + 1) % path.size()].at;
    if ((a.y > place.y) == (b.y > place.y)) continue;
    if (place.x < a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
  }
  return odd;
}

}  // namespace basinwright::report
