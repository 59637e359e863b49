// Words round the plan view: overall dimensions, the section's ends, walls.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing_layout.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Label;
using document::Shape;

void label_overall(Sheet& sheet, const Scene& scene, const Layout& layout) {
  const Box& plan = layout.plan;
  dimensions_across(sheet,
                    {{plan.left, plan.right, scene.cells.length(scene.right.length()).text}},
                    plan.bottom + gutters::below - 4.0,
                    plan.bottom + 1.0);
  dimension_up(sheet,
               {plan.top, plan.bottom, scene.cells.length(scene.up.length()).text},
               plan.left - gutters::left + 4.0,
               plan.left - 1.0);
}

/// The parts of the coat along the top, from cut to cut.
void label_cuts(Sheet& sheet, const Scene& scene, const Layout& layout) {
  if (!scene.cut() || !scene.below) return;
  std::vector<Measure> chain;
  for (const CoatPart& coat : scene.coat) {
    const Length length = coat.to - coat.from;
    if (length <= Length()) continue;
    const double a = layout.x_of(coat.from);
    const double b = layout.x_of(coat.to);
    chain.push_back({std::min(a, b), std::max(a, b), scene.cells.length(length).text});
  }
  std::ranges::sort(chain, {}, &Measure::from);
  dimensions_across(sheet, chain, layout.plan.top - gutters::above - 2.5, layout.plan.top - 1.0);
}

/// The letter at both ends of the line of the long section.
void label_section_line(Sheet& sheet, const Scene& scene, const Layout& layout) {
  constexpr double beyond = 4.6;
  const shell::LongSection& s = scene.section;
  const Spot on = layout.view.direction(scene.axis.direction_x, scene.axis.direction_y);
  const std::array<Spot, 2> ends{layout.view.at(s.from_x, s.from_y),
                                 layout.view.at(s.to_x, s.to_y)};
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const double away = i == 0 ? -beyond : beyond;
    Label label = centred("A", {ends[i].x + away * on.x, ends[i].y + away * on.y}, letters::text);
    label.name = "section-line";
    label.bold = true;
    sheet.write(std::move(label));
  }
}

/// A wall's number in a ring, with its length beside or above it.
struct Tag {
  std::string number;
  std::string length;
  bool upright = false;
  [[nodiscard]] double ring() const {
    return std::max(1.8, 0.5 * text_width(number, letters::small) + 0.4);
  }
  [[nodiscard]] double words() const {
    return length.empty() ? 0.0 : 0.5 + text_width(length, letters::label);
  }
  [[nodiscard]] Box at(Spot middle) const {
    const double across = 2.0 * ring();
    return upright ? box_round(middle, across, across + words())
                   : box_round(middle, across + words(), across);
  }
};

void draw_ring(Sheet& sheet, Spot middle, double radius) {
  Shape ring;
  ring.name = "wall-number";
  Trail trail{{middle.x - radius, middle.y}, {}, true};
  trail.legs.push_back({{middle.x + radius, middle.y}, radius, radius, 0.0, false, true});
  trail.legs.push_back({{middle.x - radius, middle.y}, radius, radius, 0.0, false, true});
  ring.trails = {trail};
  ring.pen = pens::fine;
  ring.fill = document::Fill::paper;
  sheet.draw(std::move(ring));
}

void write_tag(Sheet& sheet, const Tag& tag, const Box& box) {
  const double r = tag.ring();
  const Spot ring =
      tag.upright ? Spot{box.middle().x, box.bottom - r} : Spot{box.left + r, box.middle().y};
  draw_ring(sheet, ring, r);
  Label number = centred(tag.number, ring, letters::small);
  number.name = "wall-number";
  sheet.write(std::move(number));
  if (!tag.length.empty()) {
    constexpr double drop = 0.5 * (ascent - descent) * letters::label;
    Label length;
    length.name = "wall-length";
    length.text = tag.length;
    length.size = letters::label;
    length.upwards = tag.upright;
    length.at =
        tag.upright ? Spot{ring.x + drop, ring.y - r - 0.5} : Spot{ring.x + r + 0.5, ring.y + drop};
    sheet.write(std::move(length));
  }
  sheet.taken().take(box);
}

/// The places along a wall from its middle outwards.
std::vector<PathSpot> from_middle(const std::vector<PathSpot>& rim, int wall) {
  std::vector<PathSpot> spots;
  std::ranges::copy_if(
      rim, std::back_inserter(spots), [wall](const PathSpot& s) { return s.wall == wall; });
  std::ranges::stable_sort(
      spots, {}, [](const PathSpot& s) { return std::round(20.0 * std::abs(s.share - 0.5)); });
  return spots;
}

/// The tag at a place on the rim, beyond a gap.
Box tag_beside(Tag& tag, const PathSpot& s, double gap, bool turned) {
  constexpr double steep = 0.92;
  tag.upright = turned != (std::abs(s.outward.x) > steep);
  const Box size = tag.at({0.0, 0.0});
  const double away =
      gap + 0.5 * (std::abs(s.outward.x) * size.width() + std::abs(s.outward.y) * size.height());
  return tag.at({s.at.x + away * s.outward.x, s.at.y + away * s.outward.y});
}

/// Writes the tag at the first place along its wall with room for it, over no line if it can.
bool put_tag(Sheet& sheet, Tag tag, const std::vector<PathSpot>& wall) {
  constexpr std::array<double, 3> gaps{0.9, 3.0, 6.0};
  for (const bool clear : {true, false}) {
    for (const double gap : gaps) {
      for (const bool turned : {false, true}) {
        if (turned && tag.length.empty()) continue;
        for (const PathSpot& s : wall) {
          const Box box = tag_beside(tag, s, gap, turned);
          if (!sheet.taken().free(box) || (clear && sheet.taken().covered(box) > 0)) continue;
          write_tag(sheet, tag, box);
          return true;
        }
      }
    }
  }
  return false;
}

}  // namespace

bool label_plan(Sheet& sheet, const Scene& scene, const Layout& layout, WallLengths lengths) {
  Label caption;
  caption.name = "caption";
  caption.text = fmt::format(say::plan_1, layout.denominator);
  caption.at = {sheet.content().left, layout.captions};
  caption.size = letters::text;
  caption.bold = true;
  sheet.write(std::move(caption));
  label_overall(sheet, scene, layout);
  label_cuts(sheet, scene, layout);
  label_section_line(sheet, scene, layout);
  const std::vector<PathSpot> rim = spots_along(scene.plan.outline, layout.view);
  const bool on_plan = lengths == WallLengths::on_plan;
  for (std::size_t i = 0; i < scene.plan.walls.size(); ++i) {
    Tag tag{std::to_string(i), "", false};
    if (on_plan) tag.length = scene.cells.length(scene.plan.walls[i]).text;
    const bool put = put_tag(sheet, tag, from_middle(rim, static_cast<int>(i)));
    if (!put && on_plan) return false;
  }
  label_depths(sheet, scene, layout);
  return true;
}

}  // namespace basinwright::report
