// How many columns of a terminal a text takes, without asking the terminal or a locale.
#pragma once

#include <cstddef>
#include <string_view>

namespace basinwright::render {

/// Columns of one scalar: 0 for combining marks, format characters and joining Hangul vowels, 2 for
/// East Asian wide and fullwidth, else 1.
/// @source Unicode 14: General_Category, and East_Asian_Width (Standard Annex 11)
[[nodiscard]] std::size_t display_width(char32_t scalar);

/// Columns of a UTF-8 text without control characters: the sum over its scalars.
[[nodiscard]] std::size_t display_width(std::string_view text);

}  // namespace basinwright::render
