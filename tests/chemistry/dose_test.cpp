#include "basinwright/chemistry/dose.hpp"

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

namespace {

units::Concentration milligrams(double value) {
  return units::milligrams_per_litre(value);
}

}  // namespace

TEST_CASE("the ratio of each dose to its change is the published one") {
  // Grams for a gram of change as CaCO3, by stoichiometry.
  CHECK(chem::dose_ratio(chem::Additive::sodium_bicarbonate) == Approx(1.6787).margin(5e-5));
  CHECK(chem::dose_ratio(chem::Additive::sodium_carbonate) == Approx(1.0590).margin(5e-5));
  CHECK(chem::dose_ratio(chem::Additive::calcium_chloride) == Approx(1.1088).margin(5e-5));
  CHECK(chem::dose_ratio(chem::Additive::calcium_chloride_dihydrate) ==
        Approx(1.4688).margin(5e-5));
  CHECK(chem::dose_ratio(chem::Additive::salt) == 1.0);
}

TEST_CASE("a change, a purity or a volume that is none breaks the contract") {
  using chem::Additive;
  const auto pool = units::cubic_metres(50.0);
  const auto all = units::percent(100.0);
  CHECK_THROWS_AS(chem::additive_dose(Additive::salt, pool, milligrams(-1.0), all),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::additive_dose(Additive::salt, -pool, milligrams(1.0), all),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::additive_dose(Additive::salt, pool, milligrams(1.0), units::percent(0.0)),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::additive_dose(Additive::salt, pool, milligrams(1.0), units::percent(101.0)),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::acid_dose(pool, milligrams(-1.0), chem::ordinary_acid_as_sold()),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::chlorine_dose(pool, milligrams(-1.0), {}), std::invalid_argument);
}
