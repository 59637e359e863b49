#include "basinwright/shell/long_section.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "basinwright/shell/parts.hpp"
#include "crossing.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;
using geometry::Plane;
using geometry::Vec;

using geometry::flush;
/// Lines tried across the pool for the longest one.
constexpr int trials = 200;
/// Nearer to the side than this share of the width a line shows a wall, not the floor.
constexpr double off_side = 0.05;

/// The section's frame: positions run along it, shares across it, both in local coordinates.
struct Frame {
  Vec along;
  Vec across;
  Extent length;
  Extent width;
  [[nodiscard]] Vec at(double position, double aside) const {
    return position * along + aside * across;
  }
};

Frame section_frame(const SectionAxis& axis, const Model& model) {
  const Vec along{axis.direction_x, axis.direction_y};
  const Vec across = geometry::left(along);
  return {
      along, across, extent_along(model.outline(), along), extent_along(model.outline(), across)};
}

Piece straight(Vec from, Vec to) {
  Piece line;
  line.from = from;
  line.to = to;
  return line;
}

/// The longest stretch of a line along the axis that lies inside; of no length when none does.
Piece chord(const Model& model, const Frame& frame, double aside) {
  const double beyond = 1.0;
  const Piece line = straight(frame.at(frame.length.from - beyond, aside),
                              frame.at(frame.length.to + beyond, aside));
  Piece longest = straight(line.from, line.from);
  for (const Piece& piece :
       geometry::split(line, geometry::cuts_by(line, model.outline(), flush))) {
    if (piece.length() > longest.length() && geometry::contains(model.outline(), piece.at(0.5))) {
      longest = piece;
    }
  }
  return longest;
}

/// The middle of the lines that are as long as the longest.
double aside_of_longest(const Model& model, const Frame& frame) {
  const double same = 1e-6;
  const double step = (frame.width.to - frame.width.from) / trials;
  const auto aside = [&](int i) { return frame.width.from + (i + 0.5) * step; };
  int first = 0;
  int last = 0;
  double longest = 0.0;
  for (int i = 0; i < trials; ++i) {
    const double length = chord(model, frame, aside(i)).length();
    if (length > longest * (1.0 + same)) {
      longest = length;
      first = last = i;
    } else if (length > longest * (1.0 - same) && last == i - 1) {
      last = i;
    }
  }
  return 0.5 * (aside(first) + aside(last));
}

/// The place the floor itself asks to be cut at, in world coordinates.
std::optional<Vec> asked(const Floor& floor) {
  if (const auto* hopper = std::get_if<HopperFloor>(&floor)) {
    const auto& r = hopper->inner;
    return geometry::middle({r[0].si(), r[1].si()}, {r[2].si(), r[3].si()});
  }
  if (const auto* spots = std::get_if<SpotDepthsFloor>(&floor)) {
    const auto deepest = std::ranges::max_element(spots->points, {}, &SpotDepth::depth);
    return Vec{deepest->x.si(), deepest->y.si()};
  }
  return std::nullopt;
}

Piece floor_line(const Pool& pool, const Model& model, const Frame& frame) {
  if (const auto place = asked(pool.floor)) {
    const Vec p = *place - model.ground.origin;
    const double aside = dot(frame.across, p);
    const double margin = off_side * (frame.width.to - frame.width.from);
    const bool clear = aside > frame.width.from + margin && aside < frame.width.to - margin;
    if (clear && geometry::contains(model.outline(), p)) return chord(model, frame, aside);
  }
  return chord(model, frame, aside_of_longest(model, frame));
}

/// The smallest footprint over a point, or none.
const Footprint* standing_at(const Model& model, Vec p) {
  const Footprint* found = nullptr;
  for (const Footprint& f : model.footprints) {
    if (geometry::contains(f.loop, p) && (found == nullptr || f.area < found->area)) found = &f;
  }
  return found;
}

std::vector<double> cuts_of(const Model& model, const Piece& line) {
  std::vector<double> cuts;
  const auto add = [&](const auto& more) { cuts.insert(cuts.end(), more.begin(), more.end()); };
  for (const Cell& cell : model.cells) {
    for (const geometry::HalfPlane& side : cell.sides) add(line.cuts(side));
  }
  for (const Footprint& f : model.footprints) add(geometry::cuts_by(line, f.loop, flush));
  return cuts;
}

/// The floor over one stretch of the line.
struct Tread {
  double from, from_depth, to, to_depth;
  bool on_feature;
  [[nodiscard]] double slope() const { return (to_depth - from_depth) / (to - from); }
};

