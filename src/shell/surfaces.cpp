#include "surfaces.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

#include "crossing.hpp"

namespace basinwright::shell {

namespace {

using geometry::contact;
using geometry::HalfPlane;
using geometry::Loop;
using geometry::Piece;
using geometry::Plane;
using geometry::Vec;

using geometry::beside;
constexpr double flush_on_wall = 1e-7;

std::vector<double> cell_cuts(const Piece& curve, const std::vector<Cell>& cells) {
  std::vector<double> cuts;
  for (const Cell& cell : cells) {
    for (const HalfPlane& side : cell.sides) {
      const auto found = curve.cuts(side);
      cuts.insert(cuts.end(), found.begin(), found.end());
    }
  }
  return cuts;
}

void add_footprint_cuts(std::vector<double>& cuts, const Piece& curve, const Model& model) {
  if (model.footprints.empty()) return;
  const geometry::Box box = geometry::box_of(curve);
  for (const Footprint& f : model.footprints) {
    if (box.apart(f.box, contact)) continue;
    const auto found = geometry::cuts_by(curve, f.loop, contact);
    cuts.insert(cuts.end(), found.begin(), found.end());
  }
}

// Depth of what lies beside a piece, to its right (1) or left (-1).
Plane depth_beside(const Model& model, const Piece& piece, int footprint, double towards_right) {
  if (footprint >= 0) {
    return geometry::level_plane(model.footprints[static_cast<std::size_t>(footprint)].depth);
  }
  const Vec there = piece.at(0.5) + towards_right * beside * piece.right_normal(0.5);
  return cell_at(model.cells, there).depth;
}

void add_walls(Surfaces& made, const Model& model) {
  for (const Piece& edge : model.outline()) {
    std::vector<double> cuts = cell_cuts(edge, model.cells);
    add_footprint_cuts(cuts, edge, model);
    for (const Piece& piece : geometry::split(edge, cuts)) {
      const int foot = against_wall(model, piece);
      const Plane depth = depth_beside(model, piece, foot, -1.0);
      made.uprights.push_back(
          {Face::wall, piece, depth - geometry::level_plane(model.band), foot < 0, depth, foot});
    }
  }
}

// Faces shared with an earlier footprint were counted with that one.
bool counted(const Model& model, std::size_t index, const Piece& piece) {
  for (std::size_t i = 0; i < index; ++i) {
    if (geometry::lies_along(piece, model.footprints[i].loop, contact)) return true;
  }
  return geometry::lies_along(piece, model.outline(), contact);
}

void add_risers(Surfaces& made, const Model& model, std::size_t index) {
  for (const Piece& edge : model.footprints[index].loop) {
    std::vector<double> cuts = cell_cuts(edge, model.cells);
    add_footprint_cuts(cuts, edge, model);
    const auto touches = geometry::cuts_by(edge, model.outline(), contact);
    cuts.insert(cuts.end(), touches.begin(), touches.end());
    for (const Piece& piece : geometry::split(edge, cuts)) {
      if (counted(model, index, piece)) continue;
      const Sides sides = sides_of_edge(model, index, piece);
      const Plane inner = depth_beside(model, piece, sides.inner, -1.0);
      const Plane outer = depth_beside(model, piece, sides.outer, 1.0);
      const bool raised = outer.at(piece.at(0.5)) >= inner.at(piece.at(0.5));
      const Plane height = raised ? outer - inner : inner - outer;
      const bool step = raised && height.at(piece.at(0.5)) > flush_on_wall;
      made.uprights.push_back({Face::riser, piece, height, false, outer, -1, step});
    }
  }
}

bool on_open_floor(const Model& model, const Piece& piece) {
  const Vec p = piece.at(0.5);
  if (!geometry::contains(model.outline(), p)) return false;
  if (geometry::lies_along(piece, model.outline(), flush_on_wall)) return false;
  return std::ranges::none_of(model.footprints, [&](const Footprint& f) {
    return geometry::contains(f.loop, p) || geometry::lies_along(piece, f.loop, contact);
  });
}

void add_drops(Surfaces& made, const Model& model) {
  for (const Drop& drop : model.drops) {
    std::vector<double> cuts = geometry::cuts_by(drop.line, model.outline(), flush_on_wall);
    add_footprint_cuts(cuts, drop.line, model);
    for (const Piece& piece : geometry::split(drop.line, cuts)) {
      if (!on_open_floor(model, piece)) continue;
      made.uprights.push_back({Face::floor, piece, drop.height, false, {}, -1});
    }
  }
}

void add_flat(Surfaces& made, Flat flat) {
  if (!flat.loop.empty()) made.flats.push_back(std::move(flat));
}

void add_floor(Surfaces& made, const Model& model, std::vector<Loop> floors) {
  for (std::size_t i = 0; i < floors.size(); ++i) {
    const Cell& cell = model.cells[i];
    add_flat(made, {Face::floor, std::move(floors[i]), cell.depth, 1.0});
    for (const Footprint& f : model.footprints) {
      if (f.parent >= 0) continue;
      add_flat(made, {Face::floor, geometry::clip(f.loop, cell.sides), cell.depth, -1.0});
    }
  }
}

void add_tops(Surfaces& made, const Model& model) {
  const auto face = [](const Footprint& f) { return f.sinks ? Face::floor : Face::tread; };
  for (const Footprint& f : model.footprints) {
    add_flat(made, {face(f), f.loop, geometry::level_plane(f.depth), 1.0});
    if (f.parent < 0) continue;
    const Footprint& under = model.footprints[static_cast<std::size_t>(f.parent)];
    add_flat(made, {face(under), f.loop, geometry::level_plane(under.depth), -1.0});
  }
}

void add(Sums& sums, Face face, double area) {
  switch (face) {
    case Face::floor:
      sums.floor += area;
      break;
    case Face::tread:
      sums.tread += area;
      break;
    case Face::wall:
      sums.wall += area;
      break;
    case Face::riser:
      sums.riser += area;
      break;
  }
}

}  // namespace

std::vector<Loop> floors_of(const Model& model) {
  std::vector<Loop> floors;
  floors.reserve(model.cells.size());
  for (const Cell& cell : model.cells)
    floors.push_back(geometry::clip(model.outline(), cell.sides));
  return floors;
}

Surfaces surfaces_of(const Model& model) {
  return surfaces_of(model, floors_of(model));
}

Surfaces surfaces_of(const Model& model, std::vector<Loop> floors) {
  Surfaces made;
  add_floor(made, model, std::move(floors));
  add_tops(made, model);
  add_walls(made, model);
  for (std::size_t i = 0; i < model.footprints.size(); ++i) add_risers(made, model, i);
  add_drops(made, model);
  return made;
}

double Sums::cove_change(double radius) const {
  return (std::numbers::pi / 2.0 - 2.0) * radius * cove_length;
}

double Sums::cove_volume_change(double radius) const {
  return -(1.0 - std::numbers::pi / 4.0) * radius * radius * cove_length;
}

geometry::Moments wet_moments(const Loop& loop, const Plane& depth, double water) {
  const Plane wet = depth - geometry::level_plane(water);
  if (geometry::lowest(loop, wet).value >= 0.0) return geometry::moments(loop);
  if (wet.level()) return {};
  const double slope = geometry::norm(wet.gradient);
  return geometry::moments(
      geometry::clip(loop, {(1.0 / slope) * wet.gradient, -wet.constant / slope}));
}

double volume_below(const Loop& loop, const Plane& depth, double water) {
  return wet_moments(loop, depth, water).integral(depth - geometry::level_plane(water));
}

Sums sums_of(const Surfaces& surfaces, double water) {
  Sums sums;
  for (const Flat& flat : surfaces.flats) {
    const geometry::Moments m = flat.sign * geometry::moments(flat.loop);
    add(sums, flat.face, flat.depth.stretch() * m.area);
    sums.depth_volume += m.integral(flat.depth);
    sums.volume += flat.sign * volume_below(flat.loop, flat.depth, water);
  }
  for (const Upright& upright : surfaces.uprights) {
    add(sums, upright.face, upright.curve.integral(upright.height));
    if (upright.coved) sums.cove_length += upright.curve.length();
    if (upright.step) sums.step_edge += upright.curve.length();
  }
  return sums;
}

Surfaces clip(const Surfaces& surfaces, const HalfPlane& side) {
  Surfaces kept;
  for (const Flat& flat : surfaces.flats) {
    Flat part = flat;
    part.loop = geometry::clip(flat.loop, side);
    add_flat(kept, std::move(part));
  }
  for (const Upright& upright : surfaces.uprights) {
    for (const Piece& piece : geometry::clip(upright.curve, side)) {
      Upright part = upright;
      part.curve = piece;
      kept.uprights.push_back(part);
    }
  }
  return kept;
}

}  // namespace basinwright::shell
