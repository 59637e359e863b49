// A table as a browser shows it.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// Text for an element, line feeds as `<br>`.
[[nodiscard]] std::string html_text(std::string_view text);

/// The text of a cell with the sign, box or line that its role calls for.
[[nodiscard]] std::string html_marked(std::string_view text, document::Role role);

/// The class that a role is styled by; empty for plain text.
[[nodiscard]] std::string_view html_class(document::Role role);

/// Numbers that can be opened, by their keys.
struct Openable {
  /// What opens beside the number at a key; empty when nothing does.
  std::function<std::string(const std::string& key)> beside;
  /// Where the explanation of a key stands; empty when it has none.
  std::function<std::string(const std::string& key)> place;
};

/// The table; nothing when there is nothing to show in it.
/// @param name  Says what it holds where it has no caption.
/// @param key   Where machine formats put it; a number's key is below, by row and column.
/// @throws std::logic_error if a row has not one cell a column
[[nodiscard]] std::string html_table(const document::Table& table,
                                     std::string_view name,
                                     const std::string& key = {},
                                     const Openable& openable = {});

}  // namespace basinwright::render
