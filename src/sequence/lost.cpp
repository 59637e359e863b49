#include "lost.hpp"

#include <algorithm>

#include "instance.hpp"
#include "tasks.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;

// Far enough for any window and for an etch.
constexpr int days_looked_at = 60;

struct Standing {
  std::size_t coats = 0;
  Slot start = 0, end = 0;
  bool reworked = false;
};

Standing standing(const schedule::Facts& facts, std::size_t section) {
  Standing s;
  for (const schedule::DoneUnit& unit : facts.units) {
    if (unit.section == section && unit.coat + 1 > s.coats)
      s = {unit.coat + 1, unit.start, unit.end, false};
  }
  for (const schedule::DoneRework& rework : facts.reworks) {
    if (rework.section == section && rework.coat + 1 == s.coats) s.reworked = true;
  }
  return s;
}

// Whether a unit of so many slots may start somewhere in [from, until] and end in its own window.
bool fits(const schedule::Calendar& open,
          Slot slots,
          const Standing& s,
          schedule::Recoat window,
          Slot now) {
  for (Slot start = std::max(now, s.start + window.min); start <= s.start + window.max; ++start) {
    const Slot end = start + slots;
    if (end < s.end + window.min || end > s.end + window.max) continue;
    if (static_cast<std::size_t>(end) > open.size()) return false;
    const auto first = open.begin() + start;
    if (std::all_of(first, first + slots, [](char c) { return c != 0; })) return true;
  }
  return false;
}

bool any_open(const schedule::Calendar& open, Slot from, Slot until) {
  for (Slot s = std::max<Slot>(0, from); s <= until && static_cast<std::size_t>(s) < open.size();
       ++s) {
    if (open[static_cast<std::size_t>(s)] != 0) return true;
  }
  return false;
}

// When the etch was over; nothing when it is still to come.
std::optional<Slot> etched(const Instance& instance) {
  const schedule::Problem& problem = instance.problem();
  std::optional<Slot> end;
  if (problem.chain.empty() || !problem.anchor.limit) return {};
  for (const schedule::DoneTask& done : problem.facts->tasks) {
    if (done.task == problem.anchor.task && is_etch(problem.chain[done.task].name)) end = done.end;
  }
  for (const schedule::DoneReclean& done : problem.facts->recleans)
    end = std::max(end.value_or(0), done.end);
  return end;
}

Instance looked_at(const ProgrammeQuestion& q, const weather::Conditions* conditions) {
  const auto past = (q.past->now.date() - q.start).count();
  const auto days = static_cast<int>(std::max<std::int64_t>(0, past)) + days_looked_at;
  return Instance(q, {days, conditions, {}, {{}, false, true}});
}

}  // namespace

Again what_is_lost(const ProgrammeQuestion& q, const weather::Conditions* conditions) {
  Again again;
  const Instance instance = looked_at(q, conditions);
  const schedule::Problem& problem = instance.problem();
  const schedule::Units& units = problem.units;
  const schedule::Calendar& open = problem.calendars[units.calendar];
  again.offers.no_reserve = again.lost.reserve = true;
  again.offers.rework.assign(units.sections.size(), 0);
  bool bare = false;
  for (std::size_t s = 0; s < units.sections.size(); ++s) {
    const Standing at = standing(*problem.facts, s);
    bare = bare || at.coats == 0;
    if (at.coats == 0 || at.coats == units.coats.size() || at.reworked) continue;
    if (fits(open, units.slots[at.coats][s], at, units.recoat[at.coats - 1], problem.facts->now))
      continue;
    again.offers.rework[s] = 1;
    again.lost.sections.push_back(units.sections[s]);
  }
  const auto etch = etched(instance);
  if (bare && etch && !any_open(open, problem.facts->now, *etch + *problem.anchor.limit))
    again.lost.etch = again.offers.clean_again = true;
  return again;
}

Again all_at_stake(const ProgrammeQuestion& q) {
  Again again;
  const Instance instance = looked_at(q, nullptr);
  const schedule::Units& units = instance.problem().units;
  bool bare = false;
  for (std::size_t s = 0; s < units.sections.size(); ++s) {
    const Standing at = standing(*instance.problem().facts, s);
    bare = bare || at.coats == 0;
    const bool at_stake = at.coats > 0 && at.coats < units.coats.size();
    again.offers.rework.push_back(at_stake ? 1 : 0);
    if (at_stake) again.lost.sections.push_back(units.sections[s]);
  }
  again.lost.etch = again.offers.clean_again = bare && etched(instance).has_value();
  again.lost.together = again.lost.reserve = again.offers.no_reserve = true;
  return again;
}

}  // namespace basinwright::sequence
