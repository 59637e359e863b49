// What is poured and by how much: the rate book's chemicals.
#pragma once

#include "basinwright/chemistry/acid.hpp"
#include "basinwright/chemistry/chlorine.hpp"
#include "basinwright/chemistry/degrease.hpp"
#include "basinwright/chemistry/etch.hpp"
#include "basinwright/chemistry/neutralise.hpp"
#include "basinwright/chemistry/waste_water.hpp"
#include "basinwright/sources/source.hpp"

namespace basinwright::job {

using sources::Sourced;

/// What the strength on a chlorine label is of.
enum class ChlorineKind { trade, available_by_weight, sodium_by_weight, calcium_hypochlorite };

/// Granules as sold for pools.
inline constexpr Sourced<units::Fraction> ordinary_granules{
    units::percent(65.0), {sources::Kind::published, "327-iac-8-3.4-24", "table 24-1"}};

struct Chemicals {
  Sourced<units::Fraction> acid = chemistry::ordinary_acid;
  chemistry::EtchRates etch;
  /// Not filled to the brim: what is carried must not splash.
  Sourced<units::Volume> bucket{units::litres(10),
                                {sources::Kind::assumed, "mixing-vessels", "bucket"}};
  Sourced<units::Volume> can{units::litres(5),
                             {sources::Kind::assumed, "mixing-vessels", "watering can"}};
  chemistry::SurfaceRates neutralise;
  ChlorineKind chlorine_kind = ChlorineKind::trade;
  Sourced<double> hypochlorite_trade_percent = chemistry::ordinary_trade_percent;
  /// Of the kinds other than trade percent.
  Sourced<units::Fraction> hypochlorite_strength = ordinary_granules;
  Sourced<units::Concentration> hypochlorite_density = chemistry::hypochlorite_density;
  chemistry::ChlorineWashRates chlorine_wash;
  chemistry::DegreaseRates degrease;
  Sourced<units::ApplicationRate> rinse = chemistry::rinse_rate;
  /// Rinses after each wash: until a strip shows no chlorine; after the soap; the flush of the
  /// acid; after the bicarbonate, and the last clean one.
  Sourced<double> rinses_of_chlorine{2.0, {sources::Kind::assumed, "rinse-rate", "after chlorine"}};
  Sourced<double> rinses_of_degreaser{1.0, {sources::Kind::assumed, "rinse-rate", "after soap"}};
  Sourced<double> rinses_of_acid{1.0, {sources::Kind::assumed, "rinse-rate", "after acid"}};
  Sourced<double> rinses_of_bicarbonate{
      2.0, {sources::Kind::assumed, "rinse-rate", "after bicarbonate"}};
};

/// The chlorine of the wash by its label. Unfit as chemistry::chlorine_stock says.
[[nodiscard]] chemistry::Checked<chemistry::ChlorineStock> chlorine_stock_of(
    const Chemicals& chemicals);

}  // namespace basinwright::job
