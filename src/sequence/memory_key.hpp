// What a programme follows from, as bytes; private to the room.
#pragma once

#include <cstdint>
#include <string>

#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// What many jobs have in common: everything but their start, their amounts of work and water, and
/// what is told after a programme is found (the drain's length, the fill and what follows it).
[[nodiscard]] std::string common_key(const ProgrammeQuestion& question, std::uint64_t weather);

/// The work, in whole quarters, of a question with a common key of this number.
[[nodiscard]] std::string own_key(const ProgrammeQuestion& question, std::uint32_t common);

}  // namespace basinwright::sequence
