#include "curve.hpp"

#include <algorithm>
#include <numbers>

namespace basinwright::shell::geometry {

namespace {

double parameter(const EllipseArc& arc, double u) {
  return arc.t0 + u * (arc.t1 - arc.t0);
}

double angle_from_middle(double bulge, double u) {
  return 2.0 * std::atan(bulge * (2.0 * u - 1.0));
}

double share_of_angle(double bulge, double angle) {
  return 0.5 * (std::tan(angle / 2.0) / bulge + 1.0);
}

double clamped(double u) {
  return std::clamp(u, 0.0, 1.0);
}

// Parameter on the arc of the point in the direction `d` from the centre (right of travel for a
// positive bulge); outside [0, 1] when the direction misses the arc.
double share_of_direction(const Piece& arc, Vec d) {
  const Vec mid = right(arc.to - arc.from);
  const double sign = arc.bulge > 0.0 ? 1.0 : -1.0;
  const double angle = std::atan2(cross(sign * mid, d), dot(sign * mid, d));
  const double half = 2.0 * std::atan(std::abs(arc.bulge));
  if (std::abs(angle) >= half) return sign * angle > 0.0 ? 2.0 : -1.0;
  return share_of_angle(arc.bulge, angle);
}

void add_within(Cuts& cuts, double u) {
  if (u > 0.0 && u < 1.0) cuts.add(u);
}

Cuts arc_cuts(const Piece& arc, const HalfPlane& line) {
  const double b = arc.bulge;
  const double f0 = line.at(arc.from);
  const double f2 = line.at(arc.to);
  const double weight = (1.0 - b * b) / (1.0 + b * b);
  const double bow = b / (1.0 + b * b) * dot(line.normal, right(arc.to - arc.from));
  const double g = weight * (f0 + f2) / 2.0 + bow;
  const double a = f0 - 2.0 * g + f2;
  const double half_b = g - f0;
  const double under = half_b * half_b - a * f0;
  if (under < 0.0) return {};
  const double q = -(half_b + (half_b < 0.0 ? -1.0 : 1.0) * std::sqrt(under));
  Cuts roots;
  if (a != 0.0) add_within(roots, q / a);
  if (q != 0.0) add_within(roots, f0 / q);
  std::ranges::sort(roots);
  return roots;
}

}  // namespace

RoundLine circle_of(const Piece& arc) {
  const double b = arc.bulge;
  const Vec chord = arc.to - arc.from;
  return {middle(arc.from, arc.to) + (1.0 - b * b) / (4.0 * b) * left(chord),
          norm(chord) * (1.0 + b * b) / (4.0 * std::abs(b))};
}

Vec Piece::at(double u) const {
  if (u <= 0.0) return from;
  if (u >= 1.0) return to;
  if (ellipse) return ellipse->frame.at(parameter(*ellipse, u));
  if (bulge == 0.0) return from + u * (to - from);
  const double weight = (1.0 - bulge * bulge) / (1.0 + bulge * bulge);
  const Vec control = weight * middle(from, to) + bulge / (1.0 + bulge * bulge) * right(to - from);
  const double v = 1.0 - u;
  const double total = v * v + 2.0 * u * v * weight + u * u;
  return (1.0 / total) * (v * v * from + 2.0 * u * v * control + u * u * to);
}

Vec Piece::right_normal(double u) const {
  if (ellipse) return unit(right(ellipse->frame.speed(parameter(*ellipse, u))));
  const Vec n = unit(right(to - from));
  if (bulge == 0.0) return n;
  const double angle = angle_from_middle(bulge, u);
  return turned(n, {std::cos(angle), std::sin(angle)});
}

double Piece::length() const {
  if (ellipse) return ellipse_length(ellipse->frame, ellipse->t0, ellipse->t1);
  const double chord = norm(to - from);
  return bulge == 0.0 ? chord : chord * arc_factors(4.0 * std::atan(std::abs(bulge))).length;
}

double Piece::pace(double u) const {
  if (ellipse) {
    return norm(ellipse->frame.speed(parameter(*ellipse, u))) * (ellipse->t1 - ellipse->t0);
  }
  if (bulge == 0.0) return norm(to - from);
  const double x = bulge * (2.0 * u - 1.0);
  return norm(to - from) * (1.0 + bulge * bulge) / (1.0 + x * x);
}

double Piece::curvature(double u) const {
  if (ellipse) return ellipse->frame.curvature(parameter(*ellipse, u));
  return 4.0 * bulge / (norm(to - from) * (1.0 + bulge * bulge));
}

double Piece::turning() const {
  if (!ellipse) return 4.0 * std::atan(bulge);
  const Vec a = ellipse->frame.speed(ellipse->t0);
  const Vec b = ellipse->frame.speed(ellipse->t1);
  return std::atan2(cross(a, b), dot(a, b));
}

Moments Piece::moments() const {
  if (ellipse) return ellipse_moments(ellipse->frame, ellipse->t0, ellipse->t1);
  return edge_moments(from, to, bulge);
}

double Piece::integral(const Plane& height) const {
  if (ellipse) {
    return height.constant * length() +
           dot(height.gradient, ellipse_line_moment(ellipse->frame, ellipse->t0, ellipse->t1));
  }
  const Vec chord = to - from;
  const double c = norm(chord);
  const double mean = height.at(middle(from, to));
  if (bulge == 0.0) return c * mean;
  const ArcFactors f = arc_factors(4.0 * std::atan(std::abs(bulge)));
  const double sign = bulge > 0.0 ? 1.0 : -1.0;
  return c * f.length * mean + sign * c * f.mean * dot(height.gradient, right(chord));
}

Piece Piece::part(double u0, double u1) const {
  Piece piece = *this;
  piece.from = at(u0);
  piece.to = at(u1);
  if (ellipse) {
    piece.ellipse->t0 = parameter(*ellipse, u0);
    piece.ellipse->t1 = parameter(*ellipse, u1);
  } else if (bulge != 0.0) {
    piece.bulge =
        std::tan(0.5 * (std::atan(bulge * (2.0 * u1 - 1.0)) - std::atan(bulge * (2.0 * u0 - 1.0))));
  }
  return piece;
}

Cuts Piece::cuts(const HalfPlane& line) const {
  Cuts cuts;
  if (ellipse) {
    for (const double t : ellipse_cuts(ellipse->frame, ellipse->t0, ellipse->t1, line))
      add_within(cuts, (t - ellipse->t0) / (ellipse->t1 - ellipse->t0));
    return cuts;
  }
  if (bulge != 0.0) return arc_cuts(*this, line);
  const double f0 = line.at(from);
  const double f1 = line.at(to);
  if ((f0 > 0.0) == (f1 > 0.0) || f0 == f1) return {};
  add_within(cuts, f0 / (f0 - f1));
  return cuts;
}

Cuts Piece::extremes(Vec direction) const {
  if (straight() || norm(direction) == 0.0) return {};
  if (ellipse) {  // where a chord of the ellipse's own diameter conjugate to the direction ends
    const EllipseFrame& e = ellipse->frame;
    const Vec d{e.a * dot(direction, e.axis), e.b * dot(direction, left(e.axis))};
    const Vec n = unit({-d.y / e.a, d.x / e.b});
    const Vec normal = n.x * e.axis + n.y * left(e.axis);
    return cuts({normal, dot(normal, e.centre)});
  }
  Cuts found;
  for (const double sign : {1.0, -1.0})
    add_within(found, share_of_direction(*this, sign * direction));
  std::ranges::sort(found);
  return found;
}

double Piece::nearest(Vec p) const {
  if (straight()) {
    const Vec d = to - from;
    return clamped(dot(p - from, d) / dot(d, d));
  }
  if (ellipse) {
    const Vec q = ellipse->frame.local(p);
    double t = std::atan2(q.y / ellipse->frame.b, q.x / ellipse->frame.a);
    const double turn = 2.0 * std::numbers::pi;
    t -= turn * std::floor((t - ellipse->t0) / turn);
    const double past = t - ellipse->t1;
    if (past > 0.0) return past < ellipse->t0 + turn - t ? 1.0 : 0.0;
    return clamped((t - ellipse->t0) / (ellipse->t1 - ellipse->t0));
  }
  const double u = share_of_direction(*this, p - circle_of(*this).centre);
  if (u >= 0.0 && u <= 1.0) return u;
  return norm(p - from) <= norm(p - to) ? 0.0 : 1.0;
}

Box box_of(const Piece& curve) {
  Box box;
  box.add(curve.from);
  box.add(curve.to);
  for (const Vec axis : {Vec{1.0, 0.0}, Vec{0.0, 1.0}}) {
    for (const double u : curve.extremes(axis)) box.add(curve.at(u));
  }
  return box;
}

std::vector<Piece> split(const Piece& curve, std::vector<double> cuts) {
  std::ranges::sort(cuts);
  std::vector<Piece> pieces;
  pieces.reserve(cuts.size() + 1);
  take_parts(curve, cuts, [&](const Piece& piece) { pieces.push_back(piece); });
  return pieces;
}

}  // namespace basinwright::shell::geometry
