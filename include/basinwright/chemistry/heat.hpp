// The heat that diluting acid sets free.
#pragma once

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

using Energy = units::Quantity<2, 1, -2, 0>;
inline constexpr units::Unit<Energy> kilojoules{1000.0, "kJ"};

/// Heat set free by mixing, and the warming if none of it escapes.
struct DilutionHeat {
  Energy heat;
  units::TemperatureDifference rise;
};

/// n x (L(m1) - L(m2)), L the heat of dilution to infinity at molality m, interpolated linearly;
/// rise = heat / (mass x specific heat of the mix).
/// @source crc-heat-of-dilution, table; hcl-heat-capacity, table
[[nodiscard]] DilutionHeat dilution_heat(const Acid& stock,
                                         units::Volume acid,
                                         units::Volume water);

}  // namespace basinwright::chemistry
