#include "basinwright/chemistry/checks.hpp"

#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

TEST_CASE("a rinsed surface stands within one unit of its rinse water") {
  // MIL-HDBK-1110 6.7.2.1.
  CHECK(chem::surface_is_rinsed(chem::ph(6.6), chem::ph(7.6)));
  CHECK(chem::surface_is_rinsed(chem::ph(8.6), chem::ph(7.6)));
  CHECK(chem::surface_is_rinsed(chem::ph(9.3), chem::ph(8.3)));
  CHECK_FALSE(chem::surface_is_rinsed(chem::ph(6.5), chem::ph(7.6)));
  CHECK_FALSE(chem::surface_is_rinsed(chem::ph(8.7), chem::ph(7.6)));
}

TEST_CASE("no area asks for no reading and a negative one breaks the contract") {
  const auto negative = units::square_metres(-1.0);
  CHECK(chem::ph_readings(units::square_metres(0.0)) == 0);
  CHECK(chem::dryness_sheets(units::square_metres(0.0)) == 0);
  CHECK_THROWS_AS(chem::ph_readings(negative), std::invalid_argument);
  CHECK_THROWS_AS(chem::dryness_sheets(negative), std::invalid_argument);
}
