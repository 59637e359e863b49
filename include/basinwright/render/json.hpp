// The machine tree of a page.
#pragma once

#include <string>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// The page's values as one JSON object (RFC 8259), indented by two spaces, members in the order of
/// the page, ended by a line feed. Keys are dotted paths from the root; a table becomes an array of
/// one object a row; objects given at the same path merge. Blocks that are not shown count like the
/// others; tables without a keyed column and texts without a key stay out. Numbers keep every digit
/// they need to be read back the same. What is not UTF-8 becomes U+FFFD.
/// @throws std::logic_error if two values meet at one path, a path has an empty part, a number is
/// not finite, or a table's row has not one cell a column
[[nodiscard]] std::string json(const document::Document& document);

/// One value on one line, without a line feed at its end.
/// @throws std::logic_error as `json`
[[nodiscard]] std::string json_line(const document::Value& value);

}  // namespace basinwright::render
