// Neutralising with sodium bicarbonate: the surface by a rate, the sump by stoichiometry.
#pragma once

#include <string_view>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/ph.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/chemistry/worked_area.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

inline constexpr sources::Sourced<units::ArealMass> surface_bicarbonate_rate{
    units::kilograms_per_square_metre(5.0 / 90.0),
    {sources::Kind::common_practice, "surface-bicarbonate", "5 kg per 90 m2"}};
inline constexpr sources::Sourced<units::Concentration> surface_bicarbonate_mix{
    units::grams_per_litre(100.0),
    {sources::Kind::common_practice, "surface-bicarbonate", "1 kg in 10 L"}};

/// Sodium bicarbonate in what is sold as it.
inline constexpr sources::Sourced<units::Fraction> bicarbonate_purity{
    units::percent(100.0), {sources::Kind::assumed, "bicarbonate-purity", "as sold"}};

/// Rates that the rate book may replace.
struct SurfaceRates {
  sources::Sourced<units::Fraction> purity = bicarbonate_purity;  ///< For the sump, not the wash.
  sources::Sourced<units::ArealMass> bicarbonate = surface_bicarbonate_rate;
  sources::Sourced<units::Concentration> mix = surface_bicarbonate_mix;  ///< Per volume of water.
};

/// The wash that neutralises the surface; a quantity of its own, not the sump's.
struct SurfaceWash {
  units::Mass bicarbonate;
  units::Volume water;
};

/// bicarbonate = rate x area, water = bicarbonate / mix.
/// Records quantities.neutralise.surface_kg and .water_l.
/// @throws std::invalid_argument for an area that is negative or not finite
[[nodiscard]] SurfaceWash surface_wash(const WorkedArea& counted,
                                       const SurfaceRates& rates,
                                       trace::Trace& trace);

/// The most bicarbonate the collected wash water can need: no acid spent on the shell.
/// mass = acid x HCl in it x M(NaHCO3) / M(HCl). Records quantities.neutralise.sump_worst_kg.
/// @param acid as poured from the cans, not negative
/// @source iupac-atomic-weights, abridged
[[nodiscard]] units::Mass sump_worst_case(const Acid& stock,
                                          units::Volume acid,
                                          trace::Trace& trace);
/// The same with bicarbonate of less than full purity: divided by it.
/// @throws std::invalid_argument unless the purity is above 0 and up to 1
[[nodiscard]] units::Mass sump_worst_case(const Acid& stock,
                                          units::Volume acid,
                                          const sources::Sourced<units::Fraction>& purity,
                                          trace::Trace& trace);

/// What becomes of the carbon dioxide while the sump is treated.
enum class Air {
  still,    ///< All of it stays dissolved: a closed or still tank.
  fizzing,  ///< What exceeds saturation (0.034 mol/L) bubbles off.
  aerated   ///< Stirred or blown until the water is in balance with the air.
};

/// Bicarbonate that brings strong acid to a pH, by the balance of charge: b = u + s x r1 x (1 + 2
/// r2) with u = a - h + oh, r1 = 10^(pH - pK1), r2 = 10^(pH - pK2) and s the carbon dioxide left
/// dissolved: u / (1 - r1 r2) still, at most 0.0339 fizzing, at most 0.000014 under air. Salts
/// lower pK1 a little: finish by meter.
/// @param acid in the water, above 0
/// @param target 4.5 to 8.3; Unfit outside: bicarbonate alone ends at 8.34
/// @source carbonate-constants, "Bicarbonate demand" and "Plain bicarbonate"
[[nodiscard]] Checked<Molarity> bicarbonate_for(Molarity acid, Ph target, Air air);

/// Wash water in the sump and where its pH is to go.
struct Sump {
  units::Volume water{};
  Ph measured{};
  Ph target{};
  Air air = Air::fizzing;
  units::Fraction purity = bicarbonate_purity.value;  ///< Of the bicarbonate, above 0.
};

/// What the sump needs by its measured pH.
struct SumpDose {
  units::Mass bicarbonate;
  units::Volume carbon_dioxide;  ///< Upper bound: none stays dissolved.
};

/// The dose for a measured pH, taken as strong acid alone. Unfit above a reading of 4.5, which no
/// longer tells how much acid there is, and for a target that is not above the reading.
[[nodiscard]] Checked<SumpDose> sump_dose(const Sump& sump);
/// The same, the bicarbonate's derivation recorded at `key`.
[[nodiscard]] Checked<SumpDose> sump_dose(const Sump& sump,
                                          std::string_view key,
                                          trace::Trace& trace);

/// The pH of a closed vessel with acid and bicarbonate: full balance of charge, solved by halving.
/// @param acid,bicarbonate put in, not negative
/// @source carbonate-constants, "Closed titration"
[[nodiscard]] Ph closed_ph(Molarity acid, Molarity bicarbonate);

}  // namespace basinwright::chemistry
