#include "drawing_scene.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "basinwright/shell/take_off.hpp"

namespace basinwright::report {
namespace {

using units::Area;

struct Cuts {
  std::vector<Length> at;  ///< Deep end first.
  std::vector<std::string> names;
};

std::string numbered(std::size_t section) {
  return fmt::format("Section {}", section + 1);
}

/// Sections the job names, by the position where each ends.
Cuts named_cuts(const Subject& s, const shell::SectionAxis& axis) {
  Cuts cuts;
  for (const auto& section : s.job.coating.sections) {
    cuts.names.push_back(section.name);
    if (section.to > axis.first && section.to < axis.last) cuts.at.push_back(section.to);
  }
  return cuts;
}

/// Where the plan's sections end inside this body. What was added to its area by name stands
/// nowhere on the plan and is painted last.
Cuts planned_cuts(const Subject& s, std::size_t body) {
  Area before;
  for (std::size_t b = 0; b < body; ++b) {
    const job::BodyResult& done = s.plan.take_off.bodies[b];
    before += done.take_off.painted_area + done.adjusted;
  }
  const Area painted = s.plan.take_off.bodies[body].take_off.painted_area;
  const std::vector<Area>& sections = s.plan.quantities.cut.sections;
  Cuts cuts;
  Area end;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    end += sections[i];
    if (end <= before) continue;
    cuts.names.push_back(numbered(i));
    if (i + 1 == sections.size() || end - before >= painted) break;
    const auto position = shell::kit_boundaries(s.job.bodies[body].pool, end - before);
    if (position.empty()) break;
    cuts.at.push_back(position.front());
  }
  return cuts;
}

}  // namespace

std::vector<CoatPart> coat_parts(const Subject& s, std::size_t body) {
  const shell::Pool& pool = s.job.bodies[body].pool;
  const bool named = !s.job.coating.sections.empty() && s.job.bodies.size() == 1;
  const Cuts cuts = named ? named_cuts(s, shell::section_axis(pool)) : planned_cuts(s, body);
  std::vector<CoatPart> parts;
  for (shell::Part& part : shell::parts(pool, cuts.at)) {
    const std::size_t i = parts.size();
    parts.push_back({i < cuts.names.size() ? cuts.names[i] : numbered(i), part});
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
