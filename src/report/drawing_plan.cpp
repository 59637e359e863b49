// The lines of the plan view.
#include <algorithm>

#include "drawing_layout.hpp"

namespace basinwright::report {
namespace {

using document::Fill;
using document::Pen;
using document::Shape;

/// Distance between the two lines that stand for the tile band.
constexpr double band_width = 0.9;

Shape path_of(std::string name, Trail trail, Pen pen) {
  Shape shape;
  shape.name = std::move(name);
  shape.trails = {std::move(trail)};
  shape.pen = pen;
  return shape;
}

void draw_coat(Sheet& sheet, const Scene& scene, const Layout& layout, const Trail& outline) {
  if (!scene.cut()) return;
  for (std::size_t i = 0; i < scene.coat.size(); ++i) {
    const CoatPart& part = scene.coat[i];
    if (part.to <= part.from) continue;
    Shape shape = path_of("coat-section", outline, {});
    shape.fill = pattern_of(i);
    shape.within = {strip(scene, layout.view, part.from, part.to)};
    sheet.draw(std::move(shape));
  }
}

/// A second line inside the rim: a broad stroke seen only inside, its middle wiped out.
void draw_band(Sheet& sheet, const Scene& scene, const Trail& outline) {
  if (scene.pool().rim_to_paint <= Length()) return;
  Pen pen{2.0 * band_width};
  Shape ink = path_of("tile-band", outline, pen);
  ink.within = {outline};
  sheet.draw(ink);
  pen.width -= 2.0 * pens::fine.width;
  pen.white = true;
  Shape paper = path_of("tile-band", outline, pen);
  paper.within = {outline};
  sheet.draw(paper);
}

void draw_features(Sheet& sheet, const Scene& scene, const Layout& layout) {
  for (const shell::Level& level : scene.plan.levels) {
    sheet.draw(path_of("feature", trail_of(level.path, layout.view), pens::edge));
    for (const PathSpot& s : spots_along(level.path, layout.view)) sheet.taken().soft(s.at);
  }
}

void draw_breaks(Sheet& sheet, const Scene& scene, const Layout& layout) {
  for (const shell::BreakLine& b : scene.plan.breaks) {
    const Spot from = layout.view.at(b.line.from_x, b.line.from_y);
    const Spot to = layout.view.at(b.line.to_x, b.line.to_y);
    sheet.line(from, to, b.drops() ? pens::edge : pens::broken, b.drops() ? "drop" : "break-line");
    sheet.soften(from, to);
  }
}

void draw_cuts(Sheet& sheet, const Scene& scene, const Layout& layout, const Trail& outline) {
  for (std::size_t i = 1; i < scene.coat.size(); ++i) {
    const CoatPart& before = scene.coat[i - 1];
    const Length at = scene.axis.deep_end_last ? before.from : before.to;
    if (at <= scene.axis.first || at >= scene.axis.last) continue;
    const Trail line = strip(scene, layout.view, at, at);
    Shape shape = path_of("coat-cut", segment(line.from, line.legs[1].to), pens::cut);
    shape.within = {outline};
    sheet.draw(std::move(shape));
  }
}

void draw_section_line(Sheet& sheet, const Scene& scene, const Layout& layout) {
  constexpr double beyond = 3.0;
  const shell::LongSection& s = scene.section;
  const Spot from = layout.view.at(s.from_x, s.from_y);
  const Spot to = layout.view.at(s.to_x, s.to_y);
  const Spot on = layout.view.direction(scene.axis.direction_x, scene.axis.direction_y);
  const Spot a{from.x - beyond * on.x, from.y - beyond * on.y};
  const Spot b{to.x + beyond * on.x, to.y + beyond * on.y};
  sheet.line(a, b, pens::chain, "section-line");
  sheet.soften(a, b);
}

}  // namespace

void draw_plan(Sheet& sheet, const Scene& scene, const Layout& layout) {
  const Trail outline = trail_of(scene.plan.outline, layout.view);
  draw_coat(sheet, scene, layout, outline);
  draw_band(sheet, scene, outline);
  draw_features(sheet, scene, layout);
  draw_breaks(sheet, scene, layout);
  draw_cuts(sheet, scene, layout, outline);
  draw_section_line(sheet, scene, layout);
  sheet.draw(path_of("outline", outline, pens::rim));
  for (const PathSpot& s : spots_along(scene.plan.outline, layout.view)) sheet.taken().hard(s.at);
}

}  // namespace basinwright::report
