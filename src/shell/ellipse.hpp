// Closed forms on an ellipse: p(t) = centre + a cos t axis + b sin t left(axis).
#pragma once

#include <vector>

#include "moments.hpp"
#include "vec.hpp"

namespace basinwright::shell::geometry {

struct EllipseFrame {
  Vec centre;
  Vec axis{1.0, 0.0};
  double a = 0.0;
  double b = 0.0;
  [[nodiscard]] Vec at(double t) const;
  /// Derivative of `at`.
  [[nodiscard]] Vec speed(double t) const;
  /// Coordinates along the two axes, about the centre.
  [[nodiscard]] Vec local(Vec p) const;
  [[nodiscard]] double curvature(double t) const;
};

/// Contribution of the arc to area and first moments about the origin (fan from the origin).
[[nodiscard]] Moments ellipse_moments(const EllipseFrame& e, double t0, double t1);

/// Length of the arc: incomplete elliptic integrals of the second kind.
[[nodiscard]] double ellipse_length(const EllipseFrame& e, double t0, double t1);

/// Line integral of p over the arc: (int x ds, int y ds).
[[nodiscard]] Vec ellipse_line_moment(const EllipseFrame& e, double t0, double t1);

/// Parameters in (t0, t1) at which the arc meets the line, ascending; t0 < t1.
[[nodiscard]] std::vector<double> ellipse_cuts(const EllipseFrame& e,
                                               double t0,
                                               double t1,
                                               const HalfPlane& line);

/// Legendre's E(phi | m) for m < 1 and any phi, by Carlson's duplication; to a few ulp.
[[nodiscard]] double elliptic_e(double phi, double m);

}  // namespace basinwright::shell::geometry
