// The chance of running short and the kits ordered. Outside sources: Python's exact fractions by
// kit_order.py, which clips polygons instead of using the closed form; hand calculations beside the
// rest. JCGM 100, 4.3.7: between known limits every value is taken to be as likely.
#include "basinwright/coverage/kit_order.hpp"

#include <sstream>

#include "basinwright/coverage/coats.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "units/outside.hpp"

using namespace basinwright;
using coverage::KitOrder;
using coverage::OrderQuestion;
using units::square_metres;

namespace {

OrderQuestion question(double area, double spread, double low, double high, double percent) {
  return {{square_metres(area)},
          square_metres(spread),
          square_metres(low),
          square_metres(high),
          units::percent(percent)};
}

}  // namespace

TEST_CASE("the chance of running short agrees with exact fractions") {
  if (!outside::has_python()) return;
  const std::string cases = outside::cases("600");
  const auto lines = outside::python_lines("coverage/kit_order.py", cases);
  REQUIRE(lines.has_value());
  REQUIRE(lines->size() == std::stoul(cases));
  int between = 0;
  for (const std::string& line : *lines) {
    INFO(line);
    const std::size_t equals = line.find(" = ");
    std::istringstream fields(line.substr(0, equals));
    std::int64_t kits = 0;
    double low = 0.0, high = 0.0, spread = 0.0;
    fields >> kits >> low >> high >> spread;
    OrderQuestion q = question(0, spread, low, high, 50);
    q.areas.clear();
    for (double area = 0.0; fields >> area;) q.areas.push_back(square_metres(area));
    const double expected = std::stod(line.substr(equals + 3));
    REQUIRE(coverage::chance_of_running_short(q, kits) == Approx(expected).margin(1e-9));
    if (expected > 0.0 && expected < 1.0) ++between;
  }
  CHECK(between > static_cast<int>(lines->size()) / 6);
}

// By hand: 85 m2 known exactly, four kits: each must cover 21.25 m2; of 20 to 25 m2 a quarter is
// less. Five kits: 17 m2, always.
TEST_CASE("one range alone gives a share of that range") {
  CHECK(coverage::chance_of_running_short(question(85, 0, 20, 25, 50), 4) == Approx(0.25));
  CHECK(coverage::chance_of_running_short(question(85, 0, 20, 25, 50), 5) == 0.0);
  CHECK(coverage::chance_of_running_short(question(85, 0, 20, 25, 50), 3) == 1.0);
  // 90 to 110 m2 at 25 m2 exactly, four kits do 100 m2: half of the range is more.
  CHECK(coverage::chance_of_running_short(question(100, 10, 25, 25, 50), 4) == Approx(0.5));
  // Five do 125 m2, more than there is; three do 75 m2, less.
  CHECK(coverage::chance_of_running_short(question(100, 10, 25, 25, 50), 5) == 0.0);
  CHECK(coverage::chance_of_running_short(question(100, 10, 25, 25, 50), 3) == 1.0);
  CHECK(coverage::chance_of_running_short(question(100, 0, 25, 25, 50), 4) == 0.0);
  CHECK(coverage::chance_of_running_short(question(100.1, 0, 25, 25, 50), 4) == 1.0);
}

// By hand, both ranges: 100 m2 +- 2, four kits, 20 to 25 m2 a kit: they do 80 to 100 m2. More area
// than that always but for the corner 98 to 100 m2 and 24.5 to 25 m2 a kit: half of 2 x 0.5 out of
// 4 x 5 is 1 in 40.
TEST_CASE("both ranges give a share of their rectangle") {
  CHECK(coverage::chance_of_running_short(question(100, 2, 20, 25, 50), 4) ==
        Approx(1.0 - 1.0 / 40));
}

// By hand: 30 and 60 m2 apart, five kits: the large one is the tighter with three (20 m2 a kit),
// the small one has two (15 m2 a kit). As far as 4.5 kits on 90 m2.
TEST_CASE("areas painted apart reach as far as the tightest of them") {
  OrderQuestion q = question(30, 0, 20, 25, 50);
  q.areas.push_back(square_metres(60));
  CHECK(coverage::effective_kits(q, 5) == Approx(4.5));
  CHECK(coverage::effective_kits(q, 1) == 0.0);
  CHECK(coverage::chance_of_running_short(q, 1) == 1.0);
  // An area with nothing to paint takes nothing and changes nothing but the kits shared out one for
  // each.
  OrderQuestion idle = question(30, 0, 20, 25, 50);
  idle.areas.push_back(square_metres(0));
  CHECK(coverage::chance_of_running_short(idle, 2) == 0.0);
  // Each must cover 60 / 3 = 20 m2: always.
  CHECK(coverage::chance_of_running_short(q, 5) == Approx(0.0).margin(1e-12));
}

