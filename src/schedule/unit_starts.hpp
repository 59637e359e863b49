// Where each unit can start, and the nearest such start on either side of a slot.
#pragma once

#include <cstdint>
#include <vector>

#include "chain_reach.hpp"
#include "setting.hpp"

namespace basinwright::schedule {

/// The starts of one unit, a bit a slot.
class StartSet {
 public:
  StartSet() = default;
  explicit StartSet(Slot length) : words_(at(length) / bits + 1, 0) {}

  void add(Slot start) { words_[at(start) / bits] |= std::uint64_t{1} << at(start) % bits; }
  [[nodiscard]] bool has(Slot start) const {
    const std::size_t word = at(start) / bits;
    return word < words_.size() && (words_[word] >> at(start) % bits & 1) != 0;
  }
  /// The first start at or after `from`; never when there is none.
  [[nodiscard]] Slot next(Slot from) const;
  /// The first slot at or after `from` that is none.
  [[nodiscard]] Slot gap(Slot from) const;
  /// The last start at or before `until`; no_slot when there is none.
  [[nodiscard]] Slot previous(Slot until) const;
  [[nodiscard]] bool any(Reach reach) const { return next(reach.from) <= reach.until; }

 private:
  static constexpr std::size_t bits = 64;
  std::vector<std::uint64_t> words_;
};

/// Starts that a section alone, were the crew free all the time, could reach from the chain and
/// from which it could lead to a finish. No programme uses another start.
class UnitStarts {
 public:
  /// @param wider of the same problem with windows that end later: its starts, as limited, are all
  ///              that may be left; nothing: all that the calendar leaves
  UnitStarts(const Setting& setting, const ChainReach& reach, const UnitStarts* wider = nullptr);

  /// No programme finishes earlier; never when there is none.
  [[nodiscard]] Slot least_finish() const;
  /// Leaves out what cannot lead to a finish at `finish` or before; a later call may allow more.
  void limit(Slot finish);

  [[nodiscard]] const StartSet& of(std::size_t coat, std::size_t section) const {
    return (limit_ == no_slot ? reached_ : limited_)[index(coat, section)];
  }

 private:
  using Leads = std::vector<Slot>;  // by start: the least finish of the section alone

  [[nodiscard]] std::size_t index(std::size_t coat, std::size_t section) const {
    return coat * setting_.sections() + section;
  }
  [[nodiscard]] std::size_t first_coat(std::size_t section) const {
    return setting_.standing.sections[section].done;
  }
  [[nodiscard]] StartSet possible(std::size_t coat,
                                  std::size_t section,
                                  const ChainReach& reach,
                                  const UnitStarts* wider) const;
  [[nodiscard]] StartSet by_calendar(std::size_t coat, std::size_t section) const;
  [[nodiscard]] bool reached(const ChainReach& reach,
                             std::size_t coat,
                             std::size_t section,
                             Slot start) const;
  [[nodiscard]] bool reached_by_rework(std::size_t coat, std::size_t section, Slot start) const;
  [[nodiscard]] Slot earliest(std::size_t coat, std::size_t section) const;
  [[nodiscard]] Leads last_leads(std::size_t section) const;
  [[nodiscard]] Leads leads(std::size_t coat, std::size_t section) const;
  [[nodiscard]] Leads rework_leads(std::size_t coat, std::size_t section) const;

  const Setting& setting_;
  std::vector<StartSet> reached_;
  std::vector<Leads> leads_;
  std::vector<StartSet> limited_;
  Slot limit_ = no_slot;  // the finish they are limited to
};

}  // namespace basinwright::schedule
