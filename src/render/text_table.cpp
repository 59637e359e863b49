#include "text_table.hpp"

#include <algorithm>

#include "text_grid.hpp"
#include "wrap.hpp"

namespace basinwright::render {
namespace {

using document::Role;
using document::Table;

/// Prints a grid that fits.
class Printer {
 public:
  Printer(const Grid& grid, const Look& look) : grid_(grid), look_(look) {}

  Lines print() {
    header();
    for (const GridRow& row : grid_.rows) {
      if (row.group_heading) {
        heading(row);
      } else {
        body(row);
      }
    }
    return std::move(lines_);
  }

 private:
  void header() {
    std::vector<Placed> placed = place([](const GridColumn& column, std::size_t) {
      return Placed{wrapped(column.title, column.width), 0, 0, column.right, Role::plain};
    });
    // Titles stand on the rule: the shorter ones move down.
    std::size_t height = 0;
    for (const Placed& column : placed) height = std::max(height, column.lines.size());
    for (Placed& column : placed) {
      column.lines.insert(column.lines.begin(), height - column.lines.size(), "");
    }
    const bool titled = std::ranges::any_of(
        grid_.columns, [](const GridColumn& column) { return !column.title.empty(); });
    if (!titled) return;
    add(side_by_side(placed, look_.colour));
    lines_.push_back(look_.rule(grid_.width()));
  }

  void heading(const GridRow& row) {
    if (any_row_) lines_.emplace_back();
    for (const std::string& line : wrapped(row.cells.front().text, look_.width)) {
      lines_.push_back(coloured(line, row.cells.front().role, look_.colour));
    }
    any_row_ = true;
    last_tall_ = false;
    in_total_ = false;
  }

  void body(const GridRow& row) {
    const std::vector<Placed> placed = place([&row](const GridColumn& column, std::size_t i) {
      const GridCell& cell = row.cells[i];
      return Placed{wrapped(cell.text, column.width), 0, 0, column.right || cell.right, cell.role};
    });
    const Lines printed = side_by_side(placed, look_.colour);
    const bool total = row.role == Role::total;
    const bool tall = printed.size() > 1;
    if (total && !in_total_ && any_row_) {
      totals_rule(row);
    } else if (any_row_ && (tall || last_tall_)) {
      lines_.emplace_back();
    }
    add(printed);
    any_row_ = true;
    last_tall_ = tall;
    in_total_ = total;
  }

  /// As on paper: a rule over the figures of the total; over everything where it has none.
  void totals_rule(const GridRow& row) {
    const auto figure = [this, &row](std::size_t i) {
      return (grid_.columns[i].right || row.cells[i].right) && !row.cells[i].text.empty();
    };
    bool any = false;
    std::vector<Placed> placed = place([&](const GridColumn& column, std::size_t i) {
      any = any || figure(i);
      return Placed{
          figure(i) ? Lines{look_.rule(column.width)} : Lines{}, 0, 0, false, Role::plain};
    });
    add(any ? side_by_side(placed, false) : Lines{look_.rule(grid_.width())});
  }

  template <class Make>
  std::vector<Placed> place(Make make) const {
    std::vector<Placed> placed;
    std::size_t at = 0;
    for (std::size_t i = 0; i < grid_.columns.size(); ++i) {
      Placed column = make(grid_.columns[i], i);
      column.at = at;
      column.width = grid_.columns[i].width;
      at += column.width + grid_.gap;
      placed.push_back(std::move(column));
    }
    return placed;
  }

  void add(const Lines& lines) { lines_.insert(lines_.end(), lines.begin(), lines.end()); }

  const Grid& grid_;
  const Look& look_;
  Lines lines_;
  bool any_row_ = false;
  bool last_tall_ = false;
  bool in_total_ = false;
};

/// Each row under the other, for a page too narrow for the table.
Lines stacked(const Grid& grid, const Look& look) {
  Lines lines;
  for (const GridRow& row : grid.rows) {
    std::vector<Labelled> facts;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const GridCell& cell = row.cells[i];
      if (!cell.text.empty()) facts.push_back({grid.columns[i].title, cell.text, cell.role});
    }
    if (row.group_heading) facts.front().label.clear();
    if (!lines.empty()) lines.emplace_back();
    const Lines block = labelled_lines(facts, look);
    lines.insert(lines.end(), block.begin(), block.end());
  }
  return lines;
}

}  // namespace

Lines table_lines(const Table& table, const Look& look) {
  Grid grid = grid_of(table, look);
  if (grid.columns.empty() || grid.rows.empty()) return {};
  return fit(grid, look.width) ? Printer(grid, look).print() : stacked(grid, look);
}

}  // namespace basinwright::render
