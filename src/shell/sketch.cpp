#include "basinwright/shell/sketch.hpp"

#include <algorithm>
#include <cmath>

#include "crossing.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::HalfPlane;
using geometry::Piece;
using geometry::Vec;

PathPoint placed(Vec p, Vec origin, double bulge) {
  return {Length::from_si(p.x + origin.x), Length::from_si(p.y + origin.y), bulge};
}

VertexPath path_of(const geometry::Loop& loop, Vec origin) {
  VertexPath path;
  for (const Piece& piece : loop) path.push_back(placed(piece.from, origin, piece.bulge));
  return path;
}

FloorLine line_of(const Piece& piece, const geometry::Plane& depth, Vec origin) {
  return {Length::from_si(piece.from.x + origin.x),
          Length::from_si(piece.from.y + origin.y),
          Length::from_si(depth.at(piece.from)),
          Length::from_si(piece.to.x + origin.x),
          Length::from_si(piece.to.y + origin.y),
          Length::from_si(depth.at(piece.to))};
}

// The edge of a cell along one of its sides, as long as the box allows.
Piece edge_of(const Cell& cell, std::size_t side, const geometry::Box& box) {
  const HalfPlane& line = cell.sides[side];
  const Vec centre = geometry::middle(box.low, box.high);
  const Vec base = centre - line.at(centre) * line.normal;
  const Vec reach = geometry::norm(box.high - box.low) * geometry::left(line.normal);
  Piece edge;
  edge.from = base + reach;
  edge.to = base - reach;
  return edge;
}

// Cells that carry on one plane meet without a line anybody sees.
bool changes_plane(const Model& model, const Piece& piece) {
  const Vec aside = 1e-6 * piece.right_normal(0.5);
  const geometry::Plane& a = cell_at(model.cells, piece.at(0.5) + aside).depth;
  const geometry::Plane& b = cell_at(model.cells, piece.at(0.5) - aside).depth;
  return geometry::norm(a.gradient - b.gradient) > 1e-9 ||
         std::abs(a.at(piece.at(0.5)) - b.at(piece.at(0.5))) > 1e-9;
}

void add_edge(Sketch& sketch, const Model& model, const Cell& cell, std::size_t side) {
  std::vector<Piece> kept{edge_of(cell, side, model.box)};
  for (std::size_t i = 0; i < cell.sides.size(); ++i) {
    if (i == side || kept.empty()) continue;
    kept = geometry::clip(kept.front(), cell.sides[i]);
  }
  if (kept.empty()) return;
  for (const Piece& piece :
       geometry::split(kept.front(), geometry::cuts_by(kept.front(), model.outline(), 1e-9))) {
    const Vec p = piece.at(0.5);
    const bool open = geometry::contains(model.outline(), p) &&
                      !geometry::near_boundary(model.outline(), p, geometry::contact);
    if (open && changes_plane(model, piece))
      sketch.break_lines.push_back(line_of(piece, cell.depth, model.ground.origin));
  }
}

bool same_place(const FloorLine& a, const FloorLine& b) {
  const auto close = [](Length p, Length q) { return units::abs(p - q).si() < 1e-6; };
  const bool forth = close(a.from_x, b.from_x) && close(a.from_y, b.from_y) &&
                     close(a.to_x, b.to_x) && close(a.to_y, b.to_y);
  const bool back = close(a.from_x, b.to_x) && close(a.from_y, b.to_y) && close(a.to_x, b.from_x) &&
                    close(a.to_y, b.from_y);
  return forth || back;
}

// Two cells share an edge; one line is drawn for both.
void drop_doubles(std::vector<FloorLine>& lines) {
  std::vector<FloorLine> kept;
  for (const FloorLine& line : lines) {
    const auto drawn = [&](const FloorLine& other) { return same_place(line, other); };
    if (std::ranges::none_of(kept, drawn)) kept.push_back(line);
  }
  lines = std::move(kept);
}

}  // namespace

Sketch sketch(const Pool& pool) {
  const Survey survey = surveyed(pool);
  const Model& model = survey.model;
  Sketch made;
  made.outline = std::get<OutlinePath>(outline_path(pool.outline));
  for (const Footprint& f : model.footprints) {
    made.footprints.push_back(path_of(f.loop, model.ground.origin));
  }
  for (const Cell& cell : model.cells) {
    for (std::size_t i = 0; i < cell.sides.size(); ++i) add_edge(made, model, cell, i);
  }
  drop_doubles(made.break_lines);
  return made;
}

}  // namespace basinwright::shell
