// What the tape's tolerance does to area and kits, and the check against floating in a plan.
#include <fmt/format.h>

#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

std::string tape_text(const std::string& pool, const std::string& more = "") {
  return fmt::format(R"({{"job": {{"start": "2027-06-07"}}, "pool": {}{},
      "surfaces": [{{"coating": "epoxy", "acetone_test": "untouched"}}],
      "condition": {{"lead_test": "clear"}}}})",
                     pool,
                     more);
}

std::string box_by_tape(double scale, const std::string& more = "") {
  return fmt::format(R"({{"outline": {{"kind": "rectangle", "length": {}, "width": {}}},
      "floor": {{"kind": "constant", "depth": {}}}{}}})",
                     9 * scale,
                     5 * scale,
                     1.6 * scale,
                     more);
}

double square_metres(units::Area a) {
  return a.in(units::square_metres);
}

}  // namespace

// 9 x 5 x 1.6 m: 45 + 28 x 1.6 = 89.8 m2 take 4 kits of 22.5 m2 a coat, 1 % more takes 5.
TEST_CASE("a tape that is 1 percent out moves 89.8 m2 by 2 percent and a kit a coat") {
  const auto plan = test::plan_of(tape_text(box_by_tape(1)), test::demonstration());
  const auto& range = plan.take_off.range;
  CHECK(square_metres(plan.take_off.painted) == Approx(89.8).epsilon(1e-12));
  CHECK(square_metres(range.low) == Approx(89.8 * 0.99 * 0.99).epsilon(1e-12));
  CHECK(square_metres(range.high) == Approx(89.8 * 1.01 * 1.01).epsilon(1e-12));
  // To first order twice the tolerance: 88.00 to 91.60.
  CHECK(square_metres(range.low) == Approx(88.004).margin(0.01));
  CHECK(square_metres(range.high) == Approx(91.596).margin(0.01));
  CHECK(range.kits_low == 8);
  CHECK(range.kits == 8);
  CHECK(range.kits_high == 10);
  bool assumed = false;
  for (const auto& used : plan.trace.used()) {
    assumed = assumed ||
              (used.key == "pool.tape_tolerance" && used.source.kind == sources::Kind::assumed);
  }
  CHECK(assumed);
}

TEST_CASE("the range is what pools measured too short and too long would paint") {
  const auto plan = test::plan_of(tape_text(box_by_tape(1, R"(, "tape_tolerance": "2.5 %")")),
                                  test::demonstration());
  const auto low = test::plan_of(tape_text(box_by_tape(0.975)), test::demonstration());
  const auto high = test::plan_of(tape_text(box_by_tape(1.025)), test::demonstration());
  CHECK(square_metres(plan.take_off.range.low) ==
        Approx(square_metres(low.take_off.painted)).epsilon(1e-12));
  CHECK(square_metres(plan.take_off.range.high) ==
        Approx(square_metres(high.take_off.painted)).epsilon(1e-12));
  CHECK(plan.take_off.range.kits_low == low.take_off.range.kits);
  CHECK(plan.take_off.range.kits_high == high.take_off.range.kits);
  for (const auto& used : plan.trace.used()) CHECK(used.key != "pool.tape_tolerance");
}

TEST_CASE("named areas stay as given, and every body has a tolerance of its own") {
  const std::string adjusted = R"(, "adjust": [{"name": "ledge", "area": 3}])";
  const auto plan = test::plan_of(tape_text("[" + box_by_tape(1, adjusted) + ", " +
                                            box_by_tape(0.5, R"(, "tape_tolerance": "0 %")") + "]"),
                                  test::demonstration());
  CHECK(square_metres(plan.take_off.range.low) == Approx(89.8 * 0.9801 + 3 + 89.8 / 4));
  CHECK(square_metres(plan.take_off.range.high) == Approx(89.8 * 1.0201 + 3 + 89.8 / 4));
}

