// Text cut into what a terminal shows for each Unicode scalar.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace basinwright::diagnostics {

/// One scalar as shown, and the columns it takes.
struct Glyph {
  std::string text;
  std::size_t columns = 1;
};

/// Bytes of the well-formed UTF-8 sequence at the start of `text` (1-4); 1 for a byte that begins
/// none, 0 at the end. @source unicode-15 table 3-7
[[nodiscard]] std::size_t scalar_length(std::string_view text);

/// The first `limit` scalars of `text`. Control characters, bytes that are no UTF-8 and characters
/// that reorder a line become \xNN; a tab stays and may take eight columns.
[[nodiscard]] std::vector<Glyph> glyphs(std::string_view text, std::size_t limit);

/// Any text made safe to print within a line; a tab becomes \x09.
[[nodiscard]] std::string printable(std::string_view text);

}  // namespace basinwright::diagnostics