// By hand: 92 m2 +- 1.84, 20 to 25 m2 a kit. Best 90.16 / 25 = 3.6, expected 92 / 22.5 = 4.1,
// worst 93.84 / 20 = 4.7 kits.
TEST_CASE("kits at best, expected and worst") {
  const KitOrder order = coverage::kit_order(question(92, 1.84, 20, 25, 50));
  CHECK(order.best == 4);
  CHECK(order.expected == 5);
  CHECK(order.worst == 5);
  CHECK(order.ordered == 5);
  CHECK(order.short_chance == 0.0);
  REQUIRE(order.choices.size() == 2);
  // Four kits do not when each covers less than area / 4, 23 m2 in the middle: 3 of 5 by symmetry.
  CHECK(order.choices[0].short_chance == Approx(0.6));
}

// By hand: 2000 m2 +- 20 at 20 to 21 m2: best 1980 / 21 = 94.3, worst 2020 / 20 = 101 kits, seven
// counts from one to the other. At 20 to 25 m2 they are 80 to 101, more than a page holds: 80, 82
// ... 100 and the one ordered.
TEST_CASE("choices stand kit by kit where they are few, in steps where they are many") {
  const KitOrder few = coverage::kit_order(question(2000, 20, 20, 21, 100));
  CHECK(few.best == 95);
  CHECK(few.worst == 101);
  REQUIRE(few.choices.size() == 7);
  CHECK(few.choices[1].kits == 96);
  const KitOrder many = coverage::kit_order(question(2000, 20, 20, 25, 100));
  CHECK(many.best == 80);
  REQUIRE(many.choices.size() == 12);
  CHECK(many.choices[1].kits == 82);
  CHECK(many.choices.back().kits == 101);
}

// By hand: 180 m2 exactly. Eight kits must cover 22.5 m2 each: half. Nine must cover 20: never.
TEST_CASE("half a chance orders the expected kits, more orders more") {
  CHECK(coverage::kit_order(question(180, 0, 20, 25, 50)).ordered == 8);
  CHECK(coverage::kit_order(question(180, 3.6, 20, 25, 50)).ordered == 8);
  CHECK(coverage::kit_order(question(180, 0, 20, 25, 51)).ordered == 9);
  CHECK(coverage::kit_order(question(180, 0, 20, 25, 100)).ordered == 9);
}

TEST_CASE("the order follows the confidence on many areas") {
  for (int tenths = 10; tenths < 6000; tenths += 7) {
    const double area = tenths / 10.0;
    INFO(area);
    std::int64_t before = 0;
    for (const double percent : {50.0, 75.0, 90.0, 99.0, 100.0}) {
      const OrderQuestion q = question(area, area * 0.02, 20, 25, percent);
      const KitOrder order = coverage::kit_order(q);
      CHECK(order.expected == coverage::whole_kits(square_metres(area), square_metres(22.5)));
      CHECK(order.best <= order.expected);
      CHECK(order.expected <= order.worst);
      CHECK(order.ordered >= before);
      CHECK(order.short_chance <= 1.0 - percent / 100.0 + 2e-6);
      if (order.ordered > order.expected) {
        // One kit less would not have done.
        CHECK(coverage::chance_of_running_short(q, order.ordered - 1) > 1.0 - percent / 100.0);
      }
      if (percent == 50.0) CHECK(order.ordered == order.expected);
      if (percent == 100.0) CHECK(order.ordered == order.worst);
      before = order.ordered;
    }
  }
}

TEST_CASE("an order of kits refuses what makes no sense") {
  CHECK_THROWS_AS(coverage::kit_order(question(90, 1, 20, 25, 49)), std::invalid_argument);
  CHECK_THROWS_AS(coverage::kit_order(question(90, 1, 20, 25, 101)), std::invalid_argument);
  CHECK_THROWS_AS(coverage::kit_order(question(90, 91, 20, 25, 50)), std::invalid_argument);
  CHECK_THROWS_AS(coverage::kit_order(question(90, 1, 25, 20, 50)), std::invalid_argument);
  CHECK_THROWS_AS(coverage::kit_order(question(0, 0, 20, 25, 50)), std::invalid_argument);
  CHECK_THROWS_AS(coverage::kit_order(question(90, 0, 0, 25, 50)), std::invalid_argument);
}
