// Tables for a spreadsheet.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/document.hpp"

namespace basinwright::render {

/// The dotted paths of the page's tables that have a path, a keyed column and a row for machines.
[[nodiscard]] std::vector<std::string> csv_tables(const document::Document& document);

/// One table in CSV (RFC 4180): the column keys, then one record a row, lines ended by CR LF.
/// Numbers and decimal texts (`-12.50`) stay bare; other texts that a spreadsheet would take for a
/// formula (first character = + - @, tab or CR) get an apostrophe in front. Lists are joined by `";
/// "`.
/// @param table_key the table's dotted path from the root
/// @throws std::logic_error if there is no such table, a number is not finite, or a row has not one
/// cell a column
[[nodiscard]] std::string csv(const document::Document& document, std::string_view table_key);

/// All tables of `csv_tables` one after the other, an empty line between two.
/// @throws std::logic_error as above
[[nodiscard]] std::string csv(const document::Document& document);

}  // namespace basinwright::render
