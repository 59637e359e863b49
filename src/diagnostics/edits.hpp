// How many slips of the finger lie between two words.
#pragma once

#include <cstddef>
#include <string_view>

namespace basinwright::diagnostics {

/// Fewest edits from one word to the other: a scalar put in, left out or replaced, or two
/// neighbours swapped (no scalar edited twice). Capital and small ASCII letters count as the same.
[[nodiscard]] std::size_t edits(std::string_view from, std::string_view to);

}  // namespace basinwright::diagnostics
