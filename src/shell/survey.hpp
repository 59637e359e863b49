// A pool that passed every check, with its faces.
#pragma once

#include <optional>

#include "lean.hpp"
#include "model.hpp"
#include "surfaces.hpp"

namespace basinwright::shell {

struct Survey {
  Model model;
  Surfaces surfaces;
  double shallowest = 0.0;  ///< Floor depths, features left out.
  double deepest = 0.0;
  LeanSums lean;  ///< Of the whole pool, when its walls lean.
};

/// Checks everything that can be checked; nothing when anything is refused.
[[nodiscard]] std::optional<Survey> survey(const Pool& pool, Findings& findings);

/// The same for a pool that was taken off before.
/// @throws std::invalid_argument with the first fault when it is refused.
[[nodiscard]] Survey surveyed(const Pool& pool);

/// Further refusals and warnings, each about a different thing.
void check_cover(const Pool& pool, const Survey& survey, Findings& findings);
void check_band(const Survey& survey, Findings& findings);
void check_cove(const Survey& survey, Findings& findings);
void check_lean(const Pool& pool, Survey& survey, Findings& findings);
void check_tapes(const Pool& pool, const Ground& ground, Findings& findings);
void doubt_floor(const Pool& pool, const Survey& survey, Findings& findings);
void doubt_outline(const Survey& survey, Findings& findings);

/// The least distance straight across from the middle of a wall.
[[nodiscard]] double narrowest_width(const geometry::Loop& outline);

/// Extent of the outline along a direction.
struct Extent {
  double from = 0.0;
  double to = 0.0;
};
[[nodiscard]] Extent extent_along(const geometry::Loop& outline, geometry::Vec direction);

}  // namespace basinwright::shell
