#include "crossing.hpp"

#include <algorithm>
#include <numbers>
#include <numeric>

namespace basinwright::shell::geometry {

namespace {

void keep_if_on_both(std::vector<Vec>& points, Vec p, const Piece& a, const Piece& b, double gap) {
  if (a.distance(p) <= gap && b.distance(p) <= gap) points.push_back(p);
}

void straight_with_any(std::vector<Vec>& points, const Piece& line, const Piece& any, double gap) {
  for (const double u : any.cuts(left_of(line.from, line.to))) {
    const Vec p = any.at(u);
    if (line.distance(p) <= gap) points.push_back(p);
  }
}

void arc_with_arc(std::vector<Vec>& points, const Piece& a, const Piece& b, double gap) {
  const RoundLine p = circle_of(a);
  const RoundLine q = circle_of(b);
  const Vec between = q.centre - p.centre;
  const double d = norm(between);
  if (d <= gap) return;  // one circle, or no meeting
  const double along = (d * d + p.radius * p.radius - q.radius * q.radius) / (2.0 * d);
  const double under = p.radius * p.radius - along * along;
  if (under < -2.0 * gap * p.radius) return;
  const double aside = std::sqrt(std::max(0.0, under));
  const Vec foot = p.centre + along / d * between;
  for (const double sign : {1.0, -1.0}) {
    keep_if_on_both(points, foot + sign * aside / d * left(between), a, b, gap);
  }
}

// A circle and an ellipse meet in up to four points: found chord by chord.
void arc_with_ellipse(std::vector<Vec>& points,
                      const Piece& arc,
                      const Piece& ellipse,
                      double gap) {
  constexpr int chords = 64;
  for (int i = 0; i < chords; ++i) {
    Piece chord;
    chord.from = arc.at(static_cast<double>(i) / chords);
    chord.to = arc.at(static_cast<double>(i + 1) / chords);
    straight_with_any(points, chord, ellipse, gap);
  }
}

// Splitting makes several curves of one edge: they may share both ends only as a circle does.
bool shared_end(const Piece& a, const Piece& b, Vec p, double reach) {
  const auto close = [&](Vec q) { return norm(p - q) <= reach; };
  const auto joint = [&](Vec q, Vec r) { return norm(q - r) == 0.0 && close(q); };
  return joint(a.to, b.from) || joint(b.to, a.from);
}

}  // namespace

std::vector<Vec> meeting_points(const Piece& a, const Piece& b, double gap) {
  std::vector<Vec> points;
  if (a.straight()) {
    straight_with_any(points, a, b, gap);
  } else if (b.straight()) {
    straight_with_any(points, b, a, gap);
  } else if (a.ellipse && !b.ellipse) {
    arc_with_ellipse(points, b, a, gap);
  } else if (b.ellipse && !a.ellipse) {
    arc_with_ellipse(points, a, b, gap);
  } else if (!a.ellipse) {
    arc_with_arc(points, a, b, gap);
  }
  for (const Vec end : {a.from, a.to}) keep_if_on_both(points, end, a, b, gap);
  for (const Vec end : {b.from, b.to}) keep_if_on_both(points, end, a, b, gap);
  return points;
}

int first_self_crossing(const Loop& loop) {
  std::vector<Box> boxes;
  boxes.reserve(loop.size());
  Box whole;
  for (const Piece& c : loop) {
    boxes.push_back(box_of(c));
    whole.add(boxes.back().low);
    whole.add(boxes.back().high);
  }
  const double size = norm(whole.high - whole.low);
  const double gap = 1e-9 * std::max(1.0, size);
  // Tangent circles give their common point only to the square root of the rounding.
  const double reach = 1e-5 * std::max(1.0, size);
  const auto cross = [&](std::size_t i, std::size_t j) {
    if (boxes[i].apart(boxes[j], gap)) return false;
    return std::ranges::any_of(meeting_points(loop[i], loop[j], gap),
                               [&](Vec p) { return !shared_end(loop[i], loop[j], p, reach); });
  };
  // From left to right only pieces whose spans overlap can meet.
  std::vector<std::size_t> order(loop.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&](std::size_t i) { return boxes[i].low.x; });
  std::size_t first = loop.size();
  for (std::size_t k = 0; k < order.size(); ++k) {
    for (std::size_t l = k + 1; l < order.size(); ++l) {
      if (boxes[order[l]].low.x > boxes[order[k]].high.x + gap) break;
      const auto [i, j] = std::minmax(order[k], order[l]);
      if (i < first && cross(i, j)) first = i;
    }
  }
  return first == loop.size() ? -1 : static_cast<int>(first);
}

std::vector<double> cuts_by(const Piece& curve, const Loop& loop, double gap) {
  std::vector<double> cuts;
  const Box box = box_of(curve);
  for (const Piece& c : loop) {
    if (box.apart(box_of(c), gap)) continue;
    for (const Vec p : meeting_points(curve, c, gap)) cuts.push_back(curve.nearest(p));
  }
  return cuts;
}

}  // namespace basinwright::shell::geometry
