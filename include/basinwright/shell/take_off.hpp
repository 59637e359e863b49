// Areas, lengths and water volume of a pool, from closed forms.
#pragma once

#include <variant>
#include <vector>

#include "basinwright/shell/fault.hpp"
#include "basinwright/shell/pool.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

using units::Area;
using units::Volume;

/// What the tape gives. Areas are true (sloped) areas; the painted ones leave out the tile band.
struct TakeOff {
  Area plan_area;
  Length perimeter;
  Area floor_area;
  Area wall_area;
  Area tread_area;
  Area riser_area;
  Length step_edge;  ///< Upper edges of steps, benches and blocks, fronts and sides, each once.
  Length cove_length;
  Area cove_area_change;  ///< Right-angle convention; negative.
  Area cove_true_angle_area_change;
  Volume cove_true_angle_volume_change;
  Area floor_plan_at_toe;  ///< Plan area of the floor between leaning walls.
  Area painted_area;       ///< floor + wall + tread + riser + cove change.
  Volume water_volume_before_cove;
  Volume water_volume;
  Length mean_depth;           ///< Depth below the rim, mean over the plan.
  Length shallowest, deepest;  ///< Floor depths along the shell, features left out.
};

struct Measured {
  TakeOff take_off;
  std::vector<Fault> warnings;
};

/// Takes a pool off, or says everything that is wrong with it.
///
/// Outline of lines, circular arcs and true ellipses clipped exactly by the floor's planes; area
/// and moments by Green's theorem in closed form per line and arc, floor = plan x sqrt(1 +
/// slope^2), volume = plan x depth at the centroid. Good to 1e-9 of the larger of 1 and the value.
/// @source green-theorem, method.md "Take-off"
[[nodiscard]] std::variant<Measured, std::vector<Fault>> take_off(const Pool& pool,
                                                                  trace::Trace& trace);

/// Painted area beyond planes across the pool, deep end first: along the floor's axis (breaks) or
/// x (`section_axis` in parts.hpp). One area more than there are cuts.
///
/// A face that stands exactly on a cut counts with the shallow side; the cove goes with the length
/// of wall it runs along.
struct SectionAreas {
  std::vector<Length> cuts;  ///< As given.
  std::vector<Area> deep_to_shallow;
};
/// @throws std::invalid_argument when `take_off` refuses the pool or a cut is not finite.
[[nodiscard]] SectionAreas section_areas(const Pool& pool, const std::vector<Length>& cuts);

/// Positions along the axis at which the painted area beyond equals 1, 2, 3 ... kits' cover, deep
/// end first; as many as there are whole kits short of the last. A boundary that falls inside the
/// jump of an end wall or a riser sits on that face.
/// @throws std::invalid_argument when `take_off` refuses the pool or the cover is not positive.
[[nodiscard]] std::vector<Length> kit_boundaries(const Pool& pool, Area kit_cover);

}  // namespace basinwright::shell
