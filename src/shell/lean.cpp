#include "lean.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

#include "quadrature.hpp"
#include "rim_ball.hpp"
#include "surfaces.hpp"

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::nothing;
using geometry::Piece;
using geometry::Plane;
using geometry::RimRay;
using geometry::Vec;

// Exact for polynomials up to the third degree: a depth times a width.
template <class F>
double simpson(double a, double b, F f) {
  return b > a ? (b - a) / 6.0 * (f(a) + 4.0 * f(0.5 * (a + b)) + f(b)) : 0.0;
}

/// Depths on a ray between which something holds.
struct DepthSpan {
  double from = 0.0;
  double to = 0.0;
  void narrow(const HalfPlane& side, Vec start, Vec step) {
    const double here = side.at(start);
    const double slope = dot(side.normal, step);
    if (std::abs(slope) < nothing) {
      if (here < 0.0) to = from;
    } else if (slope > 0.0) {
      from = std::max(from, -here / slope);
    } else {
      to = std::min(to, -here / slope);
    }
  }
};

/// Where one ray runs and ends.
struct Course {
  struct Stretch {
    std::size_t cell;
    DepthSpan span;
  };
  std::vector<Stretch> stretches;
  double end = 0.0;
  bool on_floor = false;
  int held_by = -1;
  DepthSpan within;  ///< The part inside the half-planes asked for.
};

class Walls {
 public:
  Walls(const Model& model, const std::vector<HalfPlane>& within)
      : model_(model), within_(within) {}

