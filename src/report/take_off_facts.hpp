// The figures of a take-off, for one body of water or for all of them.
#pragma once

#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/report/pages.hpp"
#include "cells.hpp"

namespace basinwright::report {

/// What was measured, with what the job adds to it by name.
struct Measured {
  const shell::TakeOff& take_off;
  std::vector<job::Adjustment> adjust;
  units::Area painted;  ///< With the adjustments.
};

/// @param whole  Everything; otherwise only what the coat needs.
[[nodiscard]] document::Facts take_off_facts(const Measured& measured, const Cells& c, bool whole);

/// Which unit system a table's machine values are in; its columns' keys say so.
enum class Machine { metric, us };

/// Bodies of water, one a row, each with its sections along the axis.
[[nodiscard]] document::Table bodies_table(const Subject& s, const Cells& c, Machine machine);
/// Painted area by section and surface, with totals.
[[nodiscard]] document::Table parts_table(const Subject& s, const Cells& c, Machine machine);
/// Where sections begin and end, for people.
[[nodiscard]] document::Table cuts_table(const Subject& s, const Cells& c);
/// `sections.cuts_m`, `.areas_deep_to_shallow_m2` and `.kit_boundaries_m` of the only body.
[[nodiscard]] document::Facts sections_facts(const Subject& s);
/// The empty shell against groundwater, and what there is to say about it.
void add_flotation(const Subject& s, const Cells& c, document::Section& section);
/// The facts that are shown in both unit systems side by side.
[[nodiscard]] document::Table totals_table(const document::Facts& metric,
                                           const document::Facts& us);

}  // namespace basinwright::report
