// What `explain` prints is what was computed: every recorded formula is evaluated again over its
// operands, and every operand that names another step has that step's value.
#include <filesystem>

#include "chemistry/formula.hpp"
#include "support/catch.hpp"
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
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(BASINWRIGHT_SOURCE_DIR) + "/examples")) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(".rates.json")) continue;
    INFO(name);
    const std::string own = "examples/" + name.substr(0, name.size() - 5) + ".rates.json";
    const bool has_own = std::filesystem::exists(std::string(BASINWRIGHT_SOURCE_DIR) + "/" + own);
    const auto rates = has_own ? test::rates_of(test::file_text(own)) : test::demonstration();
    check_steps(test::plan_of(test::file_text("examples/" + name), rates, true).trace);
    ++examples;
  }
  CHECK(examples >= 4);
}