// The textbook tank of tests/shell/flotation_test.cpp: 5.4 x 4.4 x 1.7 m inside, 0.3 m all round,
// water at the rim: factor 0.80; neutral at 1.60 m of water above the underside, 0.40 m down.
TEST_CASE("a factor under 1 stops the plan before draining, under 1.3 it is a hold point") {
  const auto at = [](const std::string& down) {
    return test::plan_of(
        tape_text(R"({"outline": {"kind": "rectangle", "length": 5.4, "width": 4.4},
                 "floor": {"kind": "constant", "depth": 1.7},
                 "wall_thickness": 0.3, "slab_thickness": 0.3})",
                  R"(, "site": {"groundwater": {"below_rim": ")" + down + R"("}})"),
        test::demonstration());
  };
  const auto floats = at("0 m");
  REQUIRE(floats.stopped());
  CHECK(floats.route.stop->step == "drain");
  CHECK(floats.route.stop->why == "flotation");
  CHECK(floats.route.steps.back().task == "drain");
  CHECK(floats.take_off.bodies[0].flotation->factor == Approx(0.80).margin(0.005));
  const auto holds_at_drain = [](const job::Plan& plan) {
    const auto drain = std::ranges::find(plan.route.steps, "drain", &preparation::Step::task);
    return std::ranges::any_of(drain->holds, [](const auto& h) { return h.code == "groundwater"; });
  };
  const auto doubtful = at("0.5 m");  // 470.6 / (1.5 x 6 x 5 x 9.81) = 1.07
  CHECK_FALSE(doubtful.stopped());
  CHECK(doubtful.take_off.bodies[0].flotation->factor == Approx(1.07).margin(0.005));
  CHECK(holds_at_drain(doubtful));
  const auto clear = at("0.8 m");  // 470.6 / (1.2 x 6 x 5 x 9.81) = 1.33
  CHECK_FALSE(clear.stopped());
  CHECK(clear.take_off.bodies[0].flotation->factor == Approx(1.33).margin(0.005));
  CHECK_FALSE(holds_at_drain(clear));
}

// The pool of 20 x 40 x 8 ft (a worked example of the trade): groundwater 9 ft above the underside
// 0.554, 4 ft 1.246; concrete at 150 and water at 62.4 lb/ft3, so 24 and 9.81 kN/m3 give 1.018 x.
TEST_CASE("the worst of several bodies decides, and is named") {
  const std::string big = R"({"name": "big", "outline": {"kind": "rectangle", "length": "40 ft",
      "width": "20 ft"}, "floor": {"kind": "constant", "depth": "8 ft"},
      "wall_thickness": "12 in", "slab_thickness": "12 in"})";
  const std::string small = R"({"name": "small", "outline": {"kind": "rectangle", "length": 2,
      "width": 1}, "floor": {"kind": "constant", "depth": 0.6},
      "wall_thickness": 0.3, "slab_thickness": 0.3})";
  const auto at = [&](const std::string& down) {
    return test::plan_of(
        tape_text("[" + small + ", " + big + "]",
                  R"(, "site": {"groundwater": {"below_rim": ")" + down + R"("}})"),
        test::demonstration());
  };
  const auto stops = at("0 ft");
  REQUIRE(stops.stopped());
  CHECK(stops.route.stop->where == "big");
  CHECK(stops.take_off.bodies[1].flotation->factor == Approx(0.554 * 1.0178).margin(0.001));
  const auto holds = at("5 ft");
  CHECK_FALSE(holds.stopped());
  CHECK(holds.take_off.bodies[1].flotation->factor == Approx(1.246 * 1.0178).margin(0.001));
}

TEST_CASE("without groundwater or a thickness nothing is checked") {
  const auto plan = test::plan_of(tape_text(box_by_tape(1, R"(, "wall_thickness": 0.2)"),
                                            R"(, "site": {"groundwater": {"below_rim": 0}})"),
                                  test::demonstration());
  CHECK_FALSE(plan.take_off.bodies[0].flotation.has_value());
  CHECK_FALSE(plan.stopped());
}
