// Holds every recorded step against its formula and its origins.
#pragma once

#include <string>

#include "basinwright/trace/trace.hpp"
#include "chemistry/formula.hpp"
#include "support/catch.hpp"

namespace chemistry_rows {

/// Each formula gives its value; each operand that names a step has that step's value. The take-off
/// records its own steps.
inline void hold_steps(const basinwright::trace::Trace& trace) {
  REQUIRE_FALSE(trace.steps().empty());
  for (const auto& step : trace.steps()) {
    INFO(step.key << " = " << step.formula);
    CHECK(Formula(step).value() == Approx(step.value.si).epsilon(1e-12));
    for (const auto& input : step.inputs) {
      if (input.from.empty() || input.from.rfind("takeoff.", 0) == 0) continue;
      INFO(input.name << " from " << input.from);
      REQUIRE(trace.find(input.from) != nullptr);
      CHECK(trace.find(input.from)->value.si == input.value.si);
    }
  }
}

}  // namespace chemistry_rows
