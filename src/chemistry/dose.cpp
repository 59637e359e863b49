#include "basinwright/chemistry/dose.hpp"

#include "basinwright/chemistry/substances.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

double per_equivalent(Substance substance, double equivalents) {
  return molar_mass(substance).in_grams_per_mole() / equivalents /
         calcium_carbonate_equivalent().in_grams_per_mole();
}

void require_change(units::Volume water, units::Concentration change) {
  require_amount(water, "water is negative or not finite");
  require_amount(change, "change is negative or not finite");
}

}  // namespace

double dose_ratio(Additive additive) {
  switch (additive) {
    case Additive::sodium_bicarbonate:
      return per_equivalent(Substance::sodium_bicarbonate, 1.0);
    case Additive::sodium_carbonate:
      return per_equivalent(Substance::sodium_carbonate, 2.0);
    case Additive::sodium_bisulfate:
      return per_equivalent(Substance::sodium_bisulfate, 1.0);
    case Additive::calcium_chloride:
      return per_equivalent(Substance::calcium_chloride, 2.0);
    case Additive::calcium_chloride_dihydrate:
      return per_equivalent(Substance::calcium_chloride_dihydrate, 2.0);
    case Additive::stabiliser:
    case Additive::salt:
      return 1.0;
  }
  return 1.0;
}

units::Mass additive_dose(Additive additive,
                          units::Volume water,
                          units::Concentration change,
                          units::Fraction purity) {
  require_change(water, change);
  if (!(purity.share() > 0.0 && purity.share() <= 1.0)) {
    throw std::invalid_argument("purity is not above 0 and up to 1");
  }
  return water * change * (dose_ratio(additive) / purity.share());
}

units::Volume acid_dose(units::Volume water,
                        units::Concentration alkalinity_fall,
                        const Acid& acid) {
  require_change(water, alkalinity_fall);
  return water * (alkalinity_fall / acid.hydrogen_chloride) *
         per_equivalent(Substance::hydrogen_chloride, 1.0);
}

ChlorineDose chlorine_dose(units::Volume water,
                           units::Concentration rise,
                           const ChlorineStock& stock) {
  require_change(water, rise);
  const units::Mass chlorine = water * rise;
  if (stock.solid) return {{}, chlorine / stock.solid->share()};
  if (stock.liquid) return {chlorine / *stock.liquid, {}};
  return {};
}

}  // namespace basinwright::chemistry
