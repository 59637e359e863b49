#include "basinwright/chemistry/chlorine.hpp"

#include "basinwright/chemistry/gas.hpp"
#include "basinwright/chemistry/substances.hpp"
#include "constants.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

constexpr double strongest_liquid = 250.0;  // g/L; liquids keep to about 200 at most.

double grams(Substance substance) {
  return molar_mass(substance).in_grams_per_mole();
}

// By definition a mole of hypochlorite counts as a mole of chlorine.
double chlorine_per_sodium_hypochlorite() {
  return grams(Substance::chlorine) / grams(Substance::sodium_hypochlorite);
}

units::Fraction pure_calcium_hypochlorite() {
  return units::fraction(2.0 * grams(Substance::chlorine) / grams(Substance::calcium_hypochlorite));
}

units::Concentration available(TradePercent label) {
  return units::grams_per_litre(label.value * 10.0);
}
units::Concentration available(const AvailableByMass& label) {
  return label.density * label.share.share();
}
units::Concentration available(const SodiumHypochloriteByMass& label) {
  return label.density * (label.share.share() * chlorine_per_sodium_hypochlorite());
}

Checked<ChlorineStock> solid_stock(CalciumHypochlorite label, sources::Source source) {
  if (!(label.available.share() > 0.0)) return Unfit{"chlorine must be stronger than 0 %"};
  if (label.available > pure_calcium_hypochlorite()) {
    return Unfit{"pure calcium hypochlorite holds no more than 99.2 % available chlorine"};
  }
  return ChlorineStock{std::nullopt, label.available, source};
}

Checked<ChlorineStock> liquid_stock(units::Concentration content, sources::Source source) {
  if (!(content.si() > 0.0)) return Unfit{"chlorine must be stronger than 0 %"};
  if (!(content.in(units::grams_per_litre) <= strongest_liquid)) {
    return Unfit{"liquid chlorine is not sold stronger than 250 g/L"};
  }
  return ChlorineStock{content, std::nullopt, source};
}

struct StockReader {
  sources::Source source;
  Checked<ChlorineStock> operator()(CalciumHypochlorite label) const {
    return solid_stock(label, source);
  }
  template <class Liquid>
  Checked<ChlorineStock> operator()(const Liquid& label) const {
    return liquid_stock(available(label), source);
  }
};

using trace::From;
constexpr std::string_view solution_key = "quantities.chlorine_wash.solution_l";
constexpr std::string_view liquid_key = "quantities.chlorine_wash.liquid_l";

void add_granules(ChlorineWash& wash,
                  const ChlorineStock& stock,
                  const ChlorineWashRates& rates,
                  trace::Trace& trace) {
  wash.granules = trace.note("quantities.chlorine_wash.granules_kg",
                             wash.available / stock.solid->share(),
                             "solution * strength / available",
                             {{"solution", wash.solution, From{solution_key}},
                              {"strength", rates.strength},
                              {"available", *stock.solid, stock.source}});
  wash.water = trace.note("quantities.chlorine_wash.water_l",
                          wash.solution,
                          "solution",
                          {{"solution", wash.solution, From{solution_key}}});
}

void add_liquid(ChlorineWash& wash,
                const ChlorineStock& stock,
                const ChlorineWashRates& rates,
                trace::Trace& trace) {
  wash.liquid = trace.note("quantities.chlorine_wash.liquid_l",
                           wash.available / *stock.liquid,
                           "solution * strength / stock",
                           {{"solution", wash.solution, From{solution_key}},
                            {"strength", rates.strength},
                            {"stock", *stock.liquid, stock.source}});
  wash.water = trace.note(
      "quantities.chlorine_wash.water_l",
      wash.solution - wash.liquid,
      "solution - liquid",
      {{"solution", wash.solution, From{solution_key}}, {"liquid", wash.liquid, From{liquid_key}}});
}

}  // namespace

Checked<ChlorineStock> chlorine_stock(const ChlorineLabel& label, sources::Source source) {
  return std::visit(StockReader{source}, label);
}

Checked<ChlorineWash> chlorine_wash(const WorkedArea& area,
                                    const ChlorineStock& stock,
                                    const ChlorineWashRates& rates,
                                    trace::Trace& trace) {
  require_amount(area.area, "area to wash is negative or not finite");
  if (stock.liquid && *stock.liquid < rates.strength.value) {
    return Unfit{"the liquid chlorine is weaker than the wash"};
  }
  ChlorineWash wash;
  wash.solution = trace.note(solution_key,
                             area.area * rates.rate.value,
                             "area * rate",
                             {{"area", area.area, From{area.key}}, {"rate", rates.rate}});
  wash.available =
      trace.note("quantities.chlorine_wash.available_kg",
                 wash.solution * rates.strength.value,
                 "solution * strength",
                 {{"solution", wash.solution, From{solution_key}}, {"strength", rates.strength}});
  if (stock.solid) {
    add_granules(wash, stock, rates, trace);
  } else if (stock.liquid) {
    add_liquid(wash, stock, rates, trace);
  }
  return wash;
}

Checked<units::Volume> liquid_for(units::Volume mix,
                                  units::Concentration target,
                                  const ChlorineStock& stock) {
  require_amount(mix, "mix is negative or not finite");
  if (!stock.liquid) return Unfit{"granules have no volume: weigh them"};
  if (!(target.si() > 0.0)) return Unfit{"the mix must be stronger than 0"};
  if (*stock.liquid < target) return Unfit{"the liquid chlorine is weaker than the mix"};
  return mix * (target / *stock.liquid);
}

units::Volume chlorine_gas(units::Mass available_chlorine) {
  return gas_volume(available_chlorine / molar_mass(Substance::chlorine));
}

units::Volume acid_that_frees(units::Mass available_chlorine, const Acid& acid) {
  const double acid_moles = 2.0 * (available_chlorine / molar_mass(Substance::chlorine)).count();
  return moles(acid_moles) * molar_mass(Substance::hydrogen_chloride) / acid.hydrogen_chloride;
}

sources::Sourced<double> dechlorinator_ratio(Dechlorinator means) {
  constexpr sources::Source table{
      sources::Kind::published, "awwa-dechlorination", "tables 7-2 and 7-5"};
  switch (means) {
    case Dechlorinator::sodium_thiosulfate:
      return {1.9, table};
    case Dechlorinator::sodium_bisulfite:
      return {1.61, table};
    case Dechlorinator::sodium_metabisulfite:
      return {1.47, table};
    case Dechlorinator::sodium_sulfite:
      return {1.96, table};
    case Dechlorinator::ascorbic_acid:
      return {2.5, table};
    case Dechlorinator::sodium_ascorbate:
      return {2.8, table};
  }
  return {};
}

units::Mass dechlorinator_for(Dechlorinator means,
                              units::Volume water,
                              units::Concentration chlorine) {
  require_amount(water, "water is negative or not finite");
  require_amount(chlorine, "chlorine is negative or not finite");
  return water * chlorine * dechlorinator_ratio(means).value;
}

}  // namespace basinwright::chemistry
