#include "basinwright/shell/flotation.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "plain.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;
using geometry::Plane;
using sources::Kind;
using sources::Source;
using trace::From;

// Outside plan = plan + perimeter t + corners t^2 for walls of even thickness.
double corner_factor(const geometry::Loop& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Piece& here = outline[i];
    const geometry::Vec a = here.right_normal(1.0);
    const geometry::Vec b = outline[(i + 1) % outline.size()].right_normal(0.0);
    sum += std::tan(0.5 * std::atan2(cross(a, b), dot(a, b))) + 0.5 * here.turning();
  }
  return sum;
}

double positive_integral(const Piece& piece, const Plane& height) {
  if (height.level()) return height.constant > 0.0 ? piece.integral(height) : 0.0;
  const double slope = geometry::norm(height.gradient);
  double sum = 0.0;
  for (const Piece& part :
       geometry::clip(piece, {(1.0 / slope) * height.gradient, -height.constant / slope})) {
    sum += part.integral(height);
  }
  return sum;
}

/// The concrete box round a pool without its features.
class Box {
 public:
  Box(Survey survey, double wall, double slab) : slab_(slab) {
    Model bare = std::move(survey.model);
    bare.footprints.clear();
    surfaces_ = surfaces_of(bare);
    const double perimeter = geometry::length(bare.outline());
    ring_ = wall + corner_factor(bare.outline()) * wall * wall / perimeter;
    for (const Flat& flat : surfaces_.flats) {
      const Plane height = geometry::level_plane(0.0) - underside(flat.depth);
      lowest_ = std::max(lowest_, -geometry::lowest(flat.loop, height).value);
      inside_ += geometry::moments(flat.loop).integral(flat.depth);
    }
  }

  /// Volume of the box, void included, below a depth.
  [[nodiscard]] double outside_below(double depth) const {
    double sum = 0.0;
    for (const Flat& flat : surfaces_.flats) {
      sum += flat.sign * volume_below(flat.loop, underside(flat.depth), depth);
    }
    for (const Upright& upright : surfaces_.uprights) {
      if (upright.face != Face::wall) continue;
      const Plane height = underside(upright.floor) - geometry::level_plane(depth);
      sum += ring_ * positive_integral(upright.curve, height);
    }
    return sum;
  }

  [[nodiscard]] double concrete() const { return outside_below(0.0) - inside_; }
  [[nodiscard]] double lowest() const { return lowest_; }

 private:
  [[nodiscard]] Plane underside(const Plane& floor) const {
    return {floor.constant + slab_ * floor.stretch(), floor.gradient};
  }

  Surfaces surfaces_;
  double slab_;
  double ring_ = 0.0;  ///< Plan of the walls by metre of rim.
  double inside_ = 0.0;
  double lowest_ = 0.0;
};

// Depth of groundwater at which the displaced volume comes to the given one.
std::optional<double> depth_displacing(const Box& box, double volume) {
  if (box.outside_below(0.0) <= volume) return std::nullopt;
  double displaces_more = 0.0;
  double displaces_less = box.lowest();
  for (int i = 0; i < 60; ++i) {
    const double trial = 0.5 * (displaces_more + displaces_less);
    (box.outside_below(trial) > volume ? displaces_more : displaces_less) = trial;
  }
  return 0.5 * (displaces_more + displaces_less);
}

void explain(const Box& box,
             double depth,
             const Flotation& f,
             const FlotationBasis& basis,
             trace::Trace& trace) {
  trace.note(
      "flotation.shell_kg",
      f.shell,
      "concrete * volume",
      {{"concrete", basis.concrete}, {"volume", units::Volume::from_si(box.concrete()), by_green}},
      "features left out");
  trace.note("flotation.displaced_kg",
             f.displaced,
             "water * volume",
             {{"water", basis.water},
              {"volume", units::Volume::from_si(box.outside_below(depth)), by_green}},
             "everything outside the concrete below the groundwater");
  if (f.neutral) {
    trace.note("flotation.neutral_below_rim_m",
               *f.neutral,
               "depth",
               {{"depth", *f.neutral, by_green}},
               "found by halving: groundwater here displaces as much as the shell weighs");
  }
  if (!std::isfinite(f.factor)) return;
  trace.note("flotation.factor",
             f.factor,
             "shell / displaced",
             {{"shell", f.shell, From{"flotation.shell_kg"}},
              {"displaced", f.displaced, From{"flotation.displaced_kg"}}},
             flotation_convention);
}

void require(bool holds, const char* what) {
  if (!holds) throw std::invalid_argument(what);
}

}  // namespace

FlotationVerdict flotation_verdict(double factor) {
  require(factor >= 0.0, "a factor against floating must not be negative");
  if (factor < floats_below.value) return FlotationVerdict::stop;
  return factor < clear_from.value ? FlotationVerdict::hold : FlotationVerdict::clear;
}

std::optional<Flotation> flotation(const Pool& pool,
                                   Length groundwater_below_rim,
                                   trace::Trace& trace,
                                   const FlotationBasis& basis) {
  require(std::isfinite(groundwater_below_rim.si()), "the groundwater's depth is not finite");
  require(basis.concrete.value.si() > 0.0 && basis.water.value.si() > 0.0,
          "densities must be more than 0");
  Survey survey = surveyed(pool);
  if (!pool.wall_thickness || !pool.slab_thickness) return std::nullopt;
  const Box box(std::move(survey), pool.wall_thickness->si(), pool.slab_thickness->si());
  const double depth = std::max(0.0, groundwater_below_rim.si());
  Flotation f;
  f.shell = basis.concrete.value * units::Volume::from_si(box.concrete());
  f.displaced = basis.water.value * units::Volume::from_si(box.outside_below(depth));
  f.factor =
      f.displaced.si() > 0.0 ? f.shell / f.displaced : std::numeric_limits<double>::infinity();
  f.verdict = flotation_verdict(f.factor);
  f.head = Length::from_si(std::max(0.0, box.lowest() - depth));
  if (const auto neutral = depth_displacing(box, (f.shell / basis.water.value).si())) {
    f.neutral = Length::from_si(*neutral);
  }
  if (trace.on()) explain(box, depth, f, basis, trace);
  return f;
}

Length slab_alone_head(Length slab_thickness, double factor, const FlotationBasis& basis) {
  require(slab_thickness.si() > 0.0, "the slab thickness must be more than 0");
  require(factor > 0.0, "the factor must be more than 0");
  return slab_thickness * (basis.concrete.value / basis.water.value) / factor;
}

}  // namespace basinwright::shell
