#include "trial.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "basinwright/schedule/solve.hpp"
#include "bookings.hpp"
#include "closest.hpp"
#include "instance.hpp"
#include "repeats.hpp"

namespace basinwright::sequence {
namespace {

// Where all work has room, and only the wait for the fill has not.
constexpr std::string_view after_all_work = "fill";

Blocked stuck_at(const Instance& instance, const schedule::Infeasible& reason) {
  Blocked blocked;
  const auto& problem = instance.problem();
  if (reason.part == schedule::Infeasible::Part::chain && reason.index < problem.chain.size()) {
    blocked.task = problem.chain[reason.index].name;
    blocked.section = instance.chain()[reason.index].section;
  } else if (reason.part == schedule::Infeasible::Part::unit &&
             reason.index < problem.units.coats.size()) {
    blocked.task = problem.units.coats[reason.index];
    if (problem.units.sections.size() > 1) blocked.section = problem.units.sections[reason.section];
  } else {
    blocked.task = after_all_work;
  }
  blocked.why =
      reason.rule_conflict ? Blocked::Why::longer_than_any_window : Blocked::Why::no_window_fits;
  return blocked;
}

constexpr int long_look = 120;  // days

// Shortest first: most jobs are over in weeks; one that waits for cement, a long cure or the
// weather is looked at for longer, and so is one that has begun.
std::vector<int> horizons(const ProgrammeQuestion& q) {
  constexpr std::array shorter{28, 56, long_look};
  const int begun = days_in_hand(q.start, q.past);
  std::vector<int> days;
  for (const int d : shorter) {
    if (begun + d < q.most_days && (!q.past || d == long_look)) days.push_back(begun + d);
  }
  days.push_back(q.most_days);
  return days;
}

// As far ahead as like jobs needed; nothing where that is not known, or no horizon.
std::optional<int> likely_horizon(const ProgrammeQuestion& q) {
  if (!q.likely.fill_start || q.past) return {};
  constexpr std::chrono::days spare{2};  // with the day itself
  const std::chrono::days days = q.likely.fill_start->date() - q.start + spare;
  if (days < spare || days.count() >= q.most_days) return {};
  return static_cast<int>(days.count());
}

// Which start the weather is blamed from.
UnitStarts starts_by_calendar(const ProgrammeQuestion& q, const Setting& setting) {
  if (setting.conditions == nullptr || !q.reasons) return {};
  const Instance instance(q, {setting.days, nullptr, setting.dropped, setting.offers});
  const auto solved = schedule::solve(instance.problem());
  const auto* answer = std::get_if<schedule::Answer>(&solved);
  return answer == nullptr ? UnitStarts() : unit_starts(instance.problem(), *answer);
}

// The same good of a programme, near to the one until now.
schedule::Answer settled(const ProgrammeQuestion& q,
                         const Instance& instance,
                         const schedule::Answer& answer) {
  if (!q.past || q.past->before.empty()) return answer;
  OldStarts old;
  for (const schedule::Booking& b : answer.bookings) {
    const auto named = instance.named(b);
    const auto it = std::ranges::find_if(q.past->before, [&](const Before& before) {
      return before.task == named.first && before.section == named.second &&
             before.start >= q.past->now;
    });
    old.emplace_back();
    if (it != q.past->before.end()) old.back() = instance.timeline().slot(it->start);
  }
  return closest(instance.problem(), answer, old);
}

// As far ahead as is likely, then ever further from the start, until a look finds a programme (no
// reason against it), or tells that no later one would, or there is no hope. Returns the days after
// which the weeks told so, if they did.
template <class Find, class Hopeless>
std::optional<int> look_ever_further(const ProgrammeQuestion& question,
                                     Setting setting,
                                     Find find,
                                     Hopeless hopeless) {
  if (const auto likely = likely_horizon(question)) {
    setting.days = *likely;
    if (!find(Instance(question, setting), setting, schedule::Blame::none)) return {};
  }
  std::optional<int> enough;
  bool conflict = false;
  int looked = 0;
  for (const int days : horizons(question)) {
    // What no start in a short time meets, none in a little longer will; months may change it.
    if (conflict && !enough && days != question.most_days) continue;
    setting.days = std::min(days, enough.value_or(days));
    if (setting.days <= looked) break;
    looked = setting.days;
    const Instance instance(question, setting);
    // What is in the way of a short look is only asked where that may tell of all to come.
    const bool ask = days >= long_look || days == question.most_days ||
                     weeks_may_tell(question, setting, instance);
    const std::optional<schedule::Infeasible> reason =
        find(instance, setting, ask ? schedule::Blame::asked : schedule::Blame::none);
    if (!reason || hopeless()) return {};
    conflict = reason->rule_conflict;
    enough = days_that_tell(question, setting, instance, *reason);
  }
  return enough && *enough <= looked ? enough : std::nullopt;
}

// Weather only takes hours away: work that finds no room by the calendar alone finds none under it.
// How soon a coat cures is the weather's too, so that the end of the work tells nothing.
bool hopeless_by_calendar(const ProgrammeQuestion& question,
                          const Dropped& dropped,
                          const Offers& offers,
                          Trial& trial) {
  if (trial.calendar_asked || question.past) return false;
  trial.calendar_asked = true;
  trial.by_calendar = what_blocks(question, nullptr, dropped, offers);
  return trial.by_calendar && trial.by_calendar->task != after_all_work;
}

}  // namespace

Trial search(const ProgrammeQuestion& question,
             const weather::Conditions* conditions,
             const Dropped& dropped,
             const Offers& offers) {
  Trial trial;
  int in_vain = 0;
  const auto hopeless = [&] {
    return conditions != nullptr && in_vain++ >= question.likely.calendar_after &&
           hopeless_by_calendar(question, dropped, offers, trial);
  };
  if (hopeless()) {
    trial.blocked = *trial.by_calendar;
    return trial;
  }
  const std::optional<int> told = look_ever_further(
      question,
      {0, conditions, dropped, offers},
      [&](const Instance& instance,
          const Setting& setting,
          schedule::Blame blame) -> std::optional<schedule::Infeasible> {
        const auto solved = schedule::solve(instance.problem(), blame);
        if (const auto* reason = std::get_if<schedule::Infeasible>(&solved)) {
          trial.blocked = stuck_at(instance, *reason);
          return *reason;
        }
        const auto& answer = std::get<schedule::Answer>(solved);
        trial.programme = bookings_of(question,
                                      instance,
                                      settled(question, instance, answer),
                                      starts_by_calendar(question, setting));
        return {};
      },
      hopeless);
  if (conditions == nullptr) trial.blocked.weeks_told = told;
  return trial;
}

std::optional<Blocked> what_blocks(const ProgrammeQuestion& question,
                                   const weather::Conditions* conditions,
                                   const Dropped& dropped,
                                   const Offers& offers) {
  std::optional<Blocked> blocked;
  const std::optional<int> told = look_ever_further(
      question,
      {0, conditions, dropped, offers},
      [&](const Instance& instance, const Setting&, schedule::Blame blame) {
        const auto reason = schedule::what_prevents(instance.problem(), blame);
        blocked = reason ? std::optional(stuck_at(instance, *reason)) : std::nullopt;
        return reason;
      },
      [] { return false; });
  if (blocked && conditions == nullptr) blocked->weeks_told = told;
  return blocked;
}

}  // namespace basinwright::sequence
