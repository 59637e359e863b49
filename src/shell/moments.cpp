#include "moments.hpp"

namespace basinwright::shell::geometry {

ArcFactors arc_factors(double t) {
  const double half = t / 2.0;
  if (t < 0.3) {
    const double q = t * t;
    const double h = half * half;
    return {
        t / 12.0 *
            (1.0 +
             q * (1.0 / 30.0 + q * (1.0 / 840.0 + q * (1.0 / 25200.0 + q * 1.25260541927174e-6)))),
        q / 240.0 *
            (1.0 + q * (5.0 / 84.0 +
                        q * (1.0 / 360.0 + q * (1.12734487734488e-4 + q * 4.18507858983862e-6)))),
        half / 6.0 *
            (1.0 +
             h * (7.0 / 30.0 + h * (31.0 / 840.0 + h * (127.0 / 25200.0 + h * 73.0 / 114048.0)))),
        t == 0.0 ? 1.0 : half / std::sin(half)};
  }
  const double s = std::sin(half);
  const double c = std::cos(half);
  const double area = (t - std::sin(t)) / (8.0 * s * s);
  return {area, 1.0 / 12.0 - area * c / s / 2.0, (s - half * c) / (2.0 * s * s), half / s};
}

Moments edge_moments(Vec from, Vec to, double bulge) {
  const double fan = 0.5 * cross(from, to);
  Moments m{fan, fan / 3.0 * (from + to)};
  if (bulge == 0.0) return m;
  const Vec chord = to - from;
  const double c = norm(chord);
  const ArcFactors f = arc_factors(4.0 * std::atan(std::abs(bulge)));
  const double segment = (bulge > 0.0 ? 1.0 : -1.0) * c * c * f.area;
  m.area += segment;
  m.first = m.first + segment * middle(from, to) + c * c * f.moment * right(chord);
  return m;
}

}  // namespace basinwright::shell::geometry
