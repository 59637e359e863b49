// Constants that several sources of this room share, with where they come from.
#pragma once

#include "basinwright/chemistry/moles.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

inline constexpr sources::Source molar_masses{
    sources::Kind::from_memory, "iupac-atomic-weights", "abridged 2021"};

/// Carbonic acid at 25 C and no salt.
inline constexpr sources::Sourced<double> carbonic_first{
    6.352, {sources::Kind::from_memory, "carbonate-constants", "pK1"}};
inline constexpr sources::Sourced<double> carbonic_second{
    10.329, {sources::Kind::from_memory, "carbonate-constants", "pK2"}};
inline constexpr sources::Sourced<double> water_ions{
    1.0e-14, {sources::Kind::from_memory, "carbonate-constants", "Water"}};

/// Carbon dioxide that water holds under 1 atm of it (Henry's constant 10^-1.47) and under air.
inline constexpr sources::Sourced<Molarity> carbon_dioxide_saturation{
    moles_per_litre(0.0339), {sources::Kind::from_memory, "carbonate-constants", "Henry"}};
inline constexpr sources::Sourced<Molarity> carbon_dioxide_under_air{
    moles_per_litre(1.4e-5), {sources::Kind::from_memory, "carbonate-constants", "Henry"}};

inline constexpr sources::Sourced<units::Concentration> water_density{
    units::grams_per_litre(998.2), {sources::Kind::from_memory, "water-density", "20 C"}};

}  // namespace basinwright::chemistry
