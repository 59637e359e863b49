#include "add_fact.hpp"

#include <algorithm>

namespace basinwright::sequence {
namespace {

using schedule::Facts;
using schedule::Slot;

std::size_t section_of(const schedule::Units& units, const std::string& name) {
  const auto it = std::ranges::find(units.sections, name);
  return it == units.sections.end() ? 0 : static_cast<std::size_t>(it - units.sections.begin());
}

void add_rework(const schedule::Problem& problem, const Fact& fact, Facts& facts) {
  const schedule::Units& units = problem.units;
  const std::size_t section = section_of(units, fact.section);
  std::size_t below = 0;
  for (const schedule::DoneUnit& unit : facts.units) {
    if (unit.section == section && unit.start <= fact.start) below = std::max(below, unit.coat);
  }
  if (units.rework && below + 1 < units.coats.size())
    facts.reworks.push_back({below, section, fact.start, fact.end});
}

void add_task(const schedule::Problem& problem, const Fact& fact, Facts& facts) {
  for (std::size_t i = 0; i < problem.chain.size(); ++i) {
    const bool taken =
        std::ranges::any_of(facts.tasks, [&](const schedule::DoneTask& t) { return t.task == i; });
    if (taken || problem.chain[i].name != fact.task) continue;
    facts.tasks.push_back({i, fact.start, fact.end});
    return;
  }
}

}  // namespace

void add_fact(schedule::Problem& problem, const Fact& fact) {
  Facts& facts = *problem.facts;
  const schedule::Units& units = problem.units;
  const auto coat = std::ranges::find(units.coats, fact.task);
  if (coat != units.coats.end()) {
    const auto c = static_cast<std::size_t>(coat - units.coats.begin());
    const Slot end = std::max(fact.end, fact.start + 1);
    facts.units.push_back({c, section_of(units, fact.section), fact.start, end});
  } else if (fact.task == "clean-again") {
    facts.recleans.push_back({fact.start, fact.end});
  } else if (fact.task == "rework") {
    add_rework(problem, fact, facts);
  } else {
    add_task(problem, fact, facts);
  }
}

}  // namespace basinwright::sequence
