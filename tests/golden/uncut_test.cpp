// A coat that fits no morning: no dates, but its paint is in the price all the same.
#include "support/catch.hpp"
#include "support/plans.hpp"

using namespace basinwright;

// 12 x 6 x 2 m: 72 + 36 x 2 = 144 m2, 6.4 kits: seven a coat. One painter does 20 m2 an hour, and
// six coats leave a morning less than the hour that a kit of 22.5 m2 takes.
TEST_CASE("paint is priced though no morning holds a kit of it") {
  const job::Plan plan = test::plan_of(R"({"job": {"start": "2027-06-07"},
    "pool": {"outline": {"kind": "rectangle", "length": 12, "width": 6},
             "floor": {"kind": "constant", "depth": 2}},
    "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}],
    "condition": {"lead_test": "clear"}, "crew": {"people": 2, "painters": 1},
    "coating": {"coats": 6}})",
                                       test::demonstration());
  CHECK_FALSE(plan.programme.feasible);
  REQUIRE(plan.quantities.cut.sections.empty());
  for (const quote::Purchase& purchase : plan.purchases) {
    if (purchase.item != "coating") continue;
    // 6 x 7 kits of 3.5 L.
    CHECK(purchase.need == 147'000);
    return;
  }
  FAIL("no coating is bought");
}
