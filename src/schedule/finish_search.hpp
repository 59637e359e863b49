// The earliest finish: asked for ever later, so that little is looked at when it comes soon.
#pragma once

#include <optional>
#include <vector>

#include "chain_reach.hpp"
#include "unit_starts.hpp"

namespace basinwright::schedule {

/// The first slots of a problem with all that bounds a search there.
struct Look {
  Look(const Problem& problem,
       const Standing& standing,
       Slot length,
       const std::vector<Slot>& best_finish)
      : setting(problem, standing, length, best_finish),
        reach(chain_reach(setting)),
        starts(setting, reach) {}
  /// As far as another, with windows that end sooner: the chain reaches the same.
  Look(const Look& other, Slot slack)
      : setting(other.setting.problem,
                other.setting.standing,
                other.setting.length,
                other.setting.best_finish,
                slack),
        reach(other.reach),
        starts(setting, reach) {}
  Look(const Look&) = delete;  // the parts refer to each other
  Look& operator=(const Look&) = delete;

  Setting setting;
  ChainReach reach;
  UnitStarts starts;
};

/// The best finish of all ends from a slot on; never where there is none.
[[nodiscard]] std::vector<Slot> best_finishes(const Problem& problem);

/// The last end that may still lead to `finish` or better.
[[nodiscard]] Slot last_end(const std::vector<Slot>& best_finish, Slot finish);

/// The smallest finish of all programmes; nothing when there is no programme. Only where units are
/// left to do.
[[nodiscard]] std::optional<Slot> earliest_finish(const Problem& problem,
                                                  const Standing& standing,
                                                  const std::vector<Slot>& best_finish);

}  // namespace basinwright::schedule
