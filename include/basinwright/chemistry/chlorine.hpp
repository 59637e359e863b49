// Hypochlorite: its strength, the chlorine wash, the gas it gives with acid, dechlorination.
#pragma once

#include <optional>
#include <variant>

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/unfit.hpp"
#include "basinwright/chemistry/worked_area.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/trace/trace.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// Trade percent: grams of available chlorine in 100 mL.
struct TradePercent {
  double value = 0.0;
};
/// Available chlorine by mass, with the liquid's density.
struct AvailableByMass {
  units::Fraction share;
  units::Concentration density;
};
/// Sodium hypochlorite by mass, with the liquid's density.
struct SodiumHypochloriteByMass {
  units::Fraction share;
  units::Concentration density;
};
/// Calcium hypochlorite granules: available chlorine by mass.
struct CalciumHypochlorite {
  units::Fraction available;
};
using ChlorineLabel =
    std::variant<TradePercent, AvailableByMass, SodiumHypochloriteByMass, CalciumHypochlorite>;

/// A chlorine source by its available chlorine: a liquid by volume or a solid by mass.
struct ChlorineStock {
  std::optional<units::Concentration> liquid{};
  std::optional<units::Fraction> solid{};
  sources::Source source{};
};

/// Density of 12.5 trade percent liquid, for labels that give a share by mass alone.
inline constexpr sources::Sourced<units::Concentration> hypochlorite_density{
    units::grams_per_litre(1160.0),
    {sources::Kind::published, "327-iac-8-3.4-24", "note on trade percent"}};
/// Liquid as sold for pools.
inline constexpr sources::Sourced<double> ordinary_trade_percent{
    12.5, {sources::Kind::common_practice, "hypochlorite-grades", "pool liquid"}};

/// Available chlorine: trade % x 10 g/L; share x density; sodium hypochlorite x Cl2 / NaOCl.
/// Unfit at or below 0, a liquid above 250 g/L, a solid above pure calcium hypochlorite (99.2 %).
/// @source 327-iac-8-3.4-24, note; iupac-atomic-weights, abridged
[[nodiscard]] Checked<ChlorineStock> chlorine_stock(const ChlorineLabel& label,
                                                    sources::Source source);

/// One quart of 5.25 % bleach and three of water: 1.25 % available chlorine.
inline constexpr sources::Sourced<units::Concentration> chlorine_wash_strength{
    units::grams_per_litre(12.5), {sources::Kind::published, "mil-hdbk-1110", "5.19.3"}};
inline constexpr sources::Sourced<units::ApplicationRate> chlorine_wash_rate{
    units::litres_per_square_metre(0.5), {sources::Kind::assumed, "chlorine-wash-rate", "rate"}};

struct ChlorineWashRates {
  sources::Sourced<units::Concentration> strength = chlorine_wash_strength;
  sources::Sourced<units::ApplicationRate> rate = chlorine_wash_rate;
};

/// The wash for a job; `liquid` or `granules` is zero.
struct ChlorineWash {
  units::Volume solution, liquid, water;
  units::Mass granules;
  units::Mass available;  ///< Chlorine in all of it.
};

/// solution = rate x area; liquid = solution x strength / stock, or granules = solution x strength
/// / available share. Unfit when the stock is weaker than the wash. Records
/// quantities.chlorine_wash.solution_l, .liquid_l or .granules_kg, .water_l and .available_kg.
[[nodiscard]] Checked<ChlorineWash> chlorine_wash(const WorkedArea& area,
                                                  const ChlorineStock& stock,
                                                  const ChlorineWashRates& rates,
                                                  trace::Trace& trace);

/// Liquid for a mix of another strength: V x target / stock. Unfit when the stock is weaker.
[[nodiscard]] Checked<units::Volume> liquid_for(units::Volume mix,
                                                units::Concentration target,
                                                const ChlorineStock& stock);

/// Chlorine gas that acid sets free from this much available chlorine, at 20 C; by definition the
/// same mass.
[[nodiscard]] units::Volume chlorine_gas(units::Mass available);
/// Acid that is enough to set all of it free: two moles of HCl for each of chlorine.
[[nodiscard]] units::Volume acid_that_frees(units::Mass available, const Acid& acid);

/// What takes chlorine out of water.
enum class Dechlorinator {
  sodium_thiosulfate,
  sodium_bisulfite,
  sodium_metabisulfite,
  sodium_sulfite,
  ascorbic_acid,
  sodium_ascorbate
};

/// Mass of it for one of chlorine.
/// @source awwa-dechlorination, tables 7-2 and 7-5
[[nodiscard]] sources::Sourced<double> dechlorinator_ratio(Dechlorinator means);
/// volume x chlorine x ratio, without the fifth more that should be at hand.
[[nodiscard]] units::Mass dechlorinator_for(Dechlorinator means,
                                            units::Volume water,
                                            units::Concentration chlorine);

}  // namespace basinwright::chemistry
