#include "drawing_layout.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace basinwright::report {
namespace {

constexpr double millimetres_in_metre = 1000.0;

/// What a scale makes of a scene.
struct Needs {
  double plan_width, plan_height;
  double section_width, section_height;
  double width, height;
};

double above_plan(const Scene& scene) {
  return gutters::above + (scene.cut() && scene.below ? gutters::cuts : 0.0);
}

Needs needs(const Scene& scene, double scale, double foot) {
  Needs n{};
  n.plan_width = scale * scene.right.length().si();
  n.plan_height = scale * scene.up.length().si();
  n.section_width = scale * (scene.section.to - scene.section.from).si();
  Length deepest = scene.result.take_off.deepest;
  for (const auto& p : scene.section.profile) deepest = std::max(deepest, p.depth);
  n.section_height = scale * deepest.si();
  n.width = std::max(n.plan_width, n.section_width) + gutters::left + gutters::right;
  n.height = gutters::head + gutters::caption + above_plan(scene) + n.plan_height + gutters::below +
             gutters::section_above + n.section_height + gutters::section_below + gutters::bar +
             foot;
  return n;
}

/// 10, 15, 20, 25, 30, 40, 50, 75, 100, 150 ...
int round_denominator(int step) {
  constexpr std::array<int, 8> mantissas{20, 30, 40, 50, 60, 80, 100, 150};
  int denominator = mantissas.at(static_cast<std::size_t>(step) % mantissas.size());
  for (int i = 0; i < step / static_cast<int>(mantissas.size()); ++i) denominator *= 10;
  return denominator / 2;
}

void place_section(Layout& layout, const Scene& scene, const Box& content, const Needs& n) {
  const auto& axis = scene.axis;
  layout.leftwards = scene.leftwards;
  if (scene.below) {
    layout.zero = layout.view.at(axis.origin_x, axis.origin_y).x;
  } else {
    const Length middle = 0.5 * (scene.section.from + scene.section.to);
    layout.zero = content.middle().x - layout.view.scale * middle.si();
  }
  const double a = layout.x_of(scene.section.from);
  const double b = layout.x_of(scene.section.to);
  layout.section = {
      std::min(a, b), layout.section.top, std::max(a, b), layout.section.top + n.section_height};
}

}  // namespace

Layout layout_of(const Scene& scene, const Sheet& sheet, double foot_height) {
  constexpr int most_steps = 60;
  const Box& content = sheet.content();
  Layout layout;
  Needs n{};
  for (int step = 0; step < most_steps; ++step) {
    layout.denominator = round_denominator(step);
    layout.view.scale = millimetres_in_metre / layout.denominator;
    n = needs(scene, layout.view.scale, foot_height);
    if (n.width <= content.width() && n.height <= content.height()) break;
  }
  const double spare = std::max(0.0, content.height() - n.height) / 3.0;
  const double left = content.left + gutters::left + 0.5 * (content.width() - n.width) +
                      0.5 * std::max(0.0, n.section_width - n.plan_width);
  layout.captions = content.top + gutters::head + spare + gutters::caption - 1.5;
  const double top = content.top + gutters::head + spare + gutters::caption + above_plan(scene);
  layout.plan = {left, top, left + n.plan_width, top + n.plan_height};
  const Spot right = unit_at(scene.right_deg);
  layout.view.right_deg = scene.right_deg;
  layout.view.right_x = right.x;
  layout.view.right_y = right.y;
  layout.view.origin = {left - layout.view.scale * scene.right.from.si(),
                        top + layout.view.scale * scene.up.to.si()};
  layout.section.top = layout.plan.bottom + gutters::below + spare + gutters::section_above;
  place_section(layout, scene, content, n);
  layout.bar = layout.section.bottom + gutters::section_below + gutters::bar - 4.0;
  layout.foot = content.bottom - foot_height;
  return layout;
}

document::Fill pattern_of(std::size_t part) {
  using document::Fill;
  constexpr std::array<Fill, 6> patterns{
      Fill::rising, Fill::falling, Fill::dots, Fill::upright, Fill::level, Fill::crossed};
  return patterns.at(part % patterns.size());
}

Trail strip(const Scene& scene, const View& view, Length from, Length to) {
  constexpr double quarter = 90.0;
  const auto& axis = scene.axis;
  const double x = axis.direction_x;
  const double y = axis.direction_y;
  const auto* breaks = std::get_if<shell::BreaksFloor>(&scene.pool().floor);
  const double axis_deg = breaks != nullptr ? breaks->axis_deg : 0.0;
  const shell::Span across = shell::span_along(scene.pool(), axis_deg + quarter);
  const Length shift = axis.origin_x * x + axis.origin_y * y;
  const auto corner = [&](Length along, Length aside) {
    const Length s = along + shift;
    return view.at(s * x - aside * y, s * y + aside * x);
  };
  return polygon({corner(from, across.from),
                  corner(to, across.from),
                  corner(to, across.to),
                  corner(from, across.to)});
}

}  // namespace basinwright::report
