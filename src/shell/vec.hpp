// Points, directions, lines and planes of the plan, in plain metres.
#pragma once

#include <cmath>
#include <numbers>

namespace basinwright::shell::geometry {

/// Two points nearer than this are one; an edge shorter is refused.
inline constexpr double shortest_edge = 1e-3;
/// A footprint's edge this near to a wall or to another footprint touches it.
inline constexpr double contact = 1e-3;
/// What differs by less than this stands at one place.
inline constexpr double flush = 1e-9;
/// A length, speed or slope under this is none.
inline constexpr double nothing = 1e-12;
/// How far beside a line it is asked which face or cell lies there.
inline constexpr double beside = 1e-6;
/// A face nearer to a cutting plane than this stands on it.
inline constexpr double on_plane = 1e-10;

struct Vec {
  double x = 0.0;
  double y = 0.0;
  friend Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend Vec operator*(double k, Vec a) { return {k * a.x, k * a.y}; }
};

inline double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y;
}
inline double cross(Vec a, Vec b) {
  return a.x * b.y - a.y * b.x;
}
inline double norm(Vec a) {
  return std::sqrt(dot(a, a));
}
inline Vec unit(Vec a) {
  return (1.0 / norm(a)) * a;
}
/// To the left of the direction: inwards from a counter-clockwise outline.
inline Vec left(Vec a) {
  return {-a.y, a.x};
}
inline Vec right(Vec a) {
  return {a.y, -a.x};
}
inline Vec middle(Vec a, Vec b) {
  return 0.5 * (a + b);
}
/// Turned by the angle of a unit vector against x.
inline Vec turned(Vec a, Vec by) {
  return {by.x * a.x - by.y * a.y, by.y * a.x + by.x * a.y};
}
/// Unit vector at an angle from x; exact for quarter turns.
inline Vec from_degrees(double degrees) {
  const double rest = std::remainder(degrees, 360.0);
  if (rest == 0.0) return {1.0, 0.0};
  if (rest == 90.0) return {0.0, 1.0};
  if (rest == -90.0) return {0.0, -1.0};
  if (std::abs(rest) == 180.0) return {-1.0, 0.0};
  const double angle = rest * (std::numbers::pi / 180.0);
  return {std::cos(angle), std::sin(angle)};
}

/// The points with normal . p >= offset; the normal has length 1.
struct HalfPlane {
  Vec normal;
  double offset = 0.0;
  [[nodiscard]] double at(Vec p) const { return dot(normal, p) - offset; }
  [[nodiscard]] HalfPlane flipped() const { return {-1.0 * normal, -offset}; }
};

/// The half-plane to the left of the line from a to b.
inline HalfPlane left_of(Vec a, Vec b) {
  const Vec n = unit(left(b - a));
  return {n, dot(n, a)};
}

/// A linear height over the plan: constant + gradient . p.
struct Plane {
  double constant = 0.0;
  Vec gradient;
  [[nodiscard]] double at(Vec p) const { return constant + dot(gradient, p); }
  /// How much longer a line of steepest descent is than its plan; also true area over plan area.
  [[nodiscard]] double stretch() const { return std::sqrt(1.0 + dot(gradient, gradient)); }
  [[nodiscard]] bool level() const { return gradient.x == 0.0 && gradient.y == 0.0; }
  friend Plane operator-(const Plane& a, const Plane& b) {
    return {a.constant - b.constant, a.gradient - b.gradient};
  }
};

inline Plane level_plane(double height) {
  return {height, {}};
}

}  // namespace basinwright::shell::geometry
