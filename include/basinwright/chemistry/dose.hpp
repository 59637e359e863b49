// What to add to a volume of water for a change in mg/L.
#pragma once

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/chlorine.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::chemistry {

/// Solids that change one figure of the water, alkalinity and hardness said as CaCO3.
enum class Additive {
  sodium_bicarbonate,          ///< Raises alkalinity.
  sodium_carbonate,            ///< Raises alkalinity, and pH much faster.
  sodium_bisulfate,            ///< Lowers alkalinity.
  calcium_chloride,            ///< Raises calcium hardness.
  calcium_chloride_dihydrate,  ///< The same, with its water: the common flake.
  stabiliser,                  ///< Cyanuric acid.
  salt
};

/// Mass of the pure additive for a mass of change: M / (equivalents x 50.043), or 1.
/// @source iupac-atomic-weights, abridged
[[nodiscard]] double dose_ratio(Additive additive);

/// mass = volume x change x ratio / purity.
/// @param change not negative: the size of the rise or fall
/// @param purity above 0 and up to 1
/// @throws std::invalid_argument outside these
[[nodiscard]] units::Mass additive_dose(Additive additive,
                                        units::Volume water,
                                        units::Concentration change,
                                        units::Fraction purity);

/// Acid that lowers alkalinity: volume x fall x (HCl / CaCO3 equivalent) / HCl in the acid.
/// @throws std::invalid_argument for a fall or volume that is negative or not finite
[[nodiscard]] units::Volume acid_dose(units::Volume water,
                                      units::Concentration alkalinity_fall,
                                      const Acid& acid);

/// Chlorine source for a rise in free chlorine; one of the two is zero.
struct ChlorineDose {
  units::Volume liquid;
  units::Mass solid;
};

/// volume x rise / available chlorine of the stock.
/// @throws std::invalid_argument for a rise or volume that is negative or not finite
[[nodiscard]] ChlorineDose chlorine_dose(units::Volume water,
                                         units::Concentration rise,
                                         const ChlorineStock& stock);

}  // namespace basinwright::chemistry
