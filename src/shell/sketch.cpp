#include "basinwright/shell/sketch.hpp"

#include <cmath>

#include "crossing.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

using geometry::Piece;
using geometry::Vec;

using geometry::flush;

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

// Cells that carry on one plane meet without a line anybody sees.
bool seen(const Seam& seam) {
  const Vec p = seam.line.at(0.5);
  return geometry::norm(seam.one.gradient - seam.other.gradient) > flush ||
         std::abs(seam.one.at(p) - seam.other.at(p)) > flush;
}

void add_lines(Sketch& sketch, const Model& model, const Seam& seam) {
  for (const Piece& piece :
       geometry::split(seam.line, geometry::cuts_by(seam.line, model.outline(), flush))) {
    const Vec p = piece.at(0.5);
    const bool open = geometry::contains(model.outline(), p) &&
                      !geometry::near_boundary(model.outline(), p, geometry::contact);
    if (open) sketch.break_lines.push_back(line_of(piece, seam.one, model.ground.origin));
  }
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
  for (const Seam& seam : seams_of(model.cells, model.box)) {
    if (seen(seam)) add_lines(made, model, seam);
  }
  return made;
}

}  // namespace basinwright::shell
