// What moves the pH of pool water: carbonate equilibrium with nothing lost to the air.
#pragma once

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/saturation.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// The pH after bicarbonate was dissolved: alkalinity and carbonate both rise by it, the charge
/// balance is solved by halving.
/// @param rise of alkalinity as CaCO3, not negative
/// @source carbonate-constants; plummer-busenberg-1982 for the water's temperature
[[nodiscard]] Ph ph_after_bicarbonate(const Water& water, units::Concentration rise);

/// Acid that brings a water down to a pH while its carbonate stays: alkalinity spent = A - C r(pH),
/// r = (1 + 2 K2/h) / (1 + h/K1 + K2/h), C = A / r(pH now). Nought when the water is not above it.
/// Records quantities.start_up.ph_acid_l.
/// @param filled from `takeoff.water_volume_m3`
/// @throws std::invalid_argument for a volume or alkalinity that is negative or not finite
[[nodiscard]] units::Volume acid_to_ph(units::Volume filled,
                                       const Water& water,
                                       const sources::Sourced<Ph>& target,
                                       const Acid& acid,
                                       trace::Trace& trace);

/// Soda ash that brings a water up to a pH: each mole adds two of alkalinity and one of carbonate,
/// x = (C r - A) / (2 - r). Blowing air through the water does the same for nothing, more slowly.
/// Records quantities.start_up.ph_soda_ash_kg.
/// @throws std::invalid_argument for a volume or alkalinity that is negative or not finite
[[nodiscard]] units::Mass soda_ash_to_ph(units::Volume filled,
                                         const Water& water,
                                         const sources::Sourced<Ph>& target,
                                         trace::Trace& trace);

}  // namespace basinwright::chemistry