/// Stretches joined where nothing changes.
std::vector<Tread> treads_of(const Model& model, const Piece& line, const Frame& frame) {
  std::vector<Tread> treads;
  for (const Piece& piece : geometry::split(line, cuts_of(model, line))) {
    if (piece.length() < flush) continue;
    const Vec middle = piece.at(0.5);
    const Footprint* const stand = standing_at(model, middle);
    const Plane depth =
        stand != nullptr ? geometry::level_plane(stand->depth) : cell_at(model.cells, middle).depth;
    const Tread tread{dot(frame.along, piece.from),
                      depth.at(piece.from),
                      dot(frame.along, piece.to),
                      depth.at(piece.to),
                      stand != nullptr};
    const bool goes_on = !treads.empty() && treads.back().on_feature == tread.on_feature &&
                         std::abs(treads.back().to_depth - tread.from_depth) < flush &&
                         std::abs(treads.back().slope() - tread.slope()) < flush;
    if (goes_on) {
      treads.back().to = tread.to;
      treads.back().to_depth = tread.to_depth;
    } else {
      treads.push_back(tread);
    }
  }
  return treads;
}

/// Metres in along the section line for each metre down a leaning wall.
double lean_seen(const Model& model, const Frame& frame, Vec end) {
  const auto nearest = std::ranges::min_element(
      model.outline(), {}, [&](const Piece& c) { return c.distance(end); });
  const Vec normal = nearest->right_normal(nearest->nearest(end));
  return model.lean / std::abs(dot(normal, frame.along));
}

/// Takes off what lies behind a leaning wall; `rim` is where it starts, `inwards` +1 or -1.
void trim(std::vector<Tread>& treads, double rim, double lean, double inwards) {
  if (lean <= 0.0) return;
  // How far behind the wall's face a point of the floor lies; it grows inwards.
  const auto clear = [&](double position, double depth) {
    return inwards * (position - rim) - lean * depth;
  };
  const bool first = inwards > 0.0;
  while (!treads.empty()) {
    Tread& t = first ? treads.front() : treads.back();
    const double outer = first ? clear(t.from, t.from_depth) : clear(t.to, t.to_depth);
    const double inner = first ? clear(t.to, t.to_depth) : clear(t.from, t.from_depth);
    if (outer >= 0.0) return;
    if (inner > 0.0) {
      const double share = outer / (outer - inner);
      const double slope = t.slope();
      const double run = share * (t.to - t.from);
      (first ? t.from : t.to) += inwards * run;
      (first ? t.from_depth : t.to_depth) += inwards * run * slope;
      return;
    }
    treads.erase(first ? treads.begin() : treads.end() - 1);
  }
}

std::vector<ProfilePoint> points_of(const std::vector<Tread>& treads, double shift) {
  std::vector<ProfilePoint> points;
  const auto add = [&](double position, double depth, bool on_feature) {
    points.push_back({Length::from_si(position + shift), Length::from_si(depth), on_feature});
  };
  for (std::size_t i = 0; i < treads.size(); ++i) {
    const Tread& t = treads[i];
    const bool joined = i > 0 && std::abs(treads[i - 1].to_depth - t.from_depth) < flush &&
                        treads[i - 1].on_feature == t.on_feature;
    if (!joined) add(t.from, t.from_depth, t.on_feature);
    add(t.to, t.to_depth, t.on_feature);
  }
  return points;
}

}  // namespace

LongSection long_section(const Pool& pool) {
  const Survey survey = surveyed(pool);
  const Model& model = survey.model;
  const SectionAxis axis = section_axis(pool);
  const Frame frame = section_frame(axis, model);
  const double shift = axis.first.si() - frame.length.from;
  const Piece line = floor_line(pool, model, frame);
  std::vector<Tread> treads = treads_of(model, line, frame);
  const double from = dot(frame.along, line.from);
  const double to = dot(frame.along, line.to);
  trim(treads, from, lean_seen(model, frame, line.from), 1.0);
  trim(treads, to, lean_seen(model, frame, line.to), -1.0);
  const Vec origin = model.ground.origin;
  return {Length::from_si(line.from.x + origin.x),
          Length::from_si(line.from.y + origin.y),
          Length::from_si(line.to.x + origin.x),
          Length::from_si(line.to.y + origin.y),
          Length::from_si(from + shift),
          Length::from_si(to + shift),
          points_of(treads, shift)};
}

}  // namespace basinwright::shell
