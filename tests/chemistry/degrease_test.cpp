#include "basinwright/chemistry/degrease.hpp"

#include "chemistry/steps.hpp"

namespace chem = basinwright::chemistry;
namespace units = basinwright::units;
using basinwright::trace::Trace;
using chemistry_rows::hold_steps;

TEST_CASE("the degreasing wash of a typical pool is half a litre in twenty") {
  Trace trace = Trace::recording();
  const auto wash = chem::degrease({units::square_metres(92.25)}, {}, trace);
  // 1 L of mix for 4.5 m2 (assumed): 92.25 m2 take 20.5 L, one whole recipe (common practice).
  CHECK(wash.mixed.in(units::litres) == Approx(20.5));
  CHECK(wash.concentrate.in(units::litres) == Approx(0.5));
  CHECK(wash.water.in(units::litres) == Approx(20.0));
  hold_steps(trace);
  CHECK(trace.find("quantities.degrease.concentrate_l") != nullptr);
  CHECK(trace.find("quantities.degrease.water_l") != nullptr);
}

TEST_CASE("a degreaser of another recipe is mixed as its label says") {
  // By hand: 100 m2 at 5 m2/L are 20 L; 1 : 9 of them is 2 L and 18 L.
  const basinwright::sources::Source label{
      basinwright::sources::Kind::data_sheet, "degreaser", "mix"};
  const chem::DegreaseRates rates{{units::square_metres_per_litre(5.0), label},
                                  {units::litres(1.0), label},
                                  {units::litres(9.0), label}};
  Trace off;
  const auto wash = chem::degrease({units::square_metres(100.0)}, rates, off);
  CHECK(wash.concentrate.in(units::litres) == Approx(2.0));
  CHECK(wash.water.in(units::litres) == Approx(18.0));
}

TEST_CASE("an area or a cover that is none breaks the contract of the degreasing wash") {
  Trace off;
  CHECK_THROWS_AS(chem::degrease({units::square_metres(-1.0)}, {}, off), std::invalid_argument);
  chem::DegreaseRates rates;
  rates.cover.value = units::square_metres_per_litre(0.0);
  CHECK_THROWS_AS(chem::degrease({units::square_metres(1.0)}, rates, off), std::invalid_argument);
}
