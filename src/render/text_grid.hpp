// The columns of a terminal table and the widths they settle on.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "basinwright/document/document.hpp"
#include "text_lines.hpp"

namespace basinwright::render {

struct GridCell {
  std::string text;
  bool right = false;
  document::Role role = document::Role::plain;
};

struct GridRow {
  std::vector<GridCell> cells;
  document::Role role = document::Role::plain;
  bool group_heading = false;
};

struct GridColumn {
  std::string title;
  bool right = false;
  std::size_t natural = 0;  // The widest line.
  std::size_t word = 0;     // The widest word, or number.
  std::size_t least = 0;    // The same with long words cut.
  std::size_t width = 0;
};

/// The table as it will be seen: cleaned texts of the shown columns.
struct Grid {
  std::vector<GridColumn> columns;
  std::vector<GridRow> rows;
  std::size_t gap = 3;

  [[nodiscard]] std::size_t width() const {
    std::size_t total = columns.empty() ? 0 : gap * (columns.size() - 1);
    for (const GridColumn& column : columns) total += column.width;
    return total;
  }
};

/// The shown part of a table, measured but not yet fitted.
/// @throws std::logic_error if a row has not one cell a column
[[nodiscard]] Grid grid_of(const document::Table& table, const Look& look);

/// Settles the column widths so that the grid is at most `available` wide: the widest text columns
/// give way first, columns of numbers never.
/// @return false if there is not room enough; the widths then mean nothing
[[nodiscard]] bool fit(Grid& grid, std::size_t available);

}  // namespace basinwright::render
