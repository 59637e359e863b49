#include "table_rows.hpp"

#include <algorithm>
#include <stdexcept>

namespace basinwright::render {

using document::Role;

namespace {

template <class Wanted>
std::vector<std::size_t> columns_where(const document::Table& table, Wanted wanted) {
  std::vector<std::size_t> indices;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (wanted(table.columns[i])) indices.push_back(i);
  }
  return indices;
}

bool is_number(const document::Cell& cell) {
  return cell.role == Role::quantity || cell.role == Role::money;
}

}  // namespace

void require_full_rows(const document::Table& table) {
  for (const document::Row& row : table.rows) {
    if (row.cells.size() == table.columns.size()) continue;
    const std::string& name = table.key.empty() ? table.caption : table.key;
    throw std::logic_error("table \"" + name + "\": a row has " + std::to_string(row.cells.size()) +
                           " cells for " + std::to_string(table.columns.size()) + " columns");
  }
}

std::vector<std::size_t> shown_columns(const document::Table& table) {
  return columns_where(table, [](const document::Column& column) { return column.shown; });
}

std::vector<std::size_t> keyed_columns(const document::Table& table) {
  return columns_where(table, [](const document::Column& column) { return !column.key.empty(); });
}

bool stands_right(const document::Column& column, const document::Cell& cell) {
  return column.align == document::Align::right || is_number(cell);
}

bool column_stands_right(const document::Table& table, std::size_t column) {
  if (table.columns[column].align == document::Align::right) return true;
  bool any = false;
  for (const document::Row& row : table.rows) {
    const document::Cell& cell = row.cells[column];
    if (cell.text.empty()) continue;
    if (!is_number(cell)) return false;
    any = true;
  }
  return any;
}

bool is_group_heading(const document::Row& row, const std::vector<std::size_t>& columns) {
  if (row.role != Role::heading || columns.empty()) return false;
  return !row.cells[columns.front()].text.empty() &&
         std::all_of(columns.begin() + 1, columns.end(), [&row](std::size_t column) {
           return row.cells[column].text.empty();
         });
}

Role shown_role(const document::Row& row, const document::Cell& cell) {
  const bool says_more = cell.role != Role::plain && !is_number(cell);
  return says_more || row.role == Role::plain ? cell.role : row.role;
}

std::string with_mark(std::string text, Role role, Room room) {
  constexpr std::size_t narrow = 8;
  constexpr std::size_t wide = 28;
  if (role != Role::tick && role != Role::blank) return text;
  std::string marked =
      role == Role::tick ? "[ ]" : std::string(room == Room::wide ? wide : narrow, '_');
  if (!text.empty()) marked.append(1, ' ').append(text);
  return marked;
}

std::string key_path(std::string_view section, std::string_view key) {
  std::string path(section);
  if (!section.empty() && !key.empty()) path += '.';
  return path.append(key);
}

}  // namespace basinwright::render
