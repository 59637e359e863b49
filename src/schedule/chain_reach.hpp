// Where the chain can be: the earliest start of every link and what it leaves to the first coats.
#pragma once

#include <cstddef>
#include <vector>

#include "setting.hpp"

namespace basinwright::schedule {

struct ChainReach {
  std::size_t reached = 0;        ///< Links that can be done.
  std::vector<Stretch> earliest;  ///< Way of each link reached.
  /// Of each link reached: every way to do it that the links before lead to. Starts and ends
  /// ascend. Left out before the last link up to the anchor's that waits without end for the one
  /// before: of those any later way can be had as well as the earliest.
  std::vector<std::vector<Stretch>> ways;
  Slot earliest_anchor = 0;   ///< The anchor's earliest end.
  Slot earliest_end = never;  ///< Of the whole chain, and of what is past.
  /// By slot: the latest anchor with everything wet ended there or before, recleaned or not;
  /// no_slot where nothing has.
  std::vector<Slot> latest_anchor;
};

[[nodiscard]] ChainReach chain_reach(const Setting& setting);

/// All ways of a link whose ways were left out that end at `latest` or before.
[[nodiscard]] std::vector<Stretch> ways_until(const Setting& setting,
                                              const ChainReach& reach,
                                              std::size_t link,
                                              Slot latest);

/// The latest start of a first coat that may start at `start` and no later than its anchor allows;
/// no_slot when it is not dry by then.
[[nodiscard]] Slot latest_first_coat(const Setting& setting, const ChainReach& reach, Slot start);

}  // namespace basinwright::schedule
