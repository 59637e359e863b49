// Areas, lengths and water volume of a pool, from closed forms.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "basinwright/shell/pool.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

using units::Area;
using units::Volume;

/// Why a pool cannot be taken off. `code` is a plain word or words (`self-intersection`,
/// `depth-not-below-band`); `where` is a JSON Pointer below the pool object ("/outline/width").
struct Fault {
  std::string code;
  std::string where;
  std::string message;
  std::string hint;
  bool warning = false;
};

/// What the tape gives. Areas are true (sloped) areas; the painted ones leave out the tile band.
struct TakeOff {
  Area plan_area;
  Length perimeter;
  Area floor_area;
  Area wall_area;
  Area tread_area;
  Area riser_area;
  Length cove_length;
  Area cove_area_change;                 ///< Right-angle convention; negative.
  Area cove_true_angle_area_change;
  Volume cove_true_angle_volume_change;
  Area floor_plan_at_toe;                ///< Plan area of the floor between leaning walls.
  Area painted_area;                     ///< floor + wall + tread + riser + cove change.
  Volume water_volume_before_cove;
  Volume water_volume;
  Length mean_depth;                     ///< Depth below the rim, mean over the plan.
  Length shallowest, deepest;            ///< Floor depths along the shell, features left out.
};

struct Measured {
  TakeOff take_off;
  std::vector<Fault> warnings;
};

/// Takes a pool off, or says everything that is wrong with it.
///
/// Outline of lines, circular arcs and true ellipses clipped exactly by the floor's planes; area
/// and moments by Green's theorem in closed form per line and arc, floor = plan x sqrt(1 + slope^2),
/// volume = plan x depth at the centroid. Good to 1e-9 of the larger of 1 and the value.
/// @source green-theorem, method.md "Take-off"
[[nodiscard]] std::variant<Measured, std::vector<Fault>> take_off(const Pool& pool,
                                                                  trace::Trace& trace);

/// Painted area beyond planes across the pool, deep end first: along the floor's axis (breaks) or
/// x. One area more than there are cuts.
struct SectionAreas {
  std::vector<Length> cuts;              ///< As given.
  std::vector<Area> deep_to_shallow;
};
[[nodiscard]] SectionAreas section_areas(const Pool& pool, const std::vector<Length>& cuts);

/// Positions along the axis at which the painted area beyond equals 1, 2, 3 ... kits' cover, deep
/// end first; as many as there are whole kits short of the last.
[[nodiscard]] std::vector<Length> kit_boundaries(const Pool& pool, Area kit_cover);

}  // namespace basinwright::shell
