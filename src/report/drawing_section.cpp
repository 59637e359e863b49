// The long section: floor, walls, cove, tile band and water line from the side.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing_layout.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Label;
using document::Leg;
using document::Shape;

std::vector<Spot> floor_of(const Scene& scene, const Layout& layout) {
  std::vector<Spot> floor;
  for (const shell::ProfilePoint& p : scene.section.profile) {
    floor.push_back({layout.x_of(p.position), layout.y_of(p.depth)});
  }
  return floor;
}

Spot towards(Spot from, Spot to, double by) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  return {from.x + by / length * (to.x - from.x), from.y + by / length * (to.y - from.y)};
}

/// How far from the corner between two lines a rounding of that radius begins; nothing where the
/// lines are too short for it.
double tangent(Spot corner, Spot one, Spot other, double radius) {
  const double a = std::hypot(one.x - corner.x, one.y - corner.y);
  const double b = std::hypot(other.x - corner.x, other.y - corner.y);
  if (radius <= 0.0 || a <= 0.0 || b <= 0.0) return 0.0;
  const double cos =
      ((one.x - corner.x) * (other.x - corner.x) + (one.y - corner.y) * (other.y - corner.y)) /
      (a * b);
  const double reach = radius * std::sqrt((1.0 + cos) / (1.0 - cos));
  return reach < std::min(a, b) ? reach : 0.0;
}

/// From the rim down the first wall, along the floor and up to the rim again.
Trail profile(const Scene& scene, const Layout& layout) {
  const std::vector<Spot> floor = floor_of(scene, layout);
  const auto& points = scene.section.profile;
  const double radius = layout.view.scale * scene.pool().cove_radius.si();
  const Spot first{layout.x_of(scene.section.from), layout.section.top};
  const Spot last{layout.x_of(scene.section.to), layout.section.top};
  const bool turns_left = first.x < last.x;
  Trail trail{first, {}, false};
  for (std::size_t i = 0; i < floor.size(); ++i) {
    const bool start = i == 0;
    const bool end = i + 1 == floor.size();
    const Spot before = start ? first : floor[i - 1];
    const Spot after = end ? last : floor[i + 1];
    const bool coved = (start || end) && !points[i].on_feature;
    const double reach = coved ? tangent(floor[i], before, after, radius) : 0.0;
    if (reach > 0.0) {
      trail.legs.push_back({towards(floor[i], before, reach)});
      trail.legs.push_back(
          {towards(floor[i], after, reach), radius, radius, 0.0, false, !turns_left});
    } else {
      trail.legs.push_back({floor[i]});
    }
  }
  trail.legs.push_back({last});
  return trail;
}

void draw_shell(Sheet& sheet, const Scene& scene, const Layout& layout) {
  Trail region = profile(scene, layout);
  region.closed = true;
  const Box& box = layout.section;
  const auto level = [&](Length depth, document::Pen pen, std::string name) {
    const double y = layout.y_of(depth);
    Shape line;
    line.name = std::move(name);
    line.trails = {segment({box.left, y}, {box.right, y})};
    line.pen = pen;
    line.within = {region};
    sheet.draw(std::move(line));
  };
  level(scene.pool().rim_to_water, pens::water, "water-line");
  if (scene.pool().rim_to_paint > Length()) {
    level(scene.pool().rim_to_paint, pens::fine, "tile-band");
  }
  sheet.line({box.left, box.top}, {box.right, box.top}, pens::fine, "rim");
  region.closed = false;
  Shape walls;
  walls.name = "long-section";
  walls.trails = {std::move(region)};
  walls.pen = pens::rim;
  sheet.draw(std::move(walls));
}

/// Keeps labels clear of the floor.
void harden(Sheet& sheet, const std::vector<Spot>& floor) {
  constexpr double apart = 0.5;
  for (std::size_t i = 1; i < floor.size(); ++i) {
    const Spot a = floor[i - 1];
    const Spot b = floor[i];
    const int count = 1 + static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / apart);
    for (int k = 0; k <= count; ++k) {
      const double share = static_cast<double>(k) / count;
      sheet.taken().hard({a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)});
    }
  }
}

/// A depth under its place on the floor, in the first row with room for it.
void label_depth(Sheet& sheet, const std::string& text, Spot at) {
  constexpr std::array<double, 3> rows{2.7, 5.3, 7.9};
  const double width = text_width(text, letters::label);
  std::vector<Label> ways;
  std::vector<Box> boxes;
  for (const double row : rows) {
    for (const double aside : {0.0, -0.5, 0.5}) {
      ways.push_back(centred(text, {at.x + aside * (width + 0.6), at.y + row}, letters::label));
      ways.back().name = "depth";
      boxes.push_back(box_of(ways.back()));
    }
  }
  if (const auto found = sheet.taken().best(boxes)) sheet.write(ways[*found]);
}

void label_profile(Sheet& sheet, const Scene& scene, const Layout& layout) {
  const auto& points = scene.section.profile;
  const std::vector<Spot> floor = floor_of(scene, layout);
  harden(sheet, floor);
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!points[i].on_feature)
      label_depth(sheet, scene.cells.length(points[i].depth).text, floor[i]);
  }
  for (std::size_t i = 1; i < points.size(); ++i) {
    const bool tread =
        points[i].on_feature && points[i - 1].on_feature && points[i].depth == points[i - 1].depth;
    if (!tread) continue;
    label_depth(sheet,
                scene.cells.length(points[i].depth).text,
                {0.5 * (floor[i].x + floor[i - 1].x), floor[i].y});
  }
}

/// From wall to break to wall along the floor.
void label_lengths(Sheet& sheet, const Scene& scene, const Layout& layout) {
  std::vector<Length> stops{scene.section.from};
  const auto add = [&stops](Length position) {
    if (position - stops.back() > units::millimetres(1.0)) stops.push_back(position);
  };
  const auto& profile = scene.section.profile;
  for (std::size_t i = 0; i < profile.size(); ++i) {
    if (!profile[i].on_feature) add(profile[i].position);
  }
  add(scene.section.to);
  std::vector<Measure> chain;
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const double a = layout.x_of(stops[i - 1]);
    const double b = layout.x_of(stops[i]);
    chain.push_back(
        {std::min(a, b), std::max(a, b), scene.cells.length(stops[i] - stops[i - 1]).text});
  }
  std::ranges::sort(chain, {}, &Measure::from);
  const double y = layout.section.bottom + gutters::section_below - 4.5;
  dimensions_across(sheet, chain, y, y - 2.0);
}

void label_ends(Sheet& sheet, const Scene& scene, const Layout& layout) {
  for (const Length end : {scene.section.from, scene.section.to}) {
    const double x = layout.x_of(end);
    const double outwards = x < layout.section.middle().x ? -3.0 : 3.0;
    Label label = centred("A", {x + outwards, layout.section.top + 1.2}, letters::text);
    label.name = "section-line";
    label.bold = true;
    sheet.write(std::move(label));
  }
}

}  // namespace

void draw_long_section(Sheet& sheet, const Scene& scene, const Layout& layout) {
  Label caption;
  caption.name = "caption";
  caption.text = fmt::format(say::long_section_a_a_1, layout.denominator);
  caption.at = {sheet.content().left, layout.section.top - 3.5};
  caption.size = letters::text;
  caption.bold = true;
  sheet.write(std::move(caption));
  draw_shell(sheet, scene, layout);
  label_ends(sheet, scene, layout);
  label_profile(sheet, scene, layout);
  label_lengths(sheet, scene, layout);
}

}  // namespace basinwright::report
