#include "basinwright/schedule/solve.hpp"

#include <algorithm>
#include <utility>

#include "contract.hpp"
#include "pricing.hpp"
#include "reasons.hpp"
#include "reconstruct.hpp"

namespace basinwright::schedule {
namespace {

bool all_painted(const Problem& problem, const Standing& standing) {
  return std::all_of(
      standing.sections.begin(), standing.sections.end(), [&](const SectionStanding& section) {
        return section.done == problem.units.coats.size();
      });
}

Objective objective(const Standing& standing, Slot finish, Tally total) {
  total = total + standing.tally;
  if (standing.emptied != no_slot) {
    total.empty = finish - standing.emptied;
  }
  return {finish, total.splits, total.reworks, total.cost, {}, static_cast<Slot>(total.empty)};
}

Answer cheapest(Priced priced) {
  Slackest best = slackest(priced);
  Answer answer{std::move(best.bookings), objective(priced.standing, priced.finish, best.price)};
  answer.objective.slack = best.slack;
  return answer;
}

// Everything is painted; what is left of the chain, if anything, comes at its cheapest.
std::variant<Answer, Infeasible> only_finish(const Problem& problem,
                                             const Standing& standing,
                                             const std::vector<Slot>& best_finish) {
  Slot end = 0;
  for (const SectionStanding& section : standing.sections) {
    end = std::max(end, section.end);
  }
  const Look look(problem, standing, problem.horizon, best_finish);
  if (look.reach.earliest_end == never || at(end) >= problem.finish.size() ||
      !problem.finish[at(end)]) {
    return first_unreachable(look);
  }
  const Finish& finish = *problem.finish[at(end)];
  Endings suffixes(look.setting, look.starts, look.reach, {finish.slot});
  const Slot length = look.setting.length;
  const Goals goals(look.setting, {{length, length, 0, {0, 0, finish.cost}}}, 0);
  const ChainCost chain(look.setting, look.reach, goals, finish.slot);
  return Answer{first_bookings(look.setting, look.starts, goals, chain, suffixes),
                objective(standing, finish.slot, chain.best())};
}

/// @param looked at in vain
Infeasible reason(const Look& looked, Blame blame) {
  if (blame == Blame::none) {
    Infeasible unsaid;
    unsaid.part = Infeasible::Part::unsaid;
    return unsaid;
  }
  const Setting& setting = looked.setting;
  if (setting.length == setting.problem.horizon) {
    return first_unreachable(looked);
  }
  return first_unreachable(
      Look(setting.problem, setting.standing, setting.problem.horizon, setting.best_finish));
}

}  // namespace

std::variant<Answer, Infeasible> solve(const Problem& problem, Blame blame) {
  require_sound(problem);
  const Standing standing = standing_of(problem);
  const std::vector<Slot> best_finish = best_finishes(problem);
  if (all_painted(problem, standing)) {
    return only_finish(problem, standing, best_finish);
  }
  EarliestFinish found = earliest_finish(problem, standing, best_finish);
  if (!found.finish) {
    return reason(*found.look, blame);
  }
  return cheapest({problem, standing, *found.finish, std::move(found.look)});
}

std::optional<Infeasible> what_prevents(const Problem& problem, Blame blame) {
  require_sound(problem);
  const Standing standing = standing_of(problem);
  const std::vector<Slot> best_finish = best_finishes(problem);
  if (all_painted(problem, standing)) {
    const auto rest = only_finish(problem, standing, best_finish);
    const auto* reason = std::get_if<Infeasible>(&rest);
    return reason == nullptr ? std::nullopt : std::optional(*reason);
  }
  const EarliestFinish found = earliest_finish(problem, standing, best_finish);
  return found.finish ? std::nullopt : std::optional(reason(*found.look, blame));
}

bool has_programme(const Problem& problem) {
  require_sound(problem);
  const Standing standing = standing_of(problem);
  const std::vector<Slot> best_finish = best_finishes(problem);
  if (all_painted(problem, standing)) {
    return std::holds_alternative<Answer>(only_finish(problem, standing, best_finish));
  }
  return earliest_finish(problem, standing, best_finish).finish.has_value();
}

}  // namespace basinwright::schedule
