#include "contract.hpp"

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace basinwright::schedule {
namespace {

void require(bool holds, const char* what) {
  if (!holds) {
    throw std::invalid_argument(std::string("schedule: ") + what);
  }
}

// So that sums of lengths stay within a Slot; beyond any horizon anyway.
constexpr Slot most_slots = 100000;

void require_length(Slot slots) {
  require(slots > 0 && slots <= most_slots, "a length is not positive or absurd");
}

void require_slots(const Problem& problem) {
  const auto horizon = static_cast<std::size_t>(std::max<Slot>(problem.horizon, 0));
  require(problem.horizon >= 0, "the horizon is negative");
  require(problem.date_of.size() >= horizon, "a slot has no date");
  require(problem.cost_of.size() >= horizon, "a slot has no cost");
  require(std::is_sorted(problem.date_of.begin(), problem.date_of.end()),
          "the dates do not ascend");
  require(problem.attendance >= 0, "attendance is negative");
}

void require_chain(const Problem& problem) {
  for (const Task& task : problem.chain) {
    require(task.calendar < problem.calendars.size(), "a task's calendar is unknown");
    require(task.slots >= 0 && task.slots <= most_slots, "a task's length is absurd");
    require(task.lag_min >= 0 && task.lag_max.value_or(0) >= 0, "a task's lag is negative");
  }
  require(problem.emptied_by.value_or(0) < std::max<std::size_t>(1, problem.chain.size()),
          "the task that empties is unknown");
  const Anchor& anchor = problem.anchor;
  require(problem.chain.empty() || anchor.task < problem.chain.size(), "the anchor is unknown");
  require(anchor.limit.value_or(0) >= 0 && anchor.dry >= 0 && anchor.rain_free >= 0,
          "the anchor's times are negative");
  if (anchor.reclean) {
    require(anchor.reclean->calendar < problem.calendars.size(),
            "the reclean's calendar is unknown");
    require_length(anchor.reclean->slots);
  }
}

void require_units(const Problem& problem) {
  const Units& units = problem.units;
  require(!units.coats.empty() && units.coats.size() <= 64, "there are no coats, or over 64");
  require(!units.sections.empty(), "there are no sections");
  require(units.calendar < problem.calendars.size(), "the paint calendar is unknown");
  require(units.slots.size() == units.coats.size(), "a coat has no lengths");
  for (const auto& coat : units.slots) {
    require(coat.size() == units.sections.size(), "a unit has no length");
    for (const Slot slots : coat) {
      require_length(slots);
    }
  }
  require(units.recoat.size() + 1 == units.coats.size(), "the recoat windows are not one fewer");
  for (const Recoat& window : units.recoat) {
    require(window.min >= 0 && window.max >= 0, "a recoat window is negative");
  }
  if (units.rework) {
    require(units.rework->calendar < problem.calendars.size(), "the rework's calendar is unknown");
    require(units.rework->slots.size() == units.sections.size(), "a rework has no length");
    require(units.rework->dry >= 0 && units.rework->max >= 0, "the rework's times are negative");
    for (const Slot slots : units.rework->slots) {
      require_length(slots);
    }
  }
}

void require_past(const Problem& problem, Slot start, Slot end) {
  require(0 <= start && start <= end && end <= problem.horizon, "a fact is not in the horizon");
}

void require_facts(const Problem& problem, const Facts& facts) {
  require(facts.now >= 0 && facts.now <= problem.horizon, "now is not in the horizon");
  const std::size_t coats = problem.units.coats.size();
  const std::size_t sections = problem.units.sections.size();
  std::vector<int> tasks(problem.chain.size(), 0);
  for (const DoneTask& done : facts.tasks) {
    require(done.task < tasks.size() && tasks[done.task]++ == 0, "a done task is unknown or twice");
    require_past(problem, done.start, done.end);
  }
  std::vector<std::vector<int>> units(sections, std::vector<int>(coats, 0));
  for (const DoneUnit& done : facts.units) {
    require(done.coat < coats && done.section < sections, "a done unit is unknown");
    require(units[done.section][done.coat]++ == 0, "a unit is done twice");
    require(done.start < done.end, "a done unit has no length");
    require_past(problem, done.start, done.end);
  }
  for (const auto& section : units) {
    require(std::is_sorted(section.rbegin(), section.rend()),
            "a coat is done before the one below");
  }
  for (const DoneRework& done : facts.reworks) {
    require(problem.units.rework.has_value(), "a rework is done, none is offered");
    require(done.coat + 1 < coats && done.section < sections, "a done rework is unknown");
    require_past(problem, done.start, done.end);
  }
  for (const DoneReclean& done : facts.recleans) {
    require_past(problem, done.start, done.end);
  }
}

}  // namespace

void require_sound(const Problem& problem) {
  require_slots(problem);
  require_chain(problem);
  require_units(problem);
  if (problem.facts) {
    require_facts(problem, *problem.facts);
  }
}

}  // namespace basinwright::schedule
