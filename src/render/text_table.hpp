// A table for a terminal page.
#pragma once

#include "basinwright/document/document.hpp"
#include "text_lines.hpp"

namespace basinwright::render {

/// The table's shown columns in aligned text no wider than the look allows, with a thin rule under
/// its header and one above a run of totals. Text columns wrap, the widest first; columns of
/// numbers keep their width. Where even that does not fit, each row stands as a block of labelled
/// values.
/// @throws std::logic_error if a row has not one cell a column
[[nodiscard]] Lines table_lines(const document::Table& table, const Look& look);

}  // namespace basinwright::render
