#include "basinwright/chemistry/water_units.hpp"

#include "support/catch.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;

TEST_CASE("whole units are whole though their last bits are not") {
  // Ten readings of a tenth add up to a hair under one unit.
  units::Volume used;
  for (int i = 0; i < 10; ++i) used += chem::kilolitres(0.1);
  REQUIRE(used < chem::kilolitres(1.0));
  CHECK(chem::billed_units(used, chem::kilolitres, chem::Metering::whole) == 1.0);
  CHECK(chem::billed_units(units::litres(1999.0), chem::kilolitres, chem::Metering::whole) == 1.0);
}

TEST_CASE("water, hoses and buckets that are none break the contract") {
  const auto pool = units::cubic_metres(50.0);
  CHECK_THROWS_AS(chem::fill_time(pool, units::litres_per_minute(0.0)), std::invalid_argument);
  CHECK_THROWS_AS(chem::fill_time(-pool, units::litres_per_minute(1.0)), std::invalid_argument);
  CHECK_THROWS_AS(chem::bucket_test(units::litres(10.0), units::seconds(0.0)),
                  std::invalid_argument);
  CHECK_THROWS_AS(chem::billed_units(-pool, chem::kilolitres, chem::Metering::exact),
                  std::invalid_argument);
}
