// Where cells of the floor meet, and where they do so at two depths.
#include <algorithm>

#include "floor.hpp"

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::Piece;
using geometry::Vec;

using geometry::flush;

bool back_to_back(const HalfPlane& a, const HalfPlane& b) {
  return dot(a.normal, b.normal) < -1.0 + 1e-12 && std::abs(a.offset + b.offset) < flush;
}

// Part of the line at the edge of `side` that lies in the box and in both cells.
struct Reach {
  Vec base;
  Vec along;
  double from;
  double to;
  void narrow(const HalfPlane& side) {
    const double slope = dot(side.normal, along);
    const double here = side.at(base);
    if (std::abs(slope) < 1e-12) {
      if (here < -flush) to = from;
    } else if (slope > 0.0) {
      from = std::max(from, -here / slope);
    } else {
      to = std::min(to, -here / slope);
    }
  }
};

Reach reach_of(const HalfPlane& side, const geometry::Box& within) {
  const Vec centre = geometry::middle(within.low, within.high);
  const double half = geometry::norm(within.high - within.low);
  const Vec base = centre - side.at(centre) * side.normal;
  return {base, geometry::left(side.normal), -half, half};
}

void add_drops_at(std::vector<Drop>& drops, const Seam& seam) {
  const geometry::Plane difference = seam.one - seam.other;
  const double a = difference.at(seam.line.from);
  const double b = difference.at(seam.line.to);
  if (std::max(std::abs(a), std::abs(b)) < flush) return;
  std::vector<double> sign_change;
  if (a * b < 0.0) sign_change.push_back(a / (a - b));
  for (const Piece& piece : geometry::split(seam.line, sign_change)) {
    const bool up = difference.at(piece.at(0.5)) < 0.0;
    drops.push_back({piece, up ? seam.other - seam.one : difference});
  }
}

void add_seams(std::vector<Seam>& seams,
               const Cell& a,
               const Cell& b,
               const geometry::Box& within) {
  for (const HalfPlane& p : a.sides) {
    for (const HalfPlane& q : b.sides) {
      if (!back_to_back(p, q)) continue;
      Reach reach = reach_of(p, within);
      for (const HalfPlane& other : a.sides) {
        if (&other != &p) reach.narrow(other);
      }
      for (const HalfPlane& other : b.sides) {
        if (&other != &q) reach.narrow(other);
      }
      if (reach.to - reach.from <= flush) continue;
      Piece line;
      line.from = reach.base + reach.from * reach.along;
      line.to = reach.base + reach.to * reach.along;
      seams.push_back({line, a.depth, b.depth});
    }
  }
}

}  // namespace

std::vector<Seam> seams_of(const std::vector<Cell>& cells, const geometry::Box& within) {
  std::vector<Seam> seams;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    for (std::size_t j = i + 1; j < cells.size(); ++j) {
      add_seams(seams, cells[i], cells[j], within);
    }
  }
  return seams;
}

std::vector<Drop> drops_of(const std::vector<Seam>& seams) {
  std::vector<Drop> drops;
  for (const Seam& seam : seams) add_drops_at(drops, seam);
  return drops;
}

}  // namespace basinwright::shell
