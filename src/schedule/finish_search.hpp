// The earliest finish: asked for ever later, so that little is looked at when it comes soon.
#pragma once

#include <memory>
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
        reached_(std::make_shared<const ChainReach>(chain_reach(setting))),
        reach(*reached_),
        starts(setting, reach) {}
  /// As far as another, with windows that end sooner: the chain reaches the same, and no start
  /// is left that the other, as it is limited, has not.
  Look(const Look& other, Slot slack)
      : setting(other.setting, slack),
        reached_(other.reached_),
        reach(*reached_),
        starts(setting, reach, setting.problem.units.rework ? nullptr : &other.starts) {}
  /// As far as another, for a problem that differs from its in coats, sections and finishes only:
  /// the chain reaches the same.
  Look(const Look& other,
       const Problem& problem,
       const Standing& standing,
       const std::vector<Slot>& best_finish)
      : setting(other.setting, problem, standing, best_finish),
        reached_(other.reached_),
        reach(*reached_),
        starts(setting, reach) {}
  Look(const Look&) = delete;  // the parts refer to each other
  Look& operator=(const Look&) = delete;

  Setting setting;

 private:
  std::shared_ptr<const ChainReach> reached_;

 public:
  const ChainReach& reach;
  UnitStarts starts;
};

/// The best finish of all ends from a slot on; never where there is none.
[[nodiscard]] std::vector<Slot> best_finishes(const Problem& problem);

/// The last end that may still lead to `finish` or better.
[[nodiscard]] Slot last_end(const std::vector<Slot>& best_finish, Slot finish);

struct EarliestFinish {
  /// The smallest finish of all programmes; nothing when there is no programme.
  std::optional<Slot> finish;
  /// Far enough ahead for every programme with this finish; without one, as far as was looked.
  std::unique_ptr<Look> look;
};

/// Only where units are left to do.
/// @param look what is looked at first; nothing: as far as most programmes take
[[nodiscard]] EarliestFinish earliest_finish(const Problem& problem,
                                             const Standing& standing,
                                             const std::vector<Slot>& best_finish,
                                             std::unique_ptr<Look> look = nullptr);

}  // namespace basinwright::schedule
