// One piece of boundary: a straight line, a circular arc or part of an ellipse.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "ellipse.hpp"
#include "moments.hpp"
#include "vec.hpp"

namespace basinwright::shell::geometry {

/// Part of an ellipse by its parameters, t0 < t1.
struct EllipseArc {
  EllipseFrame frame;
  double t0 = 0.0;
  double t1 = 0.0;
};

/// Parameters of a piece, ascending: a curve meets a line twice at most.
class Cuts {
 public:
  void add(double u) { all_.at(count_++) = u; }
  [[nodiscard]] const double* begin() const { return all_.data(); }
  [[nodiscard]] const double* end() const { return all_.data() + count_; }
  [[nodiscard]] double* begin() { return all_.data(); }
  [[nodiscard]] double* end() { return all_.data() + count_; }

 private:
  std::array<double, 2> all_{};
  std::size_t count_ = 0;
};

/// A directed piece; its parameter u runs from 0 at `from` to 1 at `to`.
struct Piece {
  Vec from;
  Vec to;
  double bulge = 0.0;  ///< tan(arc angle / 4), positive to the right of travel; |bulge| <= 1.
  int wall = -1;       ///< Edge of the outline or footprint it belongs to; -1 a bridge.
  std::optional<EllipseArc> ellipse;

  [[nodiscard]] bool straight() const { return bulge == 0.0 && !ellipse; }
  [[nodiscard]] Vec at(double u) const;
  /// Unit normal to the right of travel.
  [[nodiscard]] Vec right_normal(double u) const;
  [[nodiscard]] double length() const;
  /// d(arc length)/du.
  [[nodiscard]] double pace(double u) const;
  /// Signed, positive when bending to the left.
  [[nodiscard]] double curvature(double u) const;
  /// Angle by which the direction turns to the left from end to end.
  [[nodiscard]] double turning() const;
  [[nodiscard]] Moments moments() const;
  /// Integral of a linear height over the length.
  [[nodiscard]] double integral(const Plane& height) const;
  [[nodiscard]] Piece part(double u0, double u1) const;
  /// Parameters strictly between 0 and 1 where it meets the line, ascending.
  [[nodiscard]] Cuts cuts(const HalfPlane& line) const;
  /// Parameters strictly between 0 and 1 where its normal lies along the direction.
  [[nodiscard]] Cuts extremes(Vec direction) const;
  /// Parameter of the nearest point, clamped to [0, 1].
  [[nodiscard]] double nearest(Vec p) const;
  [[nodiscard]] double distance(Vec p) const { return norm(p - at(nearest(p))); }
};

/// Centre and radius of the circle under an arc; the bulge is not 0.
struct RoundLine {
  Vec centre;
  double radius = 0.0;
};
[[nodiscard]] RoundLine circle_of(const Piece& arc);

/// Corners of an upright box round the piece.
struct Box {
  Vec low{1e300, 1e300};
  Vec high{-1e300, -1e300};
  void add(Vec p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  [[nodiscard]] bool apart(const Box& o, double gap) const {
    return low.x > o.high.x + gap || o.low.x > high.x + gap || low.y > o.high.y + gap ||
           o.low.y > high.y + gap;
  }
};
[[nodiscard]] Box box_of(const Piece& curve);

/// Gives the pieces between the parameters, which ascend, one after the other to `take`.
template <class Take>
void take_parts(const Piece& curve, std::span<const double> cuts, Take take) {
  constexpr double no_length = 1e-12;
  double before = 0.0;
  for (const double u : cuts) {
    if (u - before <= no_length || 1.0 - u <= no_length) continue;
    take(curve.part(before, u));
    before = u;
  }
  take(before == 0.0 ? curve : curve.part(before, 1.0));
}

/// The pieces between the given parameters, which need not be sorted.
[[nodiscard]] std::vector<Piece> split(const Piece& curve, std::vector<double> cuts);

}  // namespace basinwright::shell::geometry
