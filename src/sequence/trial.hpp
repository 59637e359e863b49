// One search for a programme over ever longer horizons; private to the room.
#pragma once

#include <optional>

#include "basinwright/sequence/programme.hpp"
#include "setting.hpp"

namespace basinwright::sequence {

/// A programme, or where the search got stuck.
struct Trial {
  std::optional<Programme> programme;
  Blocked blocked;  ///< Task, section and why; only without a programme.
  /// Whether the calendar alone was asked on the way, and where it got stuck if it did.
  bool calendar_asked = false;
  std::optional<Blocked> by_calendar = {};
};

/// The earliest programme with something left out.
[[nodiscard]] Trial search(const ProgrammeQuestion& question,
                           const weather::Conditions* conditions,
                           const Dropped& dropped,
                           const Offers& offers = {});

/// What is in the way of any programme; nothing where there is one, which is far less work to tell
/// than to find the best.
[[nodiscard]] std::optional<Blocked> what_blocks(const ProgrammeQuestion& question,
                                                 const weather::Conditions* conditions,
                                                 const Dropped& dropped,
                                                 const Offers& offers = {});
/// Whether there is any programme in the longest horizon.
[[nodiscard]] inline bool fits(const ProgrammeQuestion& question,
                               const weather::Conditions* conditions,
                               const Dropped& dropped) {
  return !what_blocks(question, conditions, dropped);
}

}  // namespace basinwright::sequence
