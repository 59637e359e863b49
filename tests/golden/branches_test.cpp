// What repairs, cement, groundwater and an untested coat do to a whole job. Common practice unless
// a source is named.
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

job::Plan plan(const std::string& more) {
  return test::plan_of(
      R"({"pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
      "floor": {"kind": "constant", "depth": "1.4 m"},
      "wall_thickness": "0.15 m", "slab_thickness": "0.12 m"},
    "condition": {"lead_test": "clear"})" +
          more + "}",
      test::demonstration());
}
const std::string tested = R"(, "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}])";

std::int64_t count(const std::vector<std::string>& steps, const std::string& task) {
  return std::ranges::count(steps, task);
}

}  // namespace

TEST_CASE("an untested coat is routed, priced and dated both ways") {
  const auto p = plan("");
  REQUIRE(p.either.size() == 2);
  const auto& passes = p.either[0];
  const auto& strip = p.either[1];
  CHECK(passes.code == "test-passes");
  CHECK(count(passes.steps, "abrade") == 1);
  CHECK(count(passes.steps, "strip") == 0);
  CHECK(count(strip.steps, "strip") == 1);
  CHECK(count(strip.steps, "abrade") == 0);
  CHECK(count(strip.steps, "prime") == 1);
  REQUIRE((passes.total && strip.total && passes.refill_done && strip.refill_done));
  CHECK(*passes.total < *strip.total);
  CHECK(*passes.refill_done < *strip.refill_done);
}

// 92 m2 stripped at 1.5 m2 a person-hour: 61.3; half a millimetre at 1500 kg/m3: 69 kg (assumed).
TEST_CASE("stripping comes with hours, hire and dust") {
  const auto p = plan(R"(, "surfaces": [{"coating": "epoxy", "acetone_test": "untouched",
    "loose_share": "40 %"}])");
  CHECK(p.quantities.dust.in(units::kilograms) == Approx(92 * 0.0005 * 1500));
  double hours = 0;
  for (const auto& line : p.labour) {
    if (line.task == "strip") hours = line.person_hours.in(units::hours);
  }
  CHECK(hours == Approx(92 / 1.5));
  CHECK(std::ranges::count(p.waste, "dust", &job::Waste::what) == 1);
  CHECK(std::ranges::count(
            p.hire, "grinder for stripping and class H vacuum", &quote::Hired::item) == 1);
}

// Forty metres of V at 15 mm: 9 L, at half a litre a batch (assumed) 18; 4 m2 worked over at 2 m2
// an hour would be four of half an hour. Mortar 0.6 L at 2 kg/L waits 28 days.
TEST_CASE("filler comes in batches and mortar by weight, with their waits") {
  const auto with = [](const char* condition) {
    return test::plan_of(
        std::string(
            R"({"pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
      "floor": {"kind": "constant", "depth": "1.4 m"}},
      "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}], "condition": )") +
            condition + "}",
        test::demonstration());
  };
  const auto none = with(R"({"lead_test": "clear"})");
  const auto cracks = with(R"({"lead_test": "clear",
    "cracks": [{"width": "3 mm", "length": "40 m", "depth": "15 mm"}]})");
  CHECK(cracks.quantities.filler.litres.in(units::litres) == Approx(9));
  CHECK(cracks.quantities.filler.batches == 18);
  CHECK(cracks.quantities.filler.batch.in(units::litres) == Approx(0.5));
  // Overnight: twelve hours from the last filler to the first sanding.
  std::optional<dates::Moment> filled;
  for (const auto& b : cracks.programme.bookings) {
    if (b.task == "repair") filled = b.end;
    if (b.task == "abrade") CHECK(b.start.quarters() - filled.value().quarters() >= 48);
  }
  const auto deep = with(R"({"lead_test": "clear",
    "divots": [{"depth": "12 mm", "area": "0.05 m2"}]})");
  CHECK(deep.quantities.mortar.in(units::kilograms) == Approx(1.2));
  CHECK((deep.programme.refill_done.date() - none.programme.refill_done.date()).count() >= 26);
}

// 28 days; two months on pools (MIL-HDBK-1110 5.14 a) are said beside it.
TEST_CASE("young cement waits without a fixed start and stops the job with one") {
  const std::string young = R"(, "surfaces": [{"coating": "none", "laid_on": "2026-12-25"}])";
  const auto waits = plan(young);
  CHECK_FALSE(waits.stopped());
  REQUIRE(waits.programme.feasible);
  for (const auto& b : waits.programme.bookings) {
    if (b.task == "etch-walls") CHECK(b.start.date() >= test::day("2027-01-22"));
  }
  const auto fixed = plan(young + R"(, "job": {"start": "2027-01-11"})");
  REQUIRE(fixed.stopped());
  CHECK(fixed.route.stop->why == "young-cement");
  CHECK_FALSE(plan(young + R"(, "job": {"start": "2027-01-22"})").stopped());
}

// EM 1110-2-2100 equation 3-2. Concrete outside 10.3 x 5.3 x 1.52 m less the void of 10 x 5 x 1.4:
// 12.98 m3 x 2446 kg/m3 = 31.7 t. With water to the rim 83.0 t are displaced; 1.3 m below it, the
// lowest 0.22 m, 12.0 t.
TEST_CASE("groundwater against the empty shell stops, holds or clears") {
  const auto at = [](const char* depth) {
    return plan(tested + R"(, "site": {"groundwater": {"below_rim": ")" + depth + R"("}})");
  };
  const auto high = at("0 m");
  REQUIRE(high.stopped());
  CHECK(high.route.stop->why == "flotation");
  CHECK(high.flotation->factor == Approx(31.7 / 83.0).epsilon(0.01));
  const auto low = at("1.3 m");
  CHECK_FALSE(low.stopped());
  CHECK(low.flotation->factor == Approx(31.7 / 12.0).epsilon(0.01));
  const auto holds = [](const job::Plan& p) {
    for (const auto& step : p.route.steps) {
      if (step.task != "drain") continue;
      return std::ranges::count(step.holds, "groundwater", &preparation::HoldPoint::code);
    }
    return std::ptrdiff_t{-1};
  };
  CHECK(holds(low) == 0);
  CHECK(holds(plan(tested)) == 1);
}
