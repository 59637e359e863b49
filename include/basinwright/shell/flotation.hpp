// Whether an empty shell stays down when there is water in the ground.
#pragma once

#include <optional>
#include <string_view>

#include "basinwright/shell/pool.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

using units::Concentration;
using units::Mass;

/// What the factor asks for: stop under 1.0, a hold point under 1.3, clear from there.
enum class FlotationVerdict { stop, hold, clear };

inline constexpr sources::Sourced<double> floats_below{
    1.0, {sources::Kind::published, "stability-of-concrete-structures", "equation 3-2"}};
inline constexpr sources::Sourced<double> clear_from{
    1.3, {sources::Kind::from_memory, "stability-of-concrete-structures", "table 3-4, usual"}};

/// Density of the shell and of the groundwater.
struct FlotationBasis {
  sources::Sourced<Concentration> concrete{
      Concentration::from_si(24000.0 / 9.81),
      {sources::Kind::published, "stability-of-concrete-structures", "concrete 24 kN/m3"}};
  sources::Sourced<Concentration> water{
      Concentration::from_si(1000.0),
      {sources::Kind::published, "stability-of-concrete-structures", "water 9.81 kN/m3"}};
};

/// The factor of an empty shell against floating, and what it was made of.
struct Flotation {
  double factor = 0.0;  ///< Infinite when the groundwater stands below the slab.
  FlotationVerdict verdict = FlotationVerdict::clear;
  Mass shell;                     ///< Total weight as mass; features left out.
  Mass displaced;                 ///< Water displaced by the shell and its void, as mass.
  Length head;                    ///< Groundwater above the lowest underside of the slab.
  std::optional<Length> neutral;  ///< Depth of groundwater below the rim where the factor is 1;
                                  ///< empty when water up to the rim does not lift the shell.
};

/// The convention, to be named wherever the factor is shown: others give up to twice the factor.
inline constexpr std::string_view flotation_convention =
    "total weight of the empty shell over the weight of all water displaced below the groundwater, "
    "no soil friction, no soil on a toe, no water inside";

/// The verdict on a factor. @throws std::invalid_argument when it is negative or not a number.
[[nodiscard]] FlotationVerdict flotation_verdict(double factor);

/// The factor of an empty shell against floating; none without both thicknesses.
///
/// factor = concrete x V(shell) / (water x V(outside, below the groundwater)). Walls are upright,
/// of even thickness and mitred at corners (outside plan = A + P t + K t^2, K = sum tan(turn / 2)
/// over corners + half the turning of arcs); the slab keeps its thickness square to the floor.
/// Features are left out: their weight would help.
/// @param groundwater_below_rim  Depth of the water table below the rim.
/// @throws std::invalid_argument when `take_off` refuses the pool or the depth is not finite.
/// @source stability-of-concrete-structures, equation 3-2 without surcharge
[[nodiscard]] std::optional<Flotation> flotation(const Pool& pool,
                                                 Length groundwater_below_rim,
                                                 trace::Trace& trace,
                                                 const FlotationBasis& basis = {});

/// The head of groundwater above its underside that a slab carries by its own weight:
/// h = thickness x concrete / (water x factor).
/// @throws std::invalid_argument unless thickness and factor are positive.
[[nodiscard]] Length slab_alone_head(Length slab_thickness,
                                     double factor,
                                     const FlotationBasis& basis = {});

}  // namespace basinwright::shell
