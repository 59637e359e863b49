// Where each unit can start, and the nearest such start on either side of a slot.
#pragma once

#include <vector>

#include "chain_reach.hpp"
#include "setting.hpp"

namespace basinwright::schedule {

/// The starts of one unit.
class StartSet {
 public:
  StartSet() = default;
  explicit StartSet(std::vector<char> possible);

  [[nodiscard]] bool has(Slot start) const { return next_[at(start)] == start; }
  /// The first start at or after `from`; never when there is none.
  [[nodiscard]] Slot next(Slot from) const;
  /// The last start at or before `until`; no_slot when there is none.
  [[nodiscard]] Slot previous(Slot until) const;
  [[nodiscard]] bool any(Reach reach) const { return next(reach.from) <= reach.until; }

 private:
  std::vector<Slot> next_;
  std::vector<Slot> previous_;
};

class UnitStarts {
 public:
  /// All starts in open slots on one date, for the very first unit after its rain-free wait.
  explicit UnitStarts(const Setting& setting);

  /// Leaves out the starts that the section alone, were the crew free all the time, cannot reach
  /// from the chain, or from which it cannot lead to a finish at or before `latest_finish`.
  void keep_useful(const ChainReach& reach, Slot latest_finish);

  [[nodiscard]] const StartSet& of(std::size_t coat, std::size_t section) const {
    return sets_[coat * setting_.sections() + section];
  }

 private:
  [[nodiscard]] std::vector<char> possible(std::size_t coat, std::size_t section) const;
  [[nodiscard]] bool reached(const ChainReach& reach, std::size_t coat, std::size_t section,
                             Slot start) const;
  [[nodiscard]] bool reached_by_rework(std::size_t coat, std::size_t section, Slot start) const;
  [[nodiscard]] std::vector<char> leading_on(std::size_t coat, std::size_t section) const;
  [[nodiscard]] std::vector<char> rework_leading_on(std::size_t coat, std::size_t section) const;
  template <class Keep>
  void filter(std::size_t coat, std::size_t section, Keep keep);

  const Setting& setting_;
  std::vector<Slot> run_;  // open slots in a row from here on one date
  std::vector<StartSet> sets_;
};

}  // namespace basinwright::schedule
