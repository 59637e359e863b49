#include "basinwright/schedule/solve.hpp"

#include <algorithm>

#include "contract.hpp"
#include "earliest_finish.hpp"
#include "reasons.hpp"
#include "reconstruct.hpp"

namespace basinwright::schedule {
namespace {

// The best finish of all ends from a slot on.
std::vector<Slot> best_finishes(const Problem& problem) {
  std::vector<Slot> best(at(problem.horizon) + 2, never);
  for (Slot end = problem.horizon; end >= 0; --end) {
    const bool given = at(end) < problem.finish.size() && problem.finish[at(end)];
    best[at(end)] = std::min(best[at(end + 1)], given ? problem.finish[at(end)]->slot : never);
  }
  return best;
}

// The last end that may still lead to a finish at `finish` or before.
Slot last_end(const std::vector<Slot>& best_finish, Slot finish) {
  const auto after = std::partition_point(
      best_finish.begin(), best_finish.end(), [&](Slot slot) { return slot <= finish; });
  return static_cast<Slot>(after - best_finish.begin()) - 1;
}

bool all_painted(const Problem& problem, const Standing& standing) {
  return std::all_of(standing.sections.begin(),
                     standing.sections.end(),
                     [&](const SectionStanding& section) {
                       return section.done == problem.units.coats.size();
                     });
}

// The earliest finish, looking at twice as many slots while a later end might still come first.
std::optional<Slot> earliest_finish(const Problem& problem, const Standing& standing,
                                    const std::vector<Slot>& best_finish) {
  constexpr Slot first_look = 2048;
  Slot length = std::min(problem.horizon, standing.clock + first_look);
  while (true) {
    const Setting setting(problem, standing, length, best_finish);
    const ChainReach reach = chain_reach(setting);
    std::optional<Slot> finish;
    if (!reach.ends.empty()) {
      UnitStarts starts(setting);
      starts.keep_useful(reach, never - 1);
      finish = EarliestFinish(setting, reach, starts).find();
    }
    const Slot needed = finish ? last_end(best_finish, *finish) : problem.horizon;
    if (needed <= length) {
      return finish;
    }
    length = finish ? needed : std::min(problem.horizon, 2 * length);
  }
}

Answer answer_from(const Setting& setting, Slot finish, const Goals& goals,
                   const ChainReach& reach, const UnitStarts& starts, Suffixes& suffixes) {
  const ChainCost chain(setting, reach, goals);
  const Tally total = chain.best() + setting.standing.tally;
  return {first_bookings(setting, starts, goals, chain, suffixes),
          {finish, total.splits, total.reworks, total.cost}};
}

Answer cheapest(const Problem& problem, const Standing& standing,
                const std::vector<Slot>& best_finish, Slot finish) {
  const Setting setting(problem, standing, last_end(best_finish, finish), best_finish);
  const ChainReach reach = chain_reach(setting);
  UnitStarts starts(setting);
  starts.keep_useful(reach, finish);
  Suffixes suffixes(setting, starts, finish, reach.earliest_anchor);
  suffixes.run();
  const Goals goals(setting, suffixes.paintings(), reach.ends.front().end);
  return answer_from(setting, finish, goals, reach, starts, suffixes);
}

// Everything is painted; what is left of the chain, if anything, comes at its cheapest.
std::variant<Answer, Infeasible> only_finish(const Problem& problem, const Standing& standing,
                                             const std::vector<Slot>& best_finish) {
  Slot end = 0;
  for (const SectionStanding& section : standing.sections) {
    end = std::max(end, section.end);
  }
  const Setting setting(problem, standing, problem.horizon, best_finish);
  const ChainReach reach = chain_reach(setting);
  if (reach.ends.empty() || at(end) >= problem.finish.size() || !problem.finish[at(end)]) {
    return first_unreachable(setting);
  }
  const Finish& finish = *problem.finish[at(end)];
  const UnitStarts starts(setting);
  Suffixes suffixes(setting, starts, finish.slot, reach.earliest_anchor);
  const Goals goals(setting, {{setting.length, setting.length, 0, {0, 0, finish.cost}}}, 0);
  return answer_from(setting, finish.slot, goals, reach, starts, suffixes);
}

}  // namespace

std::variant<Answer, Infeasible> solve(const Problem& problem) {
  require_sound(problem);
  const Standing standing = standing_of(problem);
  const std::vector<Slot> best_finish = best_finishes(problem);
  if (all_painted(problem, standing)) {
    return only_finish(problem, standing, best_finish);
  }
  const std::optional<Slot> finish = earliest_finish(problem, standing, best_finish);
  if (!finish) {
    return first_unreachable(Setting(problem, standing, problem.horizon, best_finish));
  }
  return cheapest(problem, standing, best_finish, *finish);
}

}  // namespace basinwright::schedule
