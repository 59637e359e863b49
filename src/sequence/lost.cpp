#include "lost.hpp"

#include <algorithm>

#include "instance.hpp"
#include "windows.hpp"

namespace basinwright::sequence {
namespace {

using schedule::Slot;

// Whether so many slots in a row are open from a start in [from, until] on.
bool fits(const schedule::Calendar& open, Slot slots, const Starts& starts, Slot now) {
  for (Slot start = std::max(now, starts.from); start <= starts.until; ++start) {
    if (static_cast<std::size_t>(start + slots) > open.size()) return false;
    const auto first = open.begin() + start;
    if (std::all_of(first, first + slots, [](char c) { return c != 0; })) return true;
  }
  return false;
}

std::size_t coats_on(const schedule::Problem& problem, std::size_t section) {
  std::size_t coats = 0;
  for (const schedule::DoneUnit& unit : problem.facts->units) {
    if (unit.section == section) coats = std::max(coats, unit.coat + 1);
  }
  return coats;
}

bool any_open(const schedule::Calendar& open, Slot from, Slot until) {
  for (Slot s = std::max<Slot>(0, from); s <= until && static_cast<std::size_t>(s) < open.size();
       ++s) {
    if (open[static_cast<std::size_t>(s)] != 0) return true;
  }
  return false;
}

Instance looked_at(const ProgrammeQuestion& q, const weather::Conditions* conditions) {
  const int days = days_in_hand(q.start, q.past) + days_looked_at;
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
    bare = bare || coats_on(problem, s) == 0;
    const auto starts = next_starts(problem, s);
    if (!starts || fits(open, units.slots[starts->coat][s], *starts, problem.facts->now)) continue;
    again.offers.rework[s] = 1;
    again.lost.sections.push_back(units.sections[s]);
  }
  const auto until = etch_holds_until(problem);
  if (bare && until && !any_open(open, problem.facts->now, *until))
    again.lost.etch = again.offers.clean_again = true;
  return again;
}

Again all_at_stake(const ProgrammeQuestion& q) {
  Again again;
  const Instance instance = looked_at(q, nullptr);
  const schedule::Units& units = instance.problem().units;
  bool bare = false;
  for (std::size_t s = 0; s < units.sections.size(); ++s) {
    bare = bare || coats_on(instance.problem(), s) == 0;
    const bool at_stake = next_starts(instance.problem(), s).has_value();
    again.offers.rework.push_back(at_stake ? 1 : 0);
    if (at_stake) again.lost.sections.push_back(units.sections[s]);
  }
  again.lost.etch = again.offers.clean_again =
      bare && etch_holds_until(instance.problem()).has_value();
  again.lost.together = again.lost.reserve = again.offers.no_reserve = true;
  return again;
}

}  // namespace basinwright::sequence
