#include "drawing_scene.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "basinwright/shell/take_off.hpp"

namespace basinwright::report {
namespace {

using units::Area;

struct Cut {
  std::string name;
  Length end;  ///< Where the part ends, going away from the deep end.
  Area area;
};

std::string numbered(std::size_t section) {
  return fmt::format("Section {}", section + 1);
}

/// The end of the pool that is painted last.
Length far_end(const shell::SectionAxis& axis) {
  return axis.deep_end_last ? axis.first : axis.last;
}

/// Sections the job names, by the position where each ends.
std::vector<Cut> named_cuts(const Subject& s, const shell::SectionAxis& axis) {
  std::vector<Cut> cuts;
  for (const auto& section : s.job.coating.sections) {
    cuts.push_back({section.name, std::clamp(section.to, axis.first, axis.last), {}});
  }
  std::ranges::stable_sort(cuts, {}, [&axis](const Cut& c) {
    return axis.deep_end_last ? axis.last - c.end : c.end - axis.first;
  });
  if (cuts.back().end != far_end(axis)) {
    cuts.push_back({numbered(cuts.size()), far_end(axis), {}});
  }
  std::vector<Length> ends;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) ends.push_back(cuts[i].end);
  const std::vector<shell::Part> parts = shell::parts(s.job.bodies.front().pool, ends);
  for (std::size_t i = 0; i < cuts.size(); ++i) cuts[i].area = parts[i].painted;
  return cuts;
}

/// Where the plan's sections end inside this body. What was added to its area by name stands
/// nowhere on the plan and is painted last.
std::vector<Cut> planned_cuts(const Subject& s, std::size_t body, const shell::SectionAxis& axis) {
  const auto& bodies = s.plan.take_off.bodies;
  Area before;
  for (std::size_t b = 0; b < body; ++b) {
    before += bodies[b].take_off.painted_area + bodies[b].adjusted;
  }
  const Area painted = bodies[body].take_off.painted_area;
  const Area after = before + painted + bodies[body].adjusted;
  const std::vector<Area>& sections = s.plan.quantities.cut.sections;
  std::vector<Cut> cuts;
  Area start;
  for (std::size_t i = 0; i < sections.size() && start < after; ++i) {
    const Area end = i + 1 == sections.size() ? after : std::min(start + sections[i], after);
    const Area from = std::max(start, before);
    start = end;
    if (end <= before) continue;
    Cut cut{numbered(i), far_end(axis), end - from};
    if (end < after && end - before < painted) {
      const auto position = shell::kit_boundaries(s.job.bodies[body].pool, end - before);
      if (!position.empty()) cut.end = position.front();
    }
    cuts.push_back(std::move(cut));
  }
  return cuts;
}

}  // namespace

std::vector<CoatPart> coat_parts(const Subject& s, std::size_t body) {
  const shell::SectionAxis axis = shell::section_axis(s.job.bodies[body].pool);
  const bool named = !s.job.coating.sections.empty() && s.job.bodies.size() == 1;
  std::vector<CoatPart> parts;
  Length start = axis.deep_end_last ? axis.last : axis.first;
  for (const Cut& cut : named ? named_cuts(s, axis) : planned_cuts(s, body, axis)) {
    parts.push_back({cut.name, std::min(start, cut.end), std::max(start, cut.end), cut.area});
    start = cut.end;
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
