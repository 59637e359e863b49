#include "windows.hpp"

#include <algorithm>

#include "tasks.hpp"

namespace basinwright::sequence {

using schedule::Slot;

std::optional<Starts> next_starts(const schedule::Problem& problem, std::size_t section) {
  const schedule::Units& units = problem.units;
  const schedule::DoneUnit* last = nullptr;
  for (const schedule::DoneUnit& unit : problem.facts->units) {
    if (unit.section == section && (last == nullptr || unit.coat > last->coat)) last = &unit;
  }
  if (last == nullptr || last->coat + 1 == units.coats.size()) return {};
  const std::size_t next = last->coat + 1;
  const schedule::Recoat& window = units.recoat[last->coat];
  const Slot slots = units.slots[next][section];
  Starts starts{next,
                std::max(last->start + window.min, last->end + window.min - slots),
                std::min(last->start + window.max, last->end + window.max - slots)};
  if (!units.rework) return starts;
  std::optional<Slot> reworked;
  for (const schedule::DoneRework& rework : problem.facts->reworks) {
    if (rework.section == section && rework.coat == last->coat)
      reworked = std::max(reworked.value_or(0), rework.end);
  }
  if (reworked) starts = {next, *reworked + units.rework->dry, *reworked + units.rework->max, true};
  return starts;
}

std::optional<Slot> etch_holds_until(const schedule::Problem& problem) {
  std::optional<Slot> end;
  if (problem.chain.empty() || !problem.anchor.limit) return {};
  for (const schedule::DoneTask& done : problem.facts->tasks) {
    if (done.task == problem.anchor.task && is_etch(problem.chain[done.task].name)) end = done.end;
  }
  for (const schedule::DoneReclean& done : problem.facts->recleans)
    end = std::max(end.value_or(0), done.end);
  if (!end) return {};
  return *end + *problem.anchor.limit;
}

std::optional<Slot> rework_before(const schedule::Problem& problem,
                                  const schedule::Answer& answer,
                                  const schedule::Booking& unit) {
  std::optional<Slot> end;
  const auto is_below = [&](std::size_t coat, std::size_t section) {
    return coat + 1 == unit.index && section == unit.section;
  };
  if (problem.facts) {
    for (const schedule::DoneRework& done : problem.facts->reworks) {
      if (is_below(done.coat, done.section)) end = done.end;
    }
  }
  for (const schedule::Booking& other : answer.bookings) {
    const bool rework = other.what == schedule::Booking::What::rework;
    if (rework && is_below(other.index, other.section)) end = other.end;
  }
  return end;
}

}  // namespace basinwright::sequence
