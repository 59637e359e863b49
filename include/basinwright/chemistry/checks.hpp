// How many readings an area asks for, and whether a surface is clean of acid.
#pragma once

#include "basinwright/chemistry/ph.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// The area one pair of pH readings or one plastic sheet stands for: 500 ft2, 46.45 m2.
inline constexpr sources::Sourced<units::Area> ph_reading_area{
    units::square_feet(500.0), {sources::Kind::published, "astm-d4262", "6.2"}};
inline constexpr sources::Sourced<units::Area> dryness_sheet_area{
    units::square_feet(500.0), {sources::Kind::from_memory, "astm-d4263", "sampling"}};

/// Surface pH readings after the last rinse: 2 x ceil(area / 500 ft2).
/// @throws std::invalid_argument for an area that is negative or not finite
[[nodiscard]] int ph_readings(units::Area area);

/// Plastic sheets of the dryness test: ceil(area / 500 ft2).
/// @throws std::invalid_argument for an area that is negative or not finite
[[nodiscard]] int dryness_sheets(units::Area area);

/// How far the surface may stand from the rinse water.
inline constexpr sources::Sourced<double> surface_ph_margin{
    1.0, {sources::Kind::published, "mil-hdbk-1110", "6.7.2.1"}};

/// Whether a rinsed surface is within 1 unit of its rinse water.
[[nodiscard]] bool surface_is_rinsed(Ph surface, Ph rinse_water);

}  // namespace basinwright::chemistry