  LeanSums sums() {
    add_flat();
    const auto& outline = model_.outline();
    bool any = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const bool reached = add_piece(i);
      any |= reached;
      if (outline[i].straight() && !reached) sums_.meet = true;
      add_fan(i);
    }
    sums_.meet |= !any;
    return sums_;
  }

 private:
  using MakeRay = std::function<RimRay(double)>;

  void add_flat() {
    for (const Cell& cell : model_.cells) {
      const auto part = geometry::clip(geometry::clip(model_.outline(), cell.sides), within_);
      if (part.empty()) continue;
      const geometry::Moments m = geometry::moments(part);
      sums_.toe += m.area;
      sums_.floor += cell.depth.stretch() * m.area;
      sums_.depth_volume += m.integral(cell.depth);
      sums_.volume += volume_below(part, cell.depth, model_.water);
    }
  }

  bool add_piece(std::size_t index) {
    const Piece& piece = model_.outline()[index];
    const MakeRay make = [&, index](double u) {
      const double pace = piece.pace(u);
      return RimRay{piece.at(u),
                    -1.0 * piece.right_normal(u),
                    pace,
                    -piece.curvature(u) * model_.lean * pace,
                    static_cast<int>(index)};
    };
    return add_rays(make, std::abs(piece.turning()));
  }

  // Round a reentrant corner at the start of the piece the nearest rim point is the corner itself.
  void add_fan(std::size_t index) {
    const auto& outline = model_.outline();
    const Piece& after = outline[index];
    const Piece& before = outline[(index + outline.size() - 1) % outline.size()];
    const Vec a = -1.0 * before.right_normal(1.0);
    const Vec b = -1.0 * after.right_normal(0.0);
    const double turn = std::atan2(cross(a, b), dot(a, b));
    if (turn > -1e-9) return;
    const MakeRay make = [&, turn, a](double u) {
      const Vec inwards = geometry::turned(a, {std::cos(u * turn), std::sin(u * turn)});
      return RimRay{after.from, inwards, 0.0, -turn * model_.lean, -1};
    };
    add_rays(make, -turn);
  }

  [[nodiscard]] Course course_of(const RimRay& ray) const {
    Course course;
    const Vec step = model_.lean * ray.inwards;
    const geometry::Ball ball = geometry::ball_at(model_.outline(), ray);
    course.held_by = ball.held_by;
    course.end = ball.radius / model_.lean;
    for (std::size_t c = 0; c < model_.cells.size(); ++c) {
      DepthSpan span{0.0, course.end};
      for (const HalfPlane& side : model_.cells[c].sides) span.narrow(side, ray.from, step);
      if (span.to - span.from > nothing) course.stretches.push_back({c, span});
    }
    std::ranges::sort(course.stretches, {}, [](const auto& s) { return s.span.from; });
    stop_at_floor(course, ray, step);
    course.within = {0.0, course.end};
    for (const HalfPlane& side : within_) course.within.narrow(side, ray.from, step);
    return course;
  }

  void stop_at_floor(Course& course, const RimRay& ray, Vec step) const {
    for (std::size_t i = 0; i < course.stretches.size(); ++i) {
      Course::Stretch& stretch = course.stretches[i];
      const Plane& depth = model_.cells[stretch.cell].depth;
      const double hit = depth.at(ray.from) / (1.0 - dot(depth.gradient, step));
      if (hit > stretch.span.to) continue;
      course.end = std::max(hit, stretch.span.from);
      course.on_floor = true;
      course.held_by = -1;
      stretch.span.to = course.end;
      course.stretches.resize(i + 1);
      return;
    }
  }

  // Two rays of one signature differ smoothly.
  [[nodiscard]] std::uint64_t signature(const RimRay& ray, const Course& course) const {
    std::uint64_t mark = 1469598103934665603ULL;
    const auto mix = [&](std::uint64_t value) { mark = (mark ^ value) * 1099511628211ULL; };
    const Vec step = model_.lean * ray.inwards;
    for (const Course::Stretch& s : course.stretches) {
      mix(s.cell);
      const Plane& depth = model_.cells[s.cell].depth;
      mix(depth.at(ray.from + s.span.from * step) > model_.water ? 1 : 0);
      mix(depth.at(ray.from + s.span.to * step) > model_.water ? 1 : 0);
      mix(s.span.from < course.within.from ? 1 : 0);
      mix(s.span.to > course.within.to ? 1 : 0);
      mix(s.span.to < course.within.from ? 1 : 0);
      mix(s.span.from > course.within.to ? 1 : 0);
    }
    mix(static_cast<std::uint64_t>(course.held_by) + 2);
    for (const double level : {model_.band, model_.water}) {
      mix(course.end > level ? 1 : 0);
      mix(course.within.from > level ? 1 : 0);
      mix(course.within.to > level ? 1 : 0);
    }
    mix(course.within.to > course.within.from ? 1 : 0);
    return mark;
  }

  struct Mark {
    double at;
    std::uint64_t value;
  };

  void find_changes(const MakeRay& make, Mark a, Mark b, std::vector<double>& changes) const {
    if (a.value == b.value) return;
    const double middle = 0.5 * (a.at + b.at);
    if (b.at - a.at < 1e-14) {
      changes.push_back(middle);
      return;
    }
    const RimRay ray = make(middle);
    const Mark m{middle, signature(ray, course_of(ray))};
    find_changes(make, a, m, changes);
    find_changes(make, m, b, changes);
  }

  bool add_rays(const MakeRay& make, double turning) {
    constexpr int samples = 32;
    constexpr double end = 1e-9;
    bool reached = false;
    std::vector<double> changes;
    Mark before{0.0, 0};
    for (int i = 0; i <= samples; ++i) {
      const double u = std::clamp(static_cast<double>(i) / samples, end, 1.0 - end);
      const RimRay ray = make(u);
      const Course course = course_of(ray);
      reached |= course.on_floor;
      const Mark now{u, signature(ray, course)};
      if (i > 0) find_changes(make, before, now, changes);
      before = now;
    }
    const int panels = 1 + static_cast<int>(turning / 0.5);
    for (int k = 1; k <= panels; ++k) changes.push_back(static_cast<double>(k) / panels);
    std::ranges::sort(changes);
    double from = 0.0;
    for (const double to : changes) {
      geometry::for_nodes(from, to, [&](double u, double weight) { add_ray(make(u), weight); });
      from = to;
    }
    return reached;
  }

  void add_ray(const RimRay& ray, double weight) {
    const Course course = course_of(ray);
    const Vec step = model_.lean * ray.inwards;
    const auto width = [&](double z) { return ray.width + ray.widening * z; };
    const DepthSpan shown = course.within;
    const double water = std::max(shown.from, model_.water);
    const double band = std::max(shown.from, model_.band);
    const double slant = std::sqrt(1.0 + model_.lean * model_.lean);
    sums_.wall += weight * slant * simpson(band, shown.to, width);
    weight *= model_.lean;
    sums_.depth_volume +=
        weight * simpson(shown.from, shown.to, [&](double z) { return z * width(z); });
    sums_.volume +=
        weight * simpson(water, shown.to, [&](double z) { return (z - model_.water) * width(z); });
    for (const Course::Stretch& stretch : course.stretches) {
      const double a = std::max(stretch.span.from, shown.from);
      const double b = std::min(stretch.span.to, shown.to);
      if (b <= a) continue;
      const Plane& depth = model_.cells[stretch.cell].depth;
      const auto under = [&](double z) { return depth.at(ray.from + z * step); };
      sums_.toe -= weight * simpson(a, b, width);
      sums_.floor -= weight * depth.stretch() * simpson(a, b, width);
      sums_.depth_volume -= weight * simpson(a, b, [&](double z) { return under(z) * width(z); });
      DepthSpan wet{a, b};
      const Plane above = depth - geometry::level_plane(model_.water);
      wet.narrow({above.gradient, -above.constant}, ray.from, step);
      sums_.volume -= weight * simpson(wet.from, wet.to, [&](double z) {
                        return (under(z) - model_.water) * width(z);
                      });
    }
  }

  const Model& model_;
  const std::vector<HalfPlane>& within_;
  LeanSums sums_;
};

}  // namespace

LeanSums lean_sums(const Model& model, const std::vector<HalfPlane>& within) {
  return Walls(model, within).sums();
}

}  // namespace basinwright::shell
