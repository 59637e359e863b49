#include "basinwright/job/chemicals.hpp"

namespace basinwright::job {

chemistry::Checked<chemistry::ChlorineStock> chlorine_stock_of(const Chemicals& c) {
  const Sourced<units::Fraction>& strength = c.hypochlorite_strength;
  switch (c.chlorine_kind) {
    case ChlorineKind::trade:
      return chemistry::chlorine_stock(chemistry::TradePercent{c.hypochlorite_trade_percent.value},
                                       c.hypochlorite_trade_percent.source);
    case ChlorineKind::available_by_weight:
      return chemistry::chlorine_stock(
          chemistry::AvailableByMass{strength.value, c.hypochlorite_density.value},
          strength.source);
    case ChlorineKind::sodium_by_weight:
      return chemistry::chlorine_stock(
          chemistry::SodiumHypochloriteByMass{strength.value, c.hypochlorite_density.value},
          strength.source);
    case ChlorineKind::calcium_hypochlorite:
      return chemistry::chlorine_stock(chemistry::CalciumHypochlorite{strength.value},
                                       strength.source);
  }
  return chemistry::Unfit{"no such kind of chlorine"};
}

}  // namespace basinwright::job
