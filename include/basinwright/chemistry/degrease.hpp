// The degreasing wash: how much mix, and the concentrate in it.
#pragma once

#include "basinwright/chemistry/worked_area.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

inline constexpr sources::Sourced<units::SpreadingRate> degrease_cover{
    units::square_metres_per_litre(4.5), {sources::Kind::assumed, "degrease-rate", "cover"}};
inline constexpr sources::Sourced<units::Volume> degreaser_concentrate{
    units::litres(0.5), {sources::Kind::common_practice, "degreaser-mix", "concentrate"}};
inline constexpr sources::Sourced<units::Volume> degreaser_water{
    units::litres(20.0), {sources::Kind::common_practice, "degreaser-mix", "warm water"}};

/// The recipe and the rate; the rate book may replace them.
struct DegreaseRates {
  sources::Sourced<units::SpreadingRate> cover = degrease_cover;  ///< Of the mix.
  sources::Sourced<units::Volume> concentrate = degreaser_concentrate;
  sources::Sourced<units::Volume> water = degreaser_water;
};

/// The wash for a job.
struct Degrease {
  units::Volume mixed, concentrate, water;
};

/// mixed = area / cover, split as the recipe is: concentrate : water.
/// Records quantities.degrease.mixed_l, .concentrate_l and .water_l.
/// @throws std::invalid_argument for an area that is negative or not finite
[[nodiscard]] Degrease degrease(const WorkedArea& area,
                                const DegreaseRates& rates,
                                trace::Trace& trace);

}  // namespace basinwright::chemistry
