// Air that takes silica dust off at the tool.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// For each inch of the disc's diameter: 25 ft3 a minute.
inline constexpr sources::Sourced<units::Flow> extraction_an_inch{
    units::Flow::from_si(25.0 * units::cubic_feet.factor / units::minutes.factor),
    {sources::Kind::published, "29-cfr-1926.1153", "table 1 (xii), 25 cfm an inch"}};
/// The grinder most crews have.
inline constexpr sources::Sourced<units::Length> usual_disc{
    units::millimetres(125.0), {sources::Kind::assumed, "grinder-disc", "diameter"}};

/// The least extraction of a shrouded disc: rate x diameter in inches.
/// @throws std::invalid_argument for a diameter that is not above 0
[[nodiscard]] units::Flow dust_extraction(units::Length disc);

}  // namespace basinwright::chemistry
