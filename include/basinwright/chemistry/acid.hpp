// Hydrochloric acid: its strength from the label, its dilution, the vapour over it.
#pragma once

#include <compare>
#include <variant>

#include "basinwright/chemistry/moles.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::chemistry {

/// Degrees Baume for liquids heavier than water, at 60 F (15.6 C).
struct Baume {
  double degrees = 0.0;
  friend constexpr auto operator<=>(Baume, Baume) = default;
};

/// What a label says: a share by mass, degrees Baume or mol/L.
using AcidLabel = std::variant<units::Fraction, Baume, Molarity>;

/// Hydrochloric acid of one strength at 20 C.
struct Acid {
  units::Fraction strength{};              ///< HCl by mass.
  units::Concentration density;            ///< Of the solution.
  units::Concentration hydrogen_chloride;  ///< HCl in a volume of solution.
  Molarity molarity;
  sources::Source source;  ///< Where the label's figure comes from.
};

/// Acid and water by volume: 1 : 2 is {1, 2}; neat acid is {1, 0}.
struct Parts {
  double acid = 1.0;
  double water = 0.0;
  friend constexpr auto operator<=>(Parts, Parts) = default;
};

/// The acid sold as "20 degrees Baume": 31.45 % by mass. Rounded tables pair it with 32 %.
inline constexpr sources::Sourced<units::Fraction> ordinary_acid{
    units::percent(31.45), {sources::Kind::from_memory, "hcl-trade-grades", "20 degrees Baume"}};

/// What published practice for painting etches with, by mass.
inline constexpr sources::Sourced<units::Fraction> published_etch_low{
    units::percent(5.0), {sources::Kind::published, "mil-hdbk-1110", "5.14"}};
inline constexpr sources::Sourced<units::Fraction> published_etch_high{
    units::percent(10.0), {sources::Kind::published, "mil-hdbk-1110", "5.14"}};

/// Acid of the strength on its label: density from the CRC table by linear interpolation (good to
/// 0.2 kg/m3), HCl in a volume = strength x density, molarity = that / M(HCl).
///
/// Degrees Baume go through the specific gravity at 60 F, brought to 20 C: within 0.1 % by mass of
/// the trade grades from 18 to 22 degrees, 0.3 % below.
/// @param label a strength above 0 and up to 40 % by mass; anything else is Unfit
/// @source crc-hcl-density, table; baume-scale, formula
[[nodiscard]] Checked<Acid> acid_from_label(const AcidLabel& label, sources::Source source);
/// Acid of 31.45 %.
[[nodiscard]] Acid ordinary_acid_as_sold();

/// Specific gravity 60/60 F of a liquid heavier than water: 145 / (145 - degrees).
/// @source baume-scale, formula
[[nodiscard]] double specific_gravity(Baume label);

/// Acid and water after mixing.
struct Dilution {
  Acid mixed;
  units::Volume volume;  ///< A little less than the sum: 31.45 % acid contracts by up to 0.5 %.
  units::Mass mass;
};

/// Water's at 20 C.
[[nodiscard]] const sources::Sourced<units::Concentration>& density_of_water();

/// Mixes by balance of mass: strength = w1 V1 d1 / (V1 d1 + V2 d_water).
/// @param acid,water volumes at 20 C, not negative, acid above 0
[[nodiscard]] Dilution dilute(const Acid& stock, units::Volume acid, units::Volume water);
/// The mix of so many parts.
[[nodiscard]] Acid mixed(const Acid& stock, Parts parts);

/// Water to one part of acid, by volume, for a strength by mass:
/// (w1 - w2) / w2 x density / density of water. Unfit unless 0 < target < the stock's strength.
[[nodiscard]] Checked<Parts> parts_for(const Acid& stock, units::Fraction target);

/// Whether a mix is stronger than published practice for painting.
[[nodiscard]] bool above_published_range(const Acid& mix);

/// Whether a figure is the value itself or only a bound of it.
enum class Bound { equal, at_most, at_least };

/// Hydrogen chloride in still air over the open liquid at 20 C.
struct Vapour {
  units::PartsPerMillion by_volume;
  Bound bound = Bound::equal;
};

/// Partial pressure / 1 atm; the logarithm interpolated in a table from 10 to 34 %, a bound beyond.
/// @source hcl-vapour, table
[[nodiscard]] Vapour vapour_over(const Acid& liquid);

}  // namespace basinwright::chemistry
