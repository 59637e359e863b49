// Area and first moments of a region, summed over its boundary.
#pragma once

#include "vec.hpp"

namespace basinwright::shell::geometry {

struct Moments {
  double area = 0.0;
  Vec first;  ///< (int x dA, int y dA)
  Moments& operator+=(const Moments& o) {
    area += o.area;
    first = first + o.first;
    return *this;
  }
  friend Moments operator*(double k, const Moments& m) { return {k * m.area, k * m.first}; }
  /// Integral of a linear height over the region.
  [[nodiscard]] double integral(const Plane& height) const {
    return height.constant * area + dot(height.gradient, first);
  }
};

/// Shape factors of a circular arc on a chord of length 1, by included angle t >= 0.
struct ArcFactors {
  double area = 0.0;    ///< Segment area: (t - sin t) / (8 sin^2(t/2)).
  double moment = 0.0;  ///< Segment moment about the chord's middle, along the outward normal.
  double mean = 0.0;    ///< int (distance from chord) ds.
  double length = 1.0;  ///< (t/2) / sin(t/2).
};
/// Series below 0.3 rad, where the direct forms cancel.
[[nodiscard]] ArcFactors arc_factors(double t);

/// Contribution of an edge with a bulge to area and first moments about the origin.
[[nodiscard]] Moments edge_moments(Vec from, Vec to, double bulge);

}  // namespace basinwright::shell::geometry
