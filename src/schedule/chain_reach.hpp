// Where the chain can be: the earliest start of every link and what it leaves to the first coats.
#pragma once

#include <cstddef>
#include <vector>

#include "setting.hpp"

namespace basinwright::schedule {

/// A chain's end with the latest deadline that the first coats can have after it.
struct ChainEnd {
  Slot end = 0;
  Slot deadline = 0;
};

struct ChainReach {
  std::size_t reached = 0;      ///< Links that can be done.
  std::vector<Slot> earliest;   ///< Start of each link reached.
  Slot earliest_anchor = 0;     ///< The anchor's earliest end.
  std::vector<ChainEnd> ends;   ///< Ascending; of the whole chain.
  /// For the first unit's start: the latest deadline of a first coat; no_slot before any.
  std::vector<Slot> deadline;
};

[[nodiscard]] ChainReach chain_reach(const Setting& setting);

/// The first slot for a first coat after the chain's end, by its drying alone.
[[nodiscard]] Slot dry_after(const Setting& setting, Slot wet);

}  // namespace basinwright::schedule
