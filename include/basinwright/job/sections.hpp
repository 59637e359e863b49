// The painted area section by section: as the job names them, or as the plan cuts the coat.
#pragma once

#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Names of the sections when the job names any: its own, then each further body of water as a
/// section of its own under its name (with a number behind it where the name is taken).
[[nodiscard]] std::vector<std::string> section_names(const Job& job);

/// The parts that the job names, deep end first: the first body cut along its axis at each `to` but
/// the last, every further body whole. Named areas are spread over their surface in proportion to
/// what each part has of it. Empty when the job names no sections.
/// @throws std::invalid_argument when a body's geometry is refused
[[nodiscard]] std::vector<SectionPart> named_parts(const Job& job, const TakeOffResult& take_off);

/// The parts of a cut by area, numbered, bodies one after the other; without a cut each body is
/// whole. Named areas are spread evenly over their body's painted area.
/// @throws std::invalid_argument when a body's geometry is refused
[[nodiscard]] std::vector<SectionPart> planned_parts(const Job& job,
                                                     const TakeOffResult& take_off,
                                                     const coverage::Cut& cut);

/// What a body's job adds by name, by surface.
[[nodiscard]] Named named_areas(const Body& body);

}  // namespace basinwright::job
