// Which weather held a task; private to the room.
#pragma once

#include <vector>

#include "instance.hpp"

namespace basinwright::sequence {

/// Slots [from, to).
struct Span {
  schedule::Slot from = 0, to = 0;
};

/// What the calendar leaves open, what a gate leaves of that, and the slots on one date it takes.
struct Gated {
  const schedule::Calendar& base;
  const schedule::Calendar& open;
  const weather::Outlook& gate;
  schedule::Slot length = 1;
};

/// What closed the gate between two slots, a day at most once: days that had room all the same are
/// passed over, and what stays the same over days is said once. Three are listed; the last counts
/// the days after it.
[[nodiscard]] std::vector<Held> weather_causes(const Instance& instance,
                                               const Gated& gated,
                                               Span between);

}  // namespace basinwright::sequence
