#include "basinwright/chemistry/neutralise.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/chemistry/gas.hpp"
#include "basinwright/chemistry/substances.hpp"
#include "constants.hpp"
#include "contract.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

constexpr double strong_acid_reads_to =
    4.5;  // Above it carbonic acid, not strong acid, sets the pH.
// Plain bicarbonate stands at (pK1 + pK2) / 2 = 8.34: no amount of it lifts still water to that.
constexpr double formula_low = 4.5;
constexpr double formula_high = 8.3;

double hydrogen_ions(Ph target) {
  return std::pow(10.0, -target.value());
}
double hydroxide_ions(Ph target) {
  return water_ions.value / hydrogen_ions(target);
}
// Bicarbonate for one of carbon dioxide, and carbonate for one of bicarbonate.
double single_ratio(Ph target) {
  return std::pow(10.0, target.value() - carbonic_first.value);
}
double twice_ratio(Ph target) {
  return std::pow(10.0, target.value() - carbonic_second.value);
}

// Bicarbonate that the acid uses up, and what hydroxide there is at the target, mol/L.
double used_up(Molarity acid, Ph target) {
  return acid.in_moles_per_litre() - hydrogen_ions(target) + hydroxide_ions(target);
}

// Carbon dioxide left dissolved, mol/L. In still water all of what was freed, and of what carbonate
// frees as it takes up a hydrogen.
double dissolved(Molarity acid, Ph target, Air air) {
  const double all = used_up(acid, target) / (1.0 - single_ratio(target) * twice_ratio(target));
  switch (air) {
    case Air::still:
      return all;
    case Air::fizzing:
      return std::min(all, carbon_dioxide_saturation.value.in_moles_per_litre());
    case Air::aerated:
      return std::min(all, carbon_dioxide_under_air.value.in_moles_per_litre());
  }
  return 0.0;
}

// Negative charge less positive, in mol/L: rises with pH, nought at the pH of the mix.
double charge(double at_ph, double acid, double bicarbonate) {
  const double h = std::pow(10.0, -at_ph);
  // HCO3 and CO3 for one of CO2.
  const double single = std::pow(10.0, at_ph - carbonic_first.value);
  const double twice = single * std::pow(10.0, at_ph - carbonic_second.value);
  const double carbonate_charge = bicarbonate * (single + 2.0 * twice) / (1.0 + single + twice);
  return acid + water_ions.value / h + carbonate_charge - bicarbonate - h;
}

}  // namespace

SurfaceWash surface_wash(const WorkedArea& counted,
                         const SurfaceRates& rates,
                         trace::Trace& trace) {
  require_amount(counted.area, "area to neutralise is negative or not finite");
  const units::Mass bicarbonate =
      trace.note("quantities.neutralise.surface_kg",
                 counted.area * rates.bicarbonate.value,
                 "area * rate",
                 {{"area", counted.area, trace::From{counted.key}}, {"rate", rates.bicarbonate}},
                 "for the surface only; the sump is a quantity of its own");
  const units::Volume water =
      trace.note("quantities.neutralise.water_l",
                 bicarbonate / rates.mix.value,
                 "bicarbonate / mix",
                 {{"bicarbonate", bicarbonate, trace::From{"quantities.neutralise.surface_kg"}},
                  {"mix", rates.mix}});
  return {bicarbonate, water};
}

units::Mass sump_worst_case(const Acid& stock, units::Volume acid, trace::Trace& trace) {
  return sump_worst_case(stock, acid, bicarbonate_purity, trace);
}

units::Mass sump_worst_case(const Acid& stock,
                            units::Volume acid,
                            const sources::Sourced<units::Fraction>& purity,
                            trace::Trace& trace) {
  require_purity(purity.value);
  require_amount(acid, "acid is negative or not finite");
  const sources::Sourced<double> ratio{
      molar_mass(Substance::sodium_bicarbonate).in_grams_per_mole() /
          molar_mass(Substance::hydrogen_chloride).in_grams_per_mole(),
      molar_masses};
  return trace.note("quantities.neutralise.sump_worst_kg",
                    acid * stock.hydrogen_chloride * ratio.value / purity.value.share(),
                    "acid * content * ratio / purity",
                    {{"acid", acid, trace::From{"quantities.etch.acid_l"}},
                     {"content", stock.hydrogen_chloride, stock.source},
                     {"ratio", ratio},
                     {"purity", purity}},
                    "upper bound: no acid spent on the shell; the dose goes by the measured pH");
}

