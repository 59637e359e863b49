// The bricks of a terminal page: cleaned text, colour by role, blocks of lines side by side.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

using Lines = std::vector<std::string>;

/// How a page may look.
struct Look {
  std::size_t width = 80;
  bool colour = false;
  bool ascii = false;

  [[nodiscard]] Look narrowed(std::size_t by) const;
  /// The text without anything a terminal would obey, in ASCII if asked.
  [[nodiscard]] std::string clean(std::string_view text) const;
  [[nodiscard]] std::string rule(std::size_t columns) const;
  [[nodiscard]] std::string_view bullet(document::Role role) const;
  [[nodiscard]] std::string_view bar() const { return ascii ? "|" : "\u2502"; }
};

/// The text between the terminal sequences of its role; as it is for roles without a colour.
[[nodiscard]] std::string coloured(std::string_view text, document::Role role, bool colour);

/// Lines set into a column of the page.
struct Placed {
  Lines lines;
  std::size_t at = 0;  ///< First column.
  std::size_t width = 0;
  bool right = false;
  document::Role role = document::Role::plain;
};

/// The columns printed beside one another, tops level, without trailing spaces.
/// @param columns from left to right, not overlapping
[[nodiscard]] Lines side_by_side(const std::vector<Placed>& columns, bool colour);

/// A cell under its label.
struct Labelled {
  std::string label;
  std::string text;
  document::Role role = document::Role::plain;
};

/// Labels in one column and their values in the next.
[[nodiscard]] Lines labelled_lines(const std::vector<Labelled>& facts, const Look& look);

/// The same as a reckoning: amounts of money stand right when there is nothing else, and a total is
/// set off by a rule.
[[nodiscard]] Lines facts_lines(const std::vector<Labelled>& facts, const Look& look);

}  // namespace basinwright::render
