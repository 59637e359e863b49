// Leaning walls: what they cannot be combined with, and whether they fit.
#include <algorithm>

#include "lean.hpp"
#include "survey.hpp"

namespace basinwright::shell {

namespace {

constexpr double least_toe = 1e-6;

bool refuse_companions(const Pool& pool, const Survey& survey, Findings& findings) {
  const std::size_t before = findings.refusals();
  const std::string where = "/wall_lean";
  if (!pool.features.empty()) {
    findings.refuse("lean-with-features",
                    where,
                    "leaning walls are only measured without steps, benches, blocks and pits",
                    "leave the lean out and add its area by name");
  }
  if (survey.model.cove > 0.0) {
    findings.refuse("lean-with-cove", where, "leaning walls are only measured without a cove");
  }
  if (!survey.model.drops.empty()) {
    findings.refuse(
        "lean-with-drop", where, "leaning walls are only measured over a floor without drops");
  }
  return findings.refusals() != before;
}

}  // namespace

void check_lean(const Pool& pool, Survey& survey, Findings& findings) {
  const double lean = survey.model.lean;
  if (lean == 0.0 || refuse_companions(pool, survey, findings) || !findings.fine()) return;
  double steepest = 0.0;
  for (const Cell& cell : survey.model.cells) {
    steepest = std::max(steepest, geometry::norm(cell.depth.gradient));
  }
  const bool flat_walls = lean * steepest >= 1.0;
  if (!flat_walls) survey.lean = lean_sums(survey.model);
  if (!flat_walls && !survey.lean.meet && survey.lean.toe > least_toe) return;
  findings.refuse("lean-too-large",
                  "/wall_lean",
                  "the walls meet before they reach the floor",
                  "wall_lean is metres inwards for each metre down");
}

}  // namespace basinwright::shell
