#include "survey.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "limits.hpp"
#include "outlines.hpp"

namespace basinwright::shell {

namespace {

using geometry::Loop;
using geometry::Piece;
using geometry::Vec;

constexpr double least_lean = 1e-6;  // a micrometre a metre is upright

void check_scalars(const Pool& pool, Findings& findings) {
  findings.not_negative(pool.rim_to_paint, "/rim_to_paint", "the tile band");
  findings.not_negative(pool.rim_to_water, "/rim_to_water", "the depth of the water line");
  findings.not_negative(pool.cove_radius, "/cove_radius", "the cove radius");
  if (findings.finite(pool.wall_lean, "/wall_lean", "the lean") && pool.wall_lean < 0.0) {
    findings.refuse("negative", "/wall_lean", "walls that lean outwards are not foreseen");
  }
  const double tolerance = pool.tape_tolerance.share();
  if (findings.finite(tolerance, "/tape_tolerance", "the tolerance") &&
      (tolerance < 0.0 || tolerance >= 1.0)) {
    findings.refuse("tolerance-out-of-range", "/tape_tolerance", "it must lie from 0 to under 1");
  }
  if (pool.wall_thickness) {
    findings.positive(*pool.wall_thickness, "/wall_thickness", "the wall thickness");
  }
  if (pool.slab_thickness) {
    findings.positive(*pool.slab_thickness, "/slab_thickness", "the slab thickness");
  }
}

Loop quarters(const geometry::EllipseFrame& frame) {
  Loop loop;
  const double quarter = std::numbers::pi / 2.0;
  for (int i = 2; i < 6; ++i) {  // from the left end, as a circle starts
    Piece piece;
    piece.ellipse = geometry::EllipseArc{frame, i * quarter, (i + 1) * quarter};
    piece.from = loop.empty() ? frame.at(i * quarter) : loop.back().to;
    piece.to = i == 5 ? loop.front().from : frame.at((i + 1) * quarter);
    piece.wall = 0;
    loop.push_back(piece);
  }
  return loop;
}

Ground ground_of(const Plot& plot, const std::optional<Place>& place) {
  if (plot.ellipse) {
    geometry::EllipseFrame frame = *plot.ellipse;
    const Vec origin = moved_by(place, frame.centre);
    frame.centre = {};
    frame.axis = turned_by(place, frame.axis);
    return {origin, quarters(frame), {}};
  }
  Corners corners = plot.corners;
  const Vec first = corners.front().at;
  Ground ground{moved_by(place, first), {}, {}};
  for (Corner& c : corners) {
    c.at = turned_by(place, c.at - first);
    ground.corners.push_back(c.at);
  }
  ground.outline = loop_of(corners);
  return ground;
}

bool tied_to_walls(const Feature& feature) {
  return !std::holds_alternative<Block>(feature) && !std::holds_alternative<Pit>(feature);
}

void note_turning(const Pool& pool, const Plot& plot, Findings& findings) {
  const bool numbered = !pool.checks.empty() || std::ranges::any_of(pool.features, tied_to_walls);
  if (!plot.turned || !numbered) return;
  findings.warn("clockwise-outline",
                "/outline/points",
                "the points run clockwise: walls and corners are numbered the other way round "
                "from the first point",
                "list the points counter-clockwise");
}

// Walking round the pool ends at the first point; measured once more, it does not quite meet.
void doubt_closing(const Pool& pool, const Plot& plot, Findings& findings) {
  const bool walked = std::holds_alternative<Path>(pool.outline.shape) ||
                      std::holds_alternative<TwoTape>(pool.outline.shape);
  if (!walked || plot.corners.size() < 4) return;
  const Corner& first = plot.corners.front();
  const Corner& last = plot.turned ? plot.corners[1] : plot.corners.back();
  const double gap = geometry::norm(last.at - first.at);
  const double bulge = plot.turned ? first.bulge : last.bulge;
  if (gap >= limits::closing_edge.value.si() || bulge != 0.0) return;
  findings.warn(
      "closing-error",
      last.where,
      "the last point lies " + in_millimetres(gap) + " from the first and makes a wall of its own",
      "if it is the first point measured again, this is the closing error: leave the "
      "last point out");
}

Model model_of(const Pool& pool, Ground ground, std::vector<Cell> cells) {
  Model model;
  model.ground = std::move(ground);
  model.cells = std::move(cells);
  model.band = pool.rim_to_paint.si();
  model.water = pool.rim_to_water.si();
  model.cove = pool.cove_radius.si();
  model.lean = pool.wall_lean < least_lean ? 0.0 : pool.wall_lean;
  model.plan_area = geometry::moments(model.outline()).area;
  model.box = geometry::box_of(model.outline());
  model.drops = drops_of(seams_of(model.cells, model.box));
  return model;
}

void find_depths(const std::vector<Loop>& floors, Survey& survey) {
  survey.shallowest = 1e300;
  survey.deepest = -1e300;
  for (std::size_t i = 0; i < floors.size(); ++i) {
    const Loop& part = floors[i];
    if (part.empty()) continue;
    const Cell& cell = survey.model.cells[i];
    const geometry::Plane height = geometry::level_plane(0.0) - cell.depth;
    survey.shallowest = std::min(survey.shallowest, geometry::lowest(part, cell.depth).value);
    survey.deepest = std::max(survey.deepest, -geometry::lowest(part, height).value);
  }
}

}  // namespace

namespace {

std::optional<Survey> checked(const Pool& pool, Findings& findings) {
  check_scalars(pool, findings);
  const auto plotted = plot(pool.outline, findings);
  if (!plotted) {
    static_cast<void>(floor_cells(pool.floor, {}, findings));  // says what is wrong with it too
    return std::nullopt;
  }
  Ground ground = ground_of(*plotted, pool.outline.place);
  std::vector<Cell> cells = floor_cells(pool.floor, ground.origin, findings);
  auto footprints = footprints_of(pool.features, ground, findings);
  nest(footprints, ground.outline, findings);
  check_tapes(pool, ground, findings);
  note_turning(pool, *plotted, findings);
  doubt_closing(pool, *plotted, findings);
  if (cells.empty()) return std::nullopt;
  check_depths(footprints, cells, findings);
  Survey made;
  made.model = model_of(pool, std::move(ground), std::move(cells));
  made.model.footprints = std::move(footprints);
  const std::size_t before_cover = findings.refusals();
  check_cover(pool, made, findings);
  if (findings.refusals() != before_cover) return std::nullopt;
  if (!findings.fine()) made.model.footprints.clear();  // look for further faults without them
  std::vector<Loop> floors = floors_of(made.model);
  find_depths(floors, made);
  made.surfaces = surfaces_of(made.model, std::move(floors));
  check_band(made, findings);
  check_cove(made, findings);
  check_lean(pool, made, findings);
  if (!findings.fine()) return std::nullopt;
  return made;
}

}  // namespace

std::optional<Survey> survey(const Pool& pool, Findings& findings) {
  auto made = checked(pool, findings);
  if (!made) return std::nullopt;
  doubt_floor(pool, *made, findings);
  doubt_outline(*made, findings);
  return made;
}

Survey surveyed(const Pool& pool) {
  Findings findings;
  auto made = checked(pool, findings);
  if (made) return std::move(*made);
  for (const Fault& fault : findings.faults()) {
    if (!fault.warning) throw std::invalid_argument(fault.where + ": " + fault.message);
  }
  throw std::invalid_argument("the pool cannot be taken off");
}

}  // namespace basinwright::shell
