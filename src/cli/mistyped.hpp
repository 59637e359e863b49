// Slips of the hand on the command line, each with the nearest word that is right.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command_line.hpp"

namespace basinwright::cli {

/// A first word that is neither command nor file was meant as one of the two.
[[nodiscard]] Leave unknown_word(const std::string& word);

/// An option that is none, a value that its option does not take, a word where none may stand; with
/// the nearest that is right.
/// @param words  of the command line, the command's own name first
[[nodiscard]] std::optional<Leave> mistyped(const std::vector<std::string>& words,
                                            const CommandPage& page);

}  // namespace basinwright::cli
