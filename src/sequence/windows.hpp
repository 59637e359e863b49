// Between which slots what is open now may still be painted; private to the room.
#pragma once

#include <optional>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::sequence {

/// The first and the last slot in which the next coat of a section may start, both ends of the
/// recoat window kept; after a rework what the rework allows.
struct Starts {
  std::size_t coat = 0;  ///< The one that comes next.
  schedule::Slot from = 0, until = 0;
  bool after_rework = false;
};

/// By the problem's facts. Nothing where no coat is on the section, or all are.
[[nodiscard]] std::optional<Starts> next_starts(const schedule::Problem& problem,
                                                std::size_t section);

/// The last slot in which a first coat may start on the etch, or on the cleaning after it; nothing
/// when the etch is still to come or nothing was etched.
[[nodiscard]] std::optional<schedule::Slot> etch_holds_until(const schedule::Problem& problem);

/// When the rework before a unit ended, or will; nothing when there is none.
[[nodiscard]] std::optional<schedule::Slot> rework_before(const schedule::Problem& problem,
                                                          const schedule::Answer& answer,
                                                          const schedule::Booking& unit);

}  // namespace basinwright::sequence
