// What the past has made impossible as planned; private to the room.
#pragma once

#include "basinwright/sequence/programme.hpp"
#include "setting.hpp"

namespace basinwright::sequence {

/// What is lost, and what is offered for it.
struct Again {
  Lost lost;
  Offers offers;
};

/// Sections whose recoat window ends before the next stretch of open painting hours, and an etch
/// that does.
[[nodiscard]] Again what_is_lost(const ProgrammeQuestion& question,
                                 const weather::Conditions* conditions);

/// Every section with a coat still to come on one that is on, and the etch: for windows that could
/// be kept one by one, yet not together.
[[nodiscard]] Again all_at_stake(const ProgrammeQuestion& question);

}  // namespace basinwright::sequence
