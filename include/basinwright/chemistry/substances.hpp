// Atomic weights, and the molar masses computed from them.
#pragma once

#include <string_view>

#include "basinwright/chemistry/moles.hpp"
#include "basinwright/sources/source.hpp"

namespace basinwright::chemistry {

enum class Element {
  hydrogen,
  carbon,
  nitrogen,
  oxygen,
  sodium,
  phosphorus,
  sulfur,
  chlorine,
  calcium
};

/// What this room reckons with.
enum class Substance {
  hydrogen_chloride,
  water,
  carbon_dioxide,
  chlorine,
  sodium_chloride,
  sodium_bicarbonate,
  sodium_carbonate,
  sodium_bisulfate,
  sodium_hypochlorite,
  calcium_hypochlorite,
  calcium_carbonate,
  calcium_hydroxide,
  calcium_chloride,
  calcium_chloride_dihydrate,
  cyanuric_acid,
  trisodium_phosphate,
  sodium_thiosulfate_pentahydrate,
  sodium_bisulfite,
  sodium_sulfite
};

/// IUPAC abridged standard atomic weight of 2021.
/// @source iupac-atomic-weights, abridged table (from memory; rounded to five figures from the
/// published intervals)
[[nodiscard]] sources::Sourced<MolarMass> atomic_weight(Element element);

/// The chemical formula, such as "NaHCO3".
[[nodiscard]] std::string_view formula(Substance substance);

/// Sum of the atomic weights in the formula.
[[nodiscard]] MolarMass molar_mass(Substance substance);

/// Hardness and alkalinity are said as calcium carbonate: 50.043 g an equivalent.
[[nodiscard]] MolarMass calcium_carbonate_equivalent();

}  // namespace basinwright::chemistry
