// The cove at the true angle between an upright wall and a sloping floor.
#include <cmath>
#include <numbers>

#include "quadrature.hpp"
#include "surfaces.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;
using geometry::Plane;
using geometry::Vec;

// Per metre of plan: the fillet arc less the two flats it replaces, along the sloping toe.
double change_per_metre(const Plane& floor, Vec outwards) {
  const double uphill = dot(floor.gradient, outwards);
  const double along = dot(floor.gradient, geometry::left(outwards));
  const double cosine = uphill / floor.stretch();
  const double sine = std::sqrt(1.0 - cosine * cosine);
  const double angle = std::atan2(sine, cosine);
  const double cotangent = (1.0 + cosine) / sine;  // of half the angle
  return (std::numbers::pi - angle - 2.0 * cotangent) * std::sqrt(1.0 + along * along);
}

double change_over(const Piece& curve, const Plane& floor) {
  if (floor.level() || curve.straight()) {
    return change_per_metre(floor, curve.right_normal(0.5)) * curve.length();
  }
  constexpr double panel = 0.5;  // radians of turning: sixteen nodes then reach rounding
  const double panels = std::ceil(std::abs(curve.turning()) / panel);
  double sum = 0.0;
  for (double k = 0.0; k < panels; k += 1.0) {
    geometry::for_nodes(k / panels, (k + 1.0) / panels, [&](double u, double weight) {
      sum += weight * curve.pace(u) * change_per_metre(floor, curve.right_normal(u));
    });
  }
  return sum;
}

}  // namespace

double true_angle_change(const Surfaces& surfaces) {
  double sum = 0.0;
  for (const Upright& upright : surfaces.uprights) {
    if (upright.coved) sum += change_over(upright.curve, upright.floor);
  }
  return sum;
}

}  // namespace basinwright::shell
