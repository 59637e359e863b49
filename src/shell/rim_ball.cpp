#include "rim_ball.hpp"

#include <optional>

namespace basinwright::shell::geometry {

namespace {

constexpr double on_piece = 1e-9;

std::optional<double> touch_line(const Piece& line, const RimRay& ray) {
  const Vec normal = unit(left(line.to - line.from));
  const double away = dot(normal, ray.from - line.from);
  const double closing = 1.0 - dot(normal, ray.inwards);
  if (away <= nothing || closing <= nothing) return std::nullopt;
  const double r = away / closing;
  const Vec foot = ray.from + r * (ray.inwards - normal);
  const Vec run = line.to - line.from;
  const double along = dot(foot - line.from, run);
  if (along < 0.0 || along > dot(run, run)) return std::nullopt;
  return r;
}

std::optional<double> touch_arc(const Piece& arc, const RimRay& ray) {
  const RoundLine circle = circle_of(arc);
  const Vec out = ray.from - circle.centre;
  const double beyond = dot(out, out) - circle.radius * circle.radius;
  const double heading = dot(ray.inwards, out);
  const bool within = arc.bulge > 0.0;  // the pool lies inside the circle
  const double closing = circle.radius + (within ? heading : -heading);
  if (closing <= nothing) return std::nullopt;
  const double r = (within ? -beyond : beyond) / (2.0 * closing);
  if (r <= nothing) return std::nullopt;
  const Vec centre = out + r * ray.inwards;
  if (norm(centre) < nothing) return r;
  const Vec foot = circle.centre + circle.radius / norm(centre) * centre;
  if (arc.distance(foot) > on_piece * (1.0 + circle.radius)) return std::nullopt;
  return r;
}

std::optional<double> touch_corner(Vec corner, const RimRay& ray) {
  const Vec d = corner - ray.from;
  const double ahead = dot(ray.inwards, d);
  if (ahead <= nothing) return std::nullopt;
  return dot(d, d) / (2.0 * ahead);
}

double in_ellipse(const EllipseFrame& e, Vec p) {
  const Vec q = e.local(p);
  const double c = q.x / e.a;
  const double s = q.y / e.b;
  const double speed = std::sqrt(e.a * e.a * s * s + e.b * e.b * c * c);
  return speed * std::min(e.a / e.b, e.b / e.a);
}

}  // namespace

Ball ball_at(const Loop& outline, const RimRay& ray) {
  if (const auto& arc = outline.front().ellipse) return {in_ellipse(arc->frame, ray.from), 0};
  Ball ball;
  const auto hold = [&](std::optional<double> r, int by) {
    if (r && *r < ball.radius * (1.0 - 1e-12)) ball = {*r, by};
  };
  const int count = static_cast<int>(outline.size());
  if (ray.owner >= 0) {
    const Piece& own = outline[static_cast<std::size_t>(ray.owner)];
    if (own.bulge > 0.0) hold(circle_of(own).radius, ray.owner);
  }
  for (int i = 0; i < count; ++i) {
    const Piece& piece = outline[static_cast<std::size_t>(i)];
    if (i != ray.owner) hold(piece.straight() ? touch_line(piece, ray) : touch_arc(piece, ray), i);
    hold(touch_corner(piece.from, ray), count + i);
  }
  return ball;
}

}  // namespace basinwright::shell::geometry
