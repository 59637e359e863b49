#include "text_grid.hpp"

#include <algorithm>

#include "table_rows.hpp"
#include "wrap.hpp"

namespace basinwright::render {
namespace {

using document::Row;
using document::Table;

constexpr std::size_t wide_gap = 3;
constexpr std::size_t narrow_gap = 2;
/// A long word is cut to this before a table is given up.
constexpr std::size_t least_text = 12;

void measure(GridColumn& column, std::string_view text, bool whole) {
  const std::size_t line = widest_line(text);
  const std::size_t word = whole ? line : widest_word(text);
  const std::size_t cut =
      std::max(widest_whole(text), std::min(word, indentation(text) + least_text));
  column.natural = std::max(column.natural, line);
  column.word = std::max(column.word, word);
  column.least = std::max(column.least, whole ? line : cut);
}

GridRow grid_row(const Table& table,
                 const Row& row,
                 const std::vector<std::size_t>& shown,
                 const Look& look) {
  GridRow result{{}, row.role, is_group_heading(row, shown)};
  for (const std::size_t i : shown) {
    const document::Cell& cell = row.cells[i];
    const bool right = stands_right(table.columns[i], cell);
    result.cells.push_back(
        {with_mark(look.clean(cell.text), cell.role), right, shown_role(row, cell)});
  }
  return result;
}

/// Takes columns from the widest until the grid fits, none below its `least`.
bool shrink(Grid& grid, std::size_t available, std::size_t GridColumn::*least) {
  for (GridColumn& column : grid.columns) {
    column.width = std::max(std::min(column.natural, available), column.*least);
  }
  for (std::size_t total = grid.width(); total > available; --total) {
    GridColumn* widest_column = nullptr;
    for (GridColumn& column : grid.columns) {
      if (column.width <= column.*least) continue;
      if (widest_column == nullptr || column.width > widest_column->width) widest_column = &column;
    }
    if (widest_column == nullptr) return false;
    --widest_column->width;
  }
  return true;
}

/// Wrapping at words often leaves a column narrower than it might be.
void tighten(Grid& grid) {
  for (std::size_t i = 0; i < grid.columns.size(); ++i) {
    GridColumn& column = grid.columns[i];
    std::size_t used = widest(wrapped(column.title, column.width));
    for (const GridRow& row : grid.rows) {
      if (row.group_heading) continue;
      const GridCell& cell = row.cells[i];
      used = std::max(used, widest(wrapped(cell.text, column.width)));
    }
    column.width = used;
  }
}

}  // namespace

Grid grid_of(const Table& table, const Look& look) {
  require_full_rows(table);
  const std::vector<std::size_t> shown = shown_columns(table);
  Grid grid;
  for (const Row& row : table.rows) grid.rows.push_back(grid_row(table, row, shown, look));
  for (std::size_t i = 0; i < shown.size(); ++i) {
    GridColumn column;
    column.title = look.clean(table.columns[shown[i]].title);
    column.right = column_stands_right(table, shown[i]);
    measure(column, column.title, false);
    for (const GridRow& row : grid.rows) {
      if (!row.group_heading) measure(column, row.cells[i].text, row.cells[i].right);
    }
    grid.columns.push_back(column);
  }
  return grid;
}

bool fit(Grid& grid, std::size_t available) {
  grid.gap = wide_gap;
  bool fits = shrink(grid, available, &GridColumn::natural);
  if (!fits) {
    grid.gap = narrow_gap;
    fits =
        shrink(grid, available, &GridColumn::word) || shrink(grid, available, &GridColumn::least);
  }
  if (fits) tighten(grid);
  return fits;
}

}  // namespace basinwright::render
