// What follows the solver's last answer, the start of the fill, by the calendar alone; private to
// the room.
#pragma once

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// Ends the fill, which is among the programme's bookings with its start, and adds the start-up and
/// the handover; sets when the pool is full, is left alone, and may be swum in.
void add_after_fill(const ProgrammeQuestion& question, Programme& programme);

/// A booking of the tail as it was done, if it was.
void settle(const ProgrammeQuestion& question, Booking& booking);

/// Bookings in order of start, the days on which somebody works, the programme's start.
void put_in_order(Programme& programme);

}  // namespace basinwright::sequence
