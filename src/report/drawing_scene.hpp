// What a drawing of one body of water shows, measured but not yet to scale.
#pragma once

#include <string>
#include <vector>

#include "basinwright/report/pages.hpp"
#include "basinwright/shell/long_section.hpp"
#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/plan_levels.hpp"
#include "cells.hpp"
#include "drawing_geometry.hpp"

namespace basinwright::report {

/// A part of the coat that is painted in one go.
struct CoatPart {
  std::string name;
  Length from, to;   ///< Positions along the axis, `from` the smaller.
  units::Area area;  ///< As the plan counts it; a cut inside an end wall parts the wall.
};

struct Scene {
  const Subject& subject;
  const job::Body& body;
  const job::BodyResult& result;
  std::size_t number = 0;  ///< Of the body, from 0.
  Cells cells;
  shell::PlanLevels plan;
  shell::LongSection section;
  shell::SectionAxis axis;
  std::vector<CoatPart> coat;  ///< Deep end first; one or none when the coat is not cut.
  double right_deg = 0.0;      ///< Direction on the plan that runs to the right on the sheet.
  shell::Span right, up;       ///< How far the outline reaches that way and across it.
  bool below = false;          ///< The long section stands straight below the plan.
  bool leftwards = false;      ///< Its positions grow to the left.

  [[nodiscard]] const shell::Pool& pool() const { return body.pool; }
  [[nodiscard]] bool cut() const { return coat.size() > 1; }
};

/// Measures a body of the plan.
[[nodiscard]] Scene scene_of(const Subject& subject, std::size_t body);

/// The body's part of the coat, cut where the plan cuts it: along the axis, the bodies one after
/// the other, deep end first. Sections that the job names are taken instead, each further body then
/// being a section of its own.
[[nodiscard]] std::vector<CoatPart> coat_parts(const Subject& subject, std::size_t body);

}  // namespace basinwright::report
