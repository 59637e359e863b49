#include "basinwright/chemistry/ph_dose.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/chemistry/substances.hpp"
#include "constants.hpp"
#include "contract.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

using trace::From;

constexpr sources::Source equilibrium{
    sources::Kind::from_memory, "plummer-busenberg-1982", "pK1 and pK2"};

// Carbonate's charge for each mole of it, at a pH.
double charge_ratio(const Water& water, double at_ph) {
  const CarbonateConstants k = carbonate_constants(water.temperature);
  const double single = std::pow(10.0, at_ph - k.first);
  const double twice = single * std::pow(10.0, at_ph - k.second);
  return (single + 2.0 * twice) / (1.0 + single + twice);
}

// Alkalinity that is carbonate's, mol/m3.
double equivalents(const Water& water) {
  require_amount(water.alkalinity, "alkalinity is negative or not finite");
  const units::Concentration own = carbonate_alkalinity(water);
  const double grams_per_cubic_metre = own.in(units::milligrams_per_litre);
  return std::max(0.0, grams_per_cubic_metre / calcium_carbonate_equivalent().in_grams_per_mole());
}

struct Carbonate {
  double alkalinity;  // mol/m3
  double carbon;      // mol/m3
};

Carbonate carbonate_of(const Water& water) {
  const double alkalinity = equivalents(water);
  return {alkalinity, alkalinity / charge_ratio(water, water.ph.value())};
}

sources::Source given(std::string_view place) {
  return {sources::Kind::given, "", place};
}

// SI: kilograms a mole.
sources::Sourced<double> kilograms_per_mole(Substance substance) {
  return {(moles(1.0) * molar_mass(substance)).si(), molar_masses};
}

}  // namespace

Ph ph_after_bicarbonate(const Water& water, units::Concentration rise) {
  require_amount(rise, "rise of alkalinity is negative or not finite");
  const Carbonate before = carbonate_of(water);
  const double added =
      rise.in(units::milligrams_per_litre) / calcium_carbonate_equivalent().in_grams_per_mole();
  if (!(before.carbon + added > 0.0)) return water.ph;
  const double wanted = (before.alkalinity + added) / (before.carbon + added);
  constexpr double most_acid = 2.0;
  constexpr double most_alkaline = 12.0;
  return ph(root_of_rising(
      [&](double at_ph) { return charge_ratio(water, at_ph); }, wanted, most_acid, most_alkaline));
}

units::Volume acid_to_ph(units::Volume filled,
                         const Water& water,
                         const sources::Sourced<Ph>& target,
                         const Acid& acid,
                         trace::Trace& trace) {
  require_amount(filled, "filled volume is negative or not finite");
  const Carbonate now = carbonate_of(water);
  if (!(water.ph > target.value) || !(now.carbon > 0.0)) return {};
  const double ratio = charge_ratio(water, target.value.value());
  const auto molar = kilograms_per_mole(Substance::hydrogen_chloride);
  const units::Mass chloride =
      units::Mass::from_si(filled.si() * (now.alkalinity - now.carbon * ratio) * molar.value);
  return trace.note("quantities.start_up.ph_acid_l",
                    chloride / acid.hydrogen_chloride,
                    "filled * (alkalinity - carbon * charge) * molar / content",
                    {{"filled", filled, From{"takeoff.water_volume_m3"}},
                     {"alkalinity", now.alkalinity, given("/refill/analysis")},
                     {"carbon", now.carbon, equilibrium},
                     {"charge", ratio, equilibrium},
                     {"molar", molar},
                     {"content", acid.hydrogen_chloride, acid.source}},
                    "mol/m3; carbon is what the alkalinity holds at the pH read, charge what a "
                    "mole of it keeps at the pH wanted");
}

units::Mass soda_ash_to_ph(units::Volume filled,
                           const Water& water,
                           const sources::Sourced<Ph>& target,
                           trace::Trace& trace) {
  require_amount(filled, "filled volume is negative or not finite");
  const Carbonate now = carbonate_of(water);
  if (!(water.ph < target.value) || !(now.carbon > 0.0)) return {};
  const double ratio = charge_ratio(water, target.value.value());
  const auto molar = kilograms_per_mole(Substance::sodium_carbonate);
  const double added = (now.carbon * ratio - now.alkalinity) / (2.0 - ratio);
  return trace.note("quantities.start_up.ph_soda_ash_kg",
                    units::Mass::from_si(filled.si() * added * molar.value),
                    "filled * (carbon * charge - alkalinity) / (2 - charge) * molar",
                    {{"filled", filled, From{"takeoff.water_volume_m3"}},
                     {"carbon", now.carbon, equilibrium},
                     {"charge", ratio, equilibrium},
                     {"alkalinity", now.alkalinity, given("/refill/analysis")},
                     {"molar", molar}},
                    "mol/m3; each mole of soda ash brings two of alkalinity and one of carbonate");
}

}  // namespace basinwright::chemistry
