// Person-hours of a route: area over what one person does in an hour (common practice).
#include "basinwright/sequence/work.hpp"

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using units::square_metres;

TEST_CASE("the coat of each section takes its own area over the rate") {
  preparation::Route route;
  route.steps = {{"coat-1", "", square_metres(100), {}, {}}};
  coverage::Cut cut;
  cut.sections = {square_metres(60), square_metres(40)};
  sequence::Productivity rates;
  rates.coat.value = units::square_metres_per_hour(20);
  rates.vacuum.value = units::square_metres_per_hour(50);
  trace::Trace silent;
  const auto hours = [&](double texture) {
    const sequence::WorkQuestion question{
        route, cut, units::metres(0), square_metres(100), {}, texture};
    std::vector<double> out;
    for (const sequence::Work& w : sequence::work(question, rates, silent)) {
      if (w.task == "coat-1" || w.task == "vacuum") out.push_back(w.person_hours.in(units::hours));
    }
    return out;
  };
  // Vacuuming before each: 60/50 and 40/50; painting 60/20 and 40/20.
  const std::vector<double> flat = hours(1.0);
  REQUIRE(flat.size() == 4);
  CHECK(flat[0] == Approx(1.2));
  CHECK(flat[1] == Approx(3.0));
  CHECK(flat[2] == Approx(0.8));
  CHECK(flat[3] == Approx(2.0));
  // Pebbles have half as much surface again.
  const std::vector<double> pebble = hours(1.5);
  REQUIRE(pebble.size() == 4);
  CHECK(pebble[1] == Approx(4.5));
  CHECK(pebble[2] == Approx(1.2));
}
