// The painted area cut across by planes, deep end first.
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/take_off.hpp"
#include "measured.hpp"

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::Vec;

constexpr double most_kits = 1e5;

// a + share x b
Painted mixed(const Painted& a, const Painted& b, double share) {
  return {a.floor + share * b.floor,
          a.walls + share * b.walls,
          a.treads + share * b.treads,
          a.risers + share * b.risers,
          a.cove_change + share * b.cove_change};
}

Painted painted_of(const Sums& sums, double cove) {
  return {sums.floor, sums.wall, sums.tread, sums.riser, sums.cove_change(cove)};
}

double mean_depth(const Model& model, const HalfPlane& side) {
  double volume = 0.0;
  double area = 0.0;
  for (const Cell& cell : model.cells) {
    const auto part = geometry::clip(geometry::clip(model.outline(), cell.sides), side);
    const geometry::Moments m = geometry::moments(part);
    volume += m.integral(cell.depth);
    area += m.area;
  }
  return volume / area;
}

/// A surveyed pool with its axis.
class Ruler {
 public:
  explicit Ruler(const Pool& pool) : survey_(surveyed(pool)) {
    Vec zero;
    if (const auto* breaks = std::get_if<BreaksFloor>(&pool.floor)) {
      direction_ = geometry::from_degrees(breaks->axis_deg);
      zero = {breaks->origin_x.si(), breaks->origin_y.si()};
    }
    zero_ = zero;
    shift_ = dot(direction_, survey_.model.ground.origin - zero);
    const Extent local = extent_along(survey_.model.outline(), direction_);
    extent_ = {local.from + shift_, local.to + shift_};
    const geometry::Moments m = geometry::moments(survey_.model.outline());
    const HalfPlane far{direction_, dot(direction_, m.first) / m.area};
    deep_last_ = mean_depth(survey_.model, far) >= mean_depth(survey_.model, far.flipped()) - 1e-9;
  }

  [[nodiscard]] const Survey& survey() const { return survey_; }
  [[nodiscard]] Vec direction() const { return direction_; }
  [[nodiscard]] Vec zero() const { return zero_; }
  [[nodiscard]] Extent extent() const { return extent_; }
  [[nodiscard]] bool deep_last() const { return deep_last_; }

  /// What is painted on the deep side of a position.
  [[nodiscard]] Painted beyond(double position) const {
    const HalfPlane far{direction_, position - shift_};
    return painted_beyond(survey_, deep_last_ ? far : far.flipped());
  }

  /// Position at a distance from the deep end.
  [[nodiscard]] double from_deep(double distance) const {
    return deep_last_ ? extent_.to - distance : extent_.from + distance;
  }

  /// The position itself, or that of a face across the axis that all but stands there.
  [[nodiscard]] double on_face(double position) const {
    constexpr double beside = 1e-8;
    for (const Upright& upright : survey_.surfaces.uprights) {
      const double from = dot(direction_, upright.curve.from) + shift_;
      const double to = dot(direction_, upright.curve.to) + shift_;
      const bool across = upright.curve.straight() && std::abs(from - to) < geometry::on_plane;
      if (across && std::abs(from - position) < beside) return from;
    }
    return position;
  }

  [[nodiscard]] std::vector<double> deep_first(const std::vector<Length>& cuts) const {
    std::vector<double> sorted;
    for (const Length cut : cuts) {
      if (!std::isfinite(cut.si())) throw std::invalid_argument("a cut is not finite");
      sorted.push_back(cut.si());
    }
    std::ranges::sort(sorted);
    if (deep_last_) std::ranges::reverse(sorted);
    return sorted;
  }

 private:
  Survey survey_;
  Vec direction_{1.0, 0.0};
  Vec zero_;
  double shift_ = 0.0;
  Extent extent_;
  bool deep_last_ = true;
};

// Distance from the deep end at which the painted area reaches the target: false position kept
// honest by halving, since the area jumps at faces across the axis.
double distance_to(const Ruler& ruler, double target, double low, double low_area) {
  const Extent extent = ruler.extent();
  double high = extent.to - extent.from;
  double high_area = ruler.beyond(ruler.from_deep(high)).total();
  if (high_area < target) return high;  // the rest is the end wall
  const double close = 1e-13 * std::max(1.0, target);
  for (int i = 0; i < 200 && high - low > 1e-13 * std::max(1.0, high); ++i) {
    double trial = 0.5 * (low + high);
    if (i % 3 != 2 && high_area > low_area) {
      trial = low + (high - low) * (target - low_area) / (high_area - low_area);
    }
    if (trial <= low || trial >= high) trial = 0.5 * (low + high);
    const double area = ruler.beyond(ruler.from_deep(trial)).total();
    if (std::abs(area - target) <= close) return trial;
    (area < target ? low : high) = trial;
    (area < target ? low_area : high_area) = area;
  }
  return high;
}

Part part_between(const Painted& nearer, const Painted& farther, double a, double b) {
  const Painted p = mixed(farther, nearer, -1.0);
  return {Length::from_si(std::min(a, b)),
          Length::from_si(std::max(a, b)),
          Area::from_si(p.floor),
          Area::from_si(p.walls),
          Area::from_si(p.steps()),
          Area::from_si(p.cove_change),
          Area::from_si(p.total()),
          Area::from_si(p.treads),
          Area::from_si(p.risers)};
}

