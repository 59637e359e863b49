// Gas given off: its volume at 20 C and what share of an empty shell it fills.
#pragma once

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/moles.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"

namespace basinwright::chemistry {

/// Limits in the air people breathe.
inline constexpr sources::Sourced<units::PartsPerMillion> chlorine_danger{
    units::parts_per_million(10.0), {sources::Kind::published, "niosh-idlh", "7782-50-5"}};
inline constexpr sources::Sourced<units::PartsPerMillion> hydrogen_chloride_danger{
    units::parts_per_million(45.0), {sources::Kind::published, "niosh-idlh", "7647-01-0"}};
inline constexpr sources::Sourced<units::PartsPerMillion> carbon_dioxide_workday{
    units::parts_per_million(5000.0), {sources::Kind::published, "eh40", "8 h"}};
inline constexpr sources::Sourced<units::PartsPerMillion> carbon_dioxide_short{
    units::parts_per_million(15000.0), {sources::Kind::published, "eh40", "15 min"}};

/// V = n R T / p at 20 C and 1 atm: 24.055 L a mole.
/// @source gas-constant, value
[[nodiscard]] units::Volume gas_volume(Moles amount);

/// Carbon dioxide when acid turns this much bicarbonate into salt and water, mole for mole.
[[nodiscard]] units::Volume carbon_dioxide_of(units::Mass bicarbonate);
/// Carbon dioxide when bicarbonate neutralises all of the acid, mole for mole.
[[nodiscard]] units::Volume carbon_dioxide_from_bicarbonate(const Acid& acid, units::Volume volume);
/// Carbon dioxide when the cement's lime neutralises all of it: half a mole for each of acid.
[[nodiscard]] units::Volume carbon_dioxide_from_lime(const Acid& acid, units::Volume volume);

/// Gas against the space it pools in.
struct GasInShell {
  units::Fraction share;  ///< By volume, were it to stay and mix.
  units::PartsPerMillion by_volume;
  units::Volume air_needed;  ///< Air that thins it to the limit.
};

/// @param space volume of the empty shell, above 0
/// @throws std::invalid_argument when it is not
[[nodiscard]] GasInShell gas_in_shell(units::Volume gas,
                                      units::Volume space,
                                      units::PartsPerMillion limit);

}  // namespace basinwright::chemistry
