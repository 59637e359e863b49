// What `explain` prints is what was computed: every recorded formula is evaluated again over its
// operands, and every operand that names another step has that step's value.
#include <algorithm>
#include <cmath>
#include <filesystem>

#include "chemistry/formula.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;

void check_steps(const trace::Trace& trace) {
  REQUIRE(trace.steps().size() > 20);
  for (const trace::Step& step : trace.steps()) {
    INFO(step.key << " = " << step.formula);
    CHECK(chemistry_rows::Formula(step).value() ==
          Approx(step.value.si).epsilon(1e-9).margin(1e-12));
    for (const trace::Input& input : step.inputs) {
      if (input.from.empty()) continue;
      INFO("operand " << input.name << " from " << input.from);
      const trace::Step* origin = trace.find(input.from);
      REQUIRE(origin != nullptr);
      CHECK(origin->value.si == Approx(input.value.si).epsilon(1e-9).margin(1e-12));
    }
  }
}

}  // namespace

TEST_CASE("every recorded formula of every example gives its value") {
  int examples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(places::source() + "/examples")) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".json") || name.ends_with(".rates.json")) continue;
    INFO(name);
    const std::string own = "examples/" + name.substr(0, name.size() - 5) + ".rates.json";
    const bool has_own = std::filesystem::exists(places::source() + "/" + own);
    const auto rates = has_own ? test::rates_of(test::file_text(own)) : test::demonstration();
    const auto plan = test::plan_of(test::file_text("examples/" + name), rates, true);
    check_steps(plan.trace);
    // Every line of the price is a step, down to its total.
    for (std::size_t i = 0; i < plan.price->lines.size(); ++i) {
      const std::string key = "price.lines." + std::to_string(i) + ".amount";
      INFO(key);
      REQUIRE(plan.trace.find(key) != nullptr);
      CHECK(plan.trace.find(key)->value.si * std::pow(10.0, rates.currency.decimals) ==
            Approx(static_cast<double>(plan.price->lines[i].amount.minor())));
    }
    REQUIRE(plan.trace.find("price.total") != nullptr);
    ++examples;
  }
  CHECK(examples >= 4);
}

// Two bodies with steps, cove and lean, named sections and areas, a tolerance and groundwater.
TEST_CASE("every recorded formula of a take-off with everything gives its value") {
  const auto plan = test::plan_of(R"({"site": {"groundwater": {"below_rim": 1}},
    "pool": [
      {"outline": {"kind": "rectangle", "length": 12, "width": 6},
       "floor": {"kind": "breaks", "points": [[3, 1.1], [8, 2.3]]},
       "features": [{"kind": "straight_steps", "wall": 3, "from": 1, "width": 2,
                     "treads": [0.3, 0.3], "depths": [0.4, 0.8]}],
       "rim_to_paint": 0.15, "cove_radius": 0.15, "wall_thickness": 0.25, "slab_thickness": 0.2,
       "tape_tolerance": "0.5 %", "adjust": [{"name": "niche", "area": -1},
                                             {"name": "sump", "area": 0.8, "where": "floor"}]},
      {"outline": {"kind": "circle", "diameter": 3}, "floor": {"kind": "constant", "depth": 1.2},
       "wall_lean": 0.1}],
    "surfaces": [{"where": "deep", "coating": "none"},
                 {"coating": "epoxy", "acetone_test": "untouched"}],
    "condition": {"lead_test": "clear"},
    "coating": {"sections": [{"name": "deep", "to": 8}, {"name": "shallow", "to": 0}]}})",
                                  test::demonstration(),
                                  true);
  check_steps(plan.trace);
  for (const char* key : {"takeoff.flotation.0.factor",
                          "takeoff.parts.2.painted_area_m2",
                          "takeoff.bodies.0.measured_area_m2",
                          "takeoff.painted_area_high_m2",
                          "takeoff.kits_low"}) {
    INFO(key);
    CHECK(plan.trace.find(key) != nullptr);
  }
}