// The position at which the painted area beyond comes to the target, and what lies beyond it then:
// of a face across the axis that stands there, so much as the target takes.
struct Reached {
  double position;
  Painted beyond;
};

Reached reach(const Ruler& ruler, double target) {
  constexpr double past_face = 1e-7;
  const Painted whole = painted(ruler.survey());
  const Extent extent = ruler.extent();
  if (target >= whole.total()) {
    return {ruler.from_deep(extent.to - extent.from), whole};
  }
  const double distance = distance_to(ruler, target, 0.0, 0.0);
  const double position = ruler.on_face(ruler.from_deep(distance));
  const Painted before = ruler.beyond(position);
  const double missing = target - before.total();
  const double at = std::abs(ruler.from_deep(0.0) - position);
  const bool last = at + past_face >= extent.to - extent.from;
  Painted after = whole;
  if (!last) {  // what grows with the distance taken off again
    after = ruler.beyond(ruler.from_deep(at + past_face));
    after = mixed(mixed(after, after, 1.0), ruler.beyond(ruler.from_deep(at + 2 * past_face)), -1);
  }
  const Painted face = mixed(after, before, -1.0);
  const bool inside = missing > 0.0 && face.total() > missing;
  return {position, inside ? mixed(before, face, missing / face.total()) : before};
}

}  // namespace

Painted painted(const Survey& survey) {
  if (survey.model.lean > 0.0) return {survey.lean.floor, survey.lean.wall, 0.0, 0.0, 0.0};
  return painted_of(sums_of(survey.surfaces, survey.model.water), survey.model.cove);
}

Painted painted_beyond(const Survey& survey, const HalfPlane& side) {
  if (survey.model.lean > 0.0) {
    const LeanSums sums = lean_sums(survey.model, {side});
    return {sums.floor, sums.wall, 0.0, 0.0, 0.0};
  }
  return painted_of(sums_of(clip(survey.surfaces, side), survey.model.water), survey.model.cove);
}

SectionAxis section_axis(const Pool& pool) {
  const Ruler ruler(pool);
  SectionAxis axis;
  axis.origin_x = Length::from_si(ruler.zero().x);
  axis.origin_y = Length::from_si(ruler.zero().y);
  axis.direction_x = ruler.direction().x;
  axis.direction_y = ruler.direction().y;
  axis.first = Length::from_si(ruler.extent().from);
  axis.last = Length::from_si(ruler.extent().to);
  axis.deep_end_last = ruler.deep_last();
  return axis;
}

SectionAreas section_areas(const Pool& pool, const std::vector<Length>& cuts) {
  SectionAreas areas{cuts, {}};
  for (const Part& part : parts(pool, cuts)) areas.deep_to_shallow.push_back(part.painted);
  return areas;
}

std::vector<Part> parts(const Pool& pool, const std::vector<Length>& cuts) {
  const Ruler ruler(pool);
  std::vector<Part> found;
  Painted nearer;
  double from = ruler.from_deep(0.0);
  for (const double cut : ruler.deep_first(cuts)) {
    const Painted farther = ruler.beyond(cut);
    const double to = std::clamp(cut, ruler.extent().from, ruler.extent().to);
    found.push_back(part_between(nearer, farther, from, to));
    nearer = farther;
    from = to;
  }
  const double end = ruler.deep_last() ? ruler.extent().from : ruler.extent().to;
  found.push_back(part_between(nearer, painted(ruler.survey()), from, end));
  return found;
}

std::vector<Part> parts_by_area(const Pool& pool, const std::vector<Area>& ends) {
  const Ruler ruler(pool);
  const Painted whole = painted(ruler.survey());
  std::vector<Part> found;
  Reached nearer{ruler.from_deep(0.0), {}};
  double least = 0.0;
  for (const Area end : ends) {
    const bool in_order = end.si() >= least && end.si() <= whole.total() * (1.0 + 1e-9);
    if (!in_order) throw std::invalid_argument("shares must follow each other inside the pool");
    least = end.si();
    const Reached farther = reach(ruler, least);
    found.push_back(part_between(nearer.beyond, farther.beyond, nearer.position, farther.position));
    nearer = farther;
  }
  const double end = ruler.deep_last() ? ruler.extent().from : ruler.extent().to;
  found.push_back(part_between(nearer.beyond, whole, nearer.position, end));
  return found;
}

std::vector<Length> kit_boundaries(const Pool& pool, Area kit_cover) {
  const double cover = kit_cover.si();
  if (!(cover > 0.0) || !std::isfinite(cover)) {
    throw std::invalid_argument("the cover of a kit must be more than 0");
  }
  const Ruler ruler(pool);
  const double total = painted(ruler.survey()).total();
  if (total / cover > most_kits) {
    throw std::invalid_argument("the cover of a kit is too small for this pool");
  }
  const double whole_kit = 1e-9;  // a rounding above a whole number of kits opens no new one
  std::vector<Length> found;
  double distance = 0.0;
  for (int k = 1; k * cover < total - whole_kit * cover; ++k) {
    distance = distance_to(ruler, k * cover, distance, (k - 1) * cover);
    found.push_back(Length::from_si(ruler.on_face(ruler.from_deep(distance))));
  }
  return found;
}

}  // namespace basinwright::shell