Checked<Molarity> bicarbonate_for(Molarity acid, Ph target, Air air) {
  if (!(acid.in_moles_per_litre() > 0.0)) return Unfit{"there is no acid to neutralise"};
  if (!(target.value() >= formula_low && target.value() <= formula_high)) {
    return Unfit{"bicarbonate brings water to a pH of 4.5 to 8.3 only"};
  }
  const double kept = dissolved(acid, target, air);
  const double dose =
      used_up(acid, target) + kept * single_ratio(target) * (1.0 + 2.0 * twice_ratio(target));
  return moles_per_litre(std::max(dose, 0.0));
}

Checked<SumpDose> sump_dose(const Sump& sump) {
  require_amount(sump.water, "water in the sump is negative or not finite");
  require_purity(sump.purity);
  if (!(sump.measured.value() >= 0.0)) return Unfit{"no meter or paper reads a pH below 0"};
  if (sump.measured.value() > strong_acid_reads_to) {
    return Unfit{
        "above pH 4.5 the reading does not tell how much acid is left: aerate, add a little, "
        "measure again"};
  }
  if (!(sump.target > sump.measured)) return Unfit{"the target is not above the reading"};
  const auto strength = bicarbonate_for(strong_acid_at(sump.measured), sump.target, sump.air);
  if (const Unfit* unfit = std::get_if<Unfit>(&strength)) return *unfit;
  const units::Mass bicarbonate =
      std::get<Molarity>(strength) * sump.water * molar_mass(Substance::sodium_bicarbonate);
  return SumpDose{bicarbonate / sump.purity.share(),
                  gas_volume(strong_acid_at(sump.measured) * sump.water)};
}

Checked<SumpDose> sump_dose(const Sump& sump, std::string_view key, trace::Trace& trace) {
  Checked<SumpDose> made = sump_dose(sump);
  const auto* dose = std::get_if<SumpDose>(&made);
  if (dose == nullptr) return made;
  constexpr double litres_in_cubic_metre = 1000.0;
  const Molarity acid = strong_acid_at(sump.measured);
  const units::Mass of_a_mole = moles(1.0) * molar_mass(Substance::sodium_bicarbonate);
  const sources::Source equilibrium = carbonic_first.source;
  trace.note(
      key,
      dose->bicarbonate,
      "water * litres * (acid - 10 ^ (0 - target) + ions * 10 ^ target + kept * 10 ^ (target "
      "- first) * (1 + 2 * 10 ^ (target - second))) * molar / purity",
      {{"water", sump.water, trace::From{"quantities.wash_water.etch_l"}},
       {"litres", litres_in_cubic_metre, equilibrium},
       {"acid", acid.in_moles_per_litre(), equilibrium},
       {"target", sump.target.value(), {sources::Kind::given, "", "/site/sewer"}},
       {"ions", water_ions},
       {"kept", dissolved(acid, sump.target, sump.air), equilibrium},
       {"first", carbonic_first},
       {"second", carbonic_second},
       {"molar", of_a_mole, molar_masses},
       {"purity", sump.purity, bicarbonate_purity.source}},
      "mol/L; acid is what alone would give the pH read, kept the carbon dioxide that stays "
      "dissolved");
  return made;
}

Ph closed_ph(Molarity acid, Molarity bicarbonate) {
  const double a = acid.in_moles_per_litre();
  const double b = bicarbonate.in_moles_per_litre();
  if (!std::isfinite(a) || !std::isfinite(b) || a < 0.0 || b < 0.0) {
    throw std::invalid_argument("acid or bicarbonate is negative or not finite");
  }
  constexpr double most_acid = -2.0;
  constexpr double most_alkaline = 14.0;
  return ph(root_of_rising(
      [a, b](double at_ph) { return charge(at_ph, a, b); }, 0.0, most_acid, most_alkaline));
}

}  // namespace basinwright::chemistry
