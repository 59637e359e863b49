#include "drawing_scene.hpp"

#include <cmath>

#include "basinwright/job/sections.hpp"
#include "wording/common.hpp"

namespace basinwright::report {
namespace {

// Sections of the plan are numbered, those of the job have names.
std::string shown_name(const Subject& s, const std::string& section) {
  return s.job.coating.sections.empty() ? say::section_before + section : section;
}

}  // namespace

std::vector<CoatPart> coat_parts(const Subject& s, std::size_t body) {
  const bool named = !s.job.coating.sections.empty();
  const auto all = named ? job::named_parts(s.job, s.plan.take_off)
                         : job::planned_parts(s.job, s.plan.take_off, s.plan.quantities.cut);
  std::vector<CoatPart> parts;
  for (const job::SectionPart& part : all) {
    if (part.body != body) continue;
    parts.push_back(
        {shown_name(s, part.section), part.measured.from, part.measured.to, part.painted()});
  }
  return parts;
}

Scene scene_of(const Subject& s, std::size_t number) {
  constexpr double quarter = 90.0;
  constexpr double same = 1e-9;
  const job::Body& body = s.job.bodies[number];
  const shell::Pool& pool = body.pool;
  Scene scene{s,
              body,
              s.plan.take_off.bodies[number],
              number,
              Cells(s.units, s.rates.currency),
              shell::plan_levels(pool),
              shell::long_section(pool),
              shell::section_axis(pool),
              coat_parts(s, number)};
  const double turned = pool.outline.place ? pool.outline.place->rotation_deg : 0.0;
  const auto* breaks = std::get_if<shell::BreaksFloor>(&pool.floor);
  const double axis = breaks != nullptr ? breaks->axis_deg : 0.0;
  // The plan lies as it was measured, or a quarter turned where that brings the axis level.
  const double off = std::remainder(axis - turned, 4.0 * quarter);
  const double quarters = std::round(off / quarter);
  scene.below = std::abs(off - quarters * quarter) < same;
  scene.leftwards = scene.below && std::abs(quarters) == 2.0;
  scene.right_deg = scene.below && std::abs(quarters) == 1.0 ? axis : turned;
  scene.right = shell::span_along(pool, scene.right_deg);
  scene.up = shell::span_along(pool, scene.right_deg + quarter);
  return scene;
}

}  // namespace basinwright::report
