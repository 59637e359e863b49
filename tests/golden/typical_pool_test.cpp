// A typical domestic pool must come out in the trade's usual ranges. Common practice throughout:
// 85, 92 and 100 m2 painted, epoxy before, no bare patches, two coats.
#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

// Test data: a data sheet of 3.5 L kits covering 20 to 25 m2, loss included.
job::RateBook usual_sheet() {
  return test::rates_of(R"({"currency": "EUR", "labour": {"hour": "40.00"},
    "coating_systems": {"Sheet": {"source": "test data", "kit": "3.5 L", "cover": ["20 m2", "25 m2"],
      "recoat": ["20 h", "24 h"]}}})");
}

job::Plan typical(double length, double width, double depth) {
  return test::plan_of(fmt::format(R"({{"job": {{"start": "2027-06-07"}},
        "pool": {{"outline": {{"kind": "rectangle", "length": {}, "width": {}}},
                  "floor": {{"kind": "constant", "depth": {}}}}},
        "surfaces": [{{"coating": "epoxy", "acetone_test": "untouched"}}],
        "condition": {{"lead_test": "clear"}},
        "coating": {{"system": "Sheet", "coats": 2}}}})",
                                   length,
                                   width,
                                   depth),
                       usual_sheet());
}

}  // namespace

TEST_CASE("typical pools take 8, 10 and 10 kits") {
  // Areas by hand: L x W + 2 (L + W) x depth.
  const auto small = typical(8.5, 4, 2.04);
  const auto middle = typical(10, 5, 1.4);
  const auto large = typical(10, 6, 1.25);
  CHECK(small.take_off.painted.in(units::square_metres) == Approx(85.0).epsilon(1e-12));
  CHECK(middle.take_off.painted.in(units::square_metres) == Approx(92.0).epsilon(1e-12));
  CHECK(large.take_off.painted.in(units::square_metres) == Approx(100.0).epsilon(1e-12));
  CHECK(small.quantities.kits == 8);
  CHECK(middle.quantities.kits == 10);
  CHECK(large.quantities.kits == 10);
}

TEST_CASE("a typical pool of 92 m2 takes the usual chemicals") {
  const auto plan = typical(10, 5, 1.4);
  const auto& q = plan.quantities;
  REQUIRE(q.etch->mixes.size() == 1);
  CHECK(q.etch->mixes[0].ratio.parts == chemistry::Parts{1, 2});
  CHECK(q.etch->acid.in(units::litres) >= 30.0);
  CHECK(q.etch->acid.in(units::litres) <= 35.0);
  CHECK(q.neutralise->surface.bicarbonate.in(units::kilograms) >= 4.0);
  CHECK(q.neutralise->surface.bicarbonate.in(units::kilograms) <= 6.0);
  CHECK(q.neutralise->sump_worst.in(units::kilograms) >= 25.0);
  CHECK(q.neutralise->sump_worst.in(units::kilograms) <= 29.0);
  CHECK(q.degrease->concentrate.in(units::litres) == Approx(0.5).margin(0.05));
  CHECK(q.degrease->water.in(units::litres) == Approx(20.0).margin(1.0));
}

// Two painters at 20 m2/h have 2.5 h for two coats and 2 h for three: 100 and 80 m2 in one morning.
TEST_CASE("two painters do 100 m2 in a morning of two coats, and more is cut") {
  CHECK(typical(10, 6, 1.25).quantities.cut.sections.size() == 1);
  const auto wider = typical(10, 6, 1.3);  // 101.6 m2
  CHECK(wider.quantities.cut.sections.size() == 2);
  CHECK(wider.painters_for_one_morning == 3);
  CHECK(wider.quantities.kits == 10);  // cut at kit boundaries: not a kit more
  REQUIRE(wider.programme.feasible);
  for (const auto& booking : wider.programme.bookings) {
    if (!booking.task.starts_with("coat-")) continue;
    CHECK(booking.start.hour() >= 8);
    CHECK(booking.end.quarter() <= 11 * 4);
  }
}

// Each next-day coat starts half an hour before the one below: six of the seven steps use up the
// three hours from eight to eleven (recoat 24 h at most, less half an hour in hand; common
// practice).
TEST_CASE("eight coats leave no hour of the morning, and the windows are told as the reason") {
  job::Job eight = test::job_of(test::file_text("examples/plain-pool.json"));
  eight.coating.coats = 8;
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  const auto plan = job::make_plan(eight, test::demonstration(), now);
  CHECK_FALSE(plan.quantities.cut.sections.empty());
  REQUIRE_FALSE(plan.programme.feasible);
  REQUIRE(plan.programme.blocked_by.has_value());
  CHECK(plan.programme.blocked_by->why == sequence::Blocked::Why::no_window_fits);
}
