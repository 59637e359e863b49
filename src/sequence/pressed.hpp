// A programme in few bytes: when what is done by whom, up to the start of the fill; private to the
// room.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// Without what kept its bookings from starting earlier, and without what they rest on. Nothing
/// where it holds more than a question without a past and without reasons leads to.
[[nodiscard]] std::optional<std::string> pressed(const ProgrammeQuestion& question,
                                                 const Programme& programme);

/// The programme, with the drain as long as the question has it and with what follows the fill.
/// @param bytes what `pressed` made for a question with the same work and weather
[[nodiscard]] Programme unpressed(const ProgrammeQuestion& question, std::string_view bytes);

}  // namespace basinwright::sequence
