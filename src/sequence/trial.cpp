#include "trial.hpp"

#include <algorithm>
#include <array>
#include <variant>
#include <vector>

#include "basinwright/schedule/solve.hpp"
#include "bookings.hpp"
#include "closest.hpp"
#include "instance.hpp"

namespace basinwright::sequence {
namespace {

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
    blocked.task = "fill";
  }
  blocked.why =
      reason.rule_conflict ? Blocked::Why::longer_than_any_window : Blocked::Why::no_window_fits;
  return blocked;
}

// Shortest first: most jobs are over in weeks; one that waits for cement, a long cure or the
// weather is looked at for longer, and so is one that has begun.
std::vector<int> horizons(const ProgrammeQuestion& q) {
  constexpr std::array shorter{28, 120};
  constexpr int of_begun = 120;
  std::vector<int> days;
  for (const int d : shorter) {
    if (d < q.most_days && (!q.past || d >= of_begun)) days.push_back(d);
  }
  days.push_back(q.most_days);
  return days;
}

// Which start the weather is blamed from.
UnitStarts starts_by_calendar(const ProgrammeQuestion& q, const Setting& setting) {
  if (setting.conditions == nullptr) return {};
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

}  // namespace

Trial search(const ProgrammeQuestion& question,
             const weather::Conditions* conditions,
             const Dropped& dropped,
             const Offers& offers) {
  Trial trial;
  bool conflict = false;
  for (const int days : horizons(question)) {
    // What no start in a short time meets, none in a little longer will; months may change it.
    if (conflict && days != question.most_days) continue;
    const Setting setting{days, conditions, dropped, offers};
    const Instance instance(question, setting);
    const auto solved = schedule::solve(instance.problem());
    if (const auto* answer = std::get_if<schedule::Answer>(&solved)) {
      trial.programme = bookings_of(question,
                                    instance,
                                    settled(question, instance, *answer),
                                    starts_by_calendar(question, setting));
      return trial;
    }
    const auto& reason = std::get<schedule::Infeasible>(solved);
    trial.blocked = stuck_at(instance, reason);
    conflict = reason.rule_conflict;
  }
  return trial;
}

bool fits(const ProgrammeQuestion& question,
          const weather::Conditions* conditions,
          const Dropped& dropped) {
  // A shorter horizon costs less and is enough when it has an answer.
  for (const int days : horizons(question)) {
    const Instance instance(question, {days, conditions, dropped});
    if (schedule::has_programme(instance.problem())) return true;
  }
  return false;
}

}  // namespace basinwright::sequence
