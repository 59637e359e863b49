// What every format asks of a table.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// Makes sure that each row has one cell a column.
/// @throws std::logic_error naming the table
void require_full_rows(const document::Table& table);

/// Indices of the columns people see.
[[nodiscard]] std::vector<std::size_t> shown_columns(const document::Table& table);

/// Indices of the columns machines see: those with a key.
[[nodiscard]] std::vector<std::size_t> keyed_columns(const document::Table& table);

/// Whether a cell stands right: its column says so, or it is a measure or an amount.
[[nodiscard]] bool stands_right(const document::Column& column, const document::Cell& cell);

/// Whether a whole column stands right: so aligned, or holding nothing but measures and amounts.
[[nodiscard]] bool column_stands_right(const document::Table& table, std::size_t column);

/// Whether a row is one name for those below it: a heading with text in its first shown cell only.
[[nodiscard]] bool is_group_heading(const document::Row& row,
                                    const std::vector<std::size_t>& columns);

/// The role a cell shows: its own, or its row's where it has none.
[[nodiscard]] document::Role shown_role(const document::Row& row, const document::Cell& cell);

/// How much room a line to write on has.
enum class Room { narrow, wide };

/// The text with what its role puts before it: a box to tick, or room to write in.
/// @param text as the format spells it; empty for a bare box or line
[[nodiscard]] std::string with_mark(std::string text,
                                    document::Role role,
                                    Room room = Room::narrow);

/// A dotted path from a section's key and a key below it, either of which may be empty.
[[nodiscard]] std::string key_path(std::string_view section, std::string_view key);

}  // namespace basinwright::render
