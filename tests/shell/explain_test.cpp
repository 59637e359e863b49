// Every recorded step can be worked out again from its own operands.
#include "basinwright/shell/flotation.hpp"
#include "formula.hpp"
#include "make.hpp"
#include "rows.hpp"

using namespace make;
using basinwright::trace::Trace;

namespace {

void check(const Trace& trace) {
  for (const auto& step : trace.steps()) {
    INFO(step.key << " = " << step.formula);
    CHECK_NEAR(formula::Evaluator(step).value(), step.value.si);
    for (const auto& input : step.inputs) {
      INFO(input.name);
      if (input.from.empty()) {
        CHECK(!(input.source_key.empty() && input.source_place.empty()));
        continue;
      }
      const auto* origin = trace.find(input.from);
      REQUIRE(origin != nullptr);
      CHECK_NEAR(origin->value.si, input.value.si);
    }
  }
}

}  // namespace

TEST_CASE("every recorded step of every reference row evaluates to its value") {
  const auto file = rows::shells();
  for (const auto& row : file.at("rows")) {
    INFO(row.at("name"));
    auto trace = Trace::recording();
    const auto result = shell::take_off(rows::pool(row.at("pool")), trace);
    const auto& t = std::get<shell::Measured>(result).take_off;
    check(trace);
    for (const char* key : {"takeoff.painted_area_m2",
                            "takeoff.floor_area_m2",
                            "takeoff.wall_area_m2",
                            "takeoff.water_volume_m3"}) {
      INFO(key);
      REQUIRE(trace.find(key) != nullptr);
    }
    CHECK(trace.find("takeoff.painted_area_m2")->value.si == t.painted_area.si());
    CHECK(trace.find("takeoff.water_volume_m3")->value.si == t.water_volume.si());
    CHECK(trace.find("takeoff.wall_area_m2")->value.si == t.wall_area.si());
    CHECK(trace.find("takeoff.floor_area_m2")->value.si == t.floor_area.si());
  }
}

TEST_CASE("a take-off that nobody asks about records nothing") {
  Trace off;
  static_cast<void>(shell::take_off(rectangle(8, 4, flat(1.5)), off));
  CHECK(off.steps().empty());
}

TEST_CASE("the recorded flotation evaluates to its value") {
  auto p = rectangle(8, 4, breaks({{0, 1.2}, {8, 1.8}}));
  p.wall_thickness = m(0.2);
  p.slab_thickness = m(0.15);
  auto trace = Trace::recording();
  const auto f = shell::flotation(p, m(1), trace);
  check(trace);
  REQUIRE(trace.find("flotation.factor") != nullptr);
  CHECK(trace.find("flotation.factor")->value.si == f->factor);
  CHECK(trace.find("flotation.factor")->note == shell::flotation_convention);
}
