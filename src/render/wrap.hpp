// Lines of a given width from running text.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace basinwright::render {

/// The text in lines no wider than `width`. Breaks at spaces, at line feeds and between two East
/// Asian wide characters; a word that is wider than the line is cut at its joints, as names and
/// paths have, else between its letters, never beside a digit, so a number stays whole even where
/// it is too wide. No-break spaces that a line begins with indent what it is broken into as well,
/// where they leave room.
/// @return at least one line; lines neither begin nor end with a space
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// How many no-break spaces a line begins with.
[[nodiscard]] std::size_t indentation(std::string_view line);

/// Width of the widest line of the text as it stands.
[[nodiscard]] std::size_t widest_line(std::string_view text);

/// Width of the widest piece that wrapping keeps together where there is room.
[[nodiscard]] std::size_t widest_word(std::string_view text);

/// Width of the widest piece that wrapping never cuts.
[[nodiscard]] std::size_t widest_whole(std::string_view text);

/// Width of the widest of some lines.
[[nodiscard]] std::size_t widest(const std::vector<std::string>& lines);

}  // namespace basinwright::render
