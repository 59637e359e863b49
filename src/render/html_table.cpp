#include "html_table.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "display_width.hpp"
#include "html_words.hpp"
#include "markup_text.hpp"
#include "table_rows.hpp"
#include "visible.hpp"

namespace basinwright::render {
namespace {

using document::Cell;
using document::Role;
using document::Row;
using document::Table;

/// From so many columns on, a narrow screen shows each row as a list.
constexpr std::size_t wide = 3;
/// Up to so many rows, a table stays on one page.
constexpr std::size_t few = 5;
/// A column with nothing longer is not broken into lines.
constexpr std::size_t whole = 20;

/// Up to so many short columns, a table is no wider than it needs.
constexpr std::size_t most_narrow = 5;

struct Column {
  std::size_t index = 0;
  bool right = false;
  bool whole = false;  ///< Short enough to stay on one line.
  std::string title;
};

bool stays_whole(const Table& table, std::size_t column) {
  return std::ranges::all_of(table.rows, [column](const Row& row) {
    return display_width(row.cells[column].text) <= whole;
  });
}

std::string class_of(const std::string& classes) {
  return classes.empty() ? "" : " class=\"" + classes + '"';
}

void add_class(std::string& classes, std::string_view one) {
  if (one.empty()) return;
  if (!classes.empty()) classes += ' ';
  classes += one;
}

std::string head_cell(const Column& column) {
  if (column.title.empty()) return "<td></td>";
  return fmt::format(
      "<th scope=\"col\"{}>{}</th>", column.right ? " class=\"n\"" : "", html_text(column.title));
}

std::string head(const std::vector<Column>& columns) {
  if (std::ranges::all_of(columns, [](const Column& c) { return c.title.empty(); })) return "";
  std::string cells;
  for (const Column& column : columns) cells += head_cell(column);
  return "<thead><tr>" + cells + "</tr></thead>\n";
}

/// A table with the keys of its numbers.
struct Keyed {
  const Table& table;
  const std::string& key;
  const Openable& openable;
};

/// The number that opens to how it came about, or the way to where that stands.
std::string opened(const Keyed& keyed,
                   const Cell& cell,
                   const Column& column,
                   std::size_t number,
                   const std::string& text) {
  const std::string& name = keyed.table.columns[column.index].key;
  if (keyed.openable.beside && !name.empty() && !text.empty()) {
    const std::string inner =
        keyed.openable.beside(fmt::format("{}.{}.{}", keyed.key, number, name));
    if (!inner.empty())
      return fmt::format(
          "<details class=\"how\"><summary>{}</summary><div>{}</div></details>", text, inner);
  }
  const auto* other = std::get_if<std::string>(&cell.value.data());
  if (!keyed.openable.place || other == nullptr || !name.empty()) return text;
  const std::string place = keyed.openable.place(*other);
  return place.empty() ? text : fmt::format("<a href=\"#{}\">{}</a>", place, text);
}

std::string body_cell(
    const Row& row, const Column& column, const Keyed& keyed, std::size_t number, bool names) {
  const Table& table = keyed.table;
  const Cell& cell = row.cells[column.index];
  const Role role = shown_role(row, cell);
  std::string classes;
  if (column.right || stands_right(table.columns[column.index], cell)) add_class(classes, "n");
  if (column.whole) add_class(classes, "k");
  if (role != row.role) add_class(classes, html_class(role));
  const bool bare = cell.text.empty();
  if (cell.role == Role::blank && bare) add_class(classes, "bare");
  const std::string marked = html_marked(cell.text, role);
  const std::string text = row.machine ? opened(keyed, cell, column, number, marked) : marked;
  // What opens is content of the table, not the name of a row.
  const bool opens = text != marked && text.starts_with("<details");
  if (names && !opens) return fmt::format("<th scope=\"row\"{}>{}</th>", class_of(classes), text);
  if (text.empty()) add_class(classes, "empty");
  const std::string title =
      column.title.empty() ? "" : fmt::format(" data-title=\"{}\"", markup_text(column.title));
  return fmt::format("<td{}{}>{}</td>", class_of(classes), title, text);
}

/// The first cell names the row where it has words.
bool names_row(const Row& row, const Column& column) {
  const Cell& cell = row.cells[column.index];
  return !cell.text.empty() && cell.role != Role::tick && cell.role != Role::blank;
}

std::string body_row(const Row& row,
                     const std::vector<Column>& columns,
                     const Keyed& keyed,
                     std::size_t number) {
  std::string cells;
  for (const Column& column : columns) {
    const bool first = column.index == columns.front().index;
    cells += body_cell(row, column, keyed, number, first && names_row(row, column));
  }
  const std::string_view name = html_class(row.role);
  return fmt::format("<tr{}>{}</tr>\n", class_of(std::string(name)), cells);
}

std::string group_row(const Row& row, const std::vector<Column>& columns) {
  return fmt::format("<tr class=\"group\"><th colspan=\"{}\" scope=\"rowgroup\">{}</th></tr>\n",
                     columns.size(),
                     html_text(row.cells[columns.front().index].text));
}

std::string bodies(const Keyed& keyed,
                   const std::vector<Column>& columns,
                   const std::vector<std::size_t>& shown) {
  std::string out = "<tbody>\n";
  bool any = false;
  std::size_t number = 0;
  for (const Row& row : keyed.table.rows) {
    const bool group = is_group_heading(row, shown);
    if (group && any) out += "</tbody>\n<tbody>\n";
    out += group ? group_row(row, columns) : body_row(row, columns, keyed, number);
    if (row.machine) ++number;
    any = true;
  }
  return out + "</tbody>\n";
}

std::string_view sign(Role role) {
  switch (role) {
    case Role::caution:
      return "<span class=\"mark\">! </span>";
    case Role::stop:
      return "<span class=\"mark\">\u2715 </span>";
    case Role::tick:
      return "<span class=\"box\"></span>";
    case Role::blank:
      return "<span class=\"line\"></span>";
    default:
      return "";
  }
}

/// What the box or the line is, for those who hear the page.
std::string unseen(Role role, bool bare) {
  if (!bare || (role != Role::tick && role != Role::blank)) return "";
  return fmt::format("<span class=\"unseen\">{}</span>",
                     role == Role::tick ? words::to_tick : words::to_fill_in);
}

}  // namespace

std::string html_text(std::string_view given) {
  const std::string text = visible(given);
  std::string out;
  std::size_t start = 0;
  while (true) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    out += markup_text(std::string_view(text).substr(start, end - start));
    if (end == text.size()) return out;
    out += "<br>";
    start = end + 1;
  }
}

std::string html_marked(std::string_view text, Role role) {
  const bool bare = text.empty();
  const bool form = role == Role::tick || role == Role::blank;
  if (bare && !form) return "";
  std::string out(sign(role));
  out += unseen(role, bare);
  if (form && !bare) out += ' ';
  return out + html_text(text);
}

std::string_view html_class(Role role) {
  switch (role) {
    case Role::total:
      return "total";
    case Role::good:
      return "good";
    case Role::caution:
      return "caution";
    case Role::stop:
      return "stop";
    case Role::assumed:
      return "assumed";
    case Role::muted:
      return "muted";
    case Role::tick:
      return "tick";
    case Role::blank:
      return "blank";
    case Role::heading:
      return "heading";
    case Role::plain:
    case Role::quantity:
    case Role::money:
      break;
  }
  return "";
}

std::string html_table(const Table& table,
                       std::string_view name,
                       const std::string& key,
                       const Openable& openable) {
  if (!table.shown) return "";
  require_full_rows(table);
  const std::vector<std::size_t> shown = shown_columns(table);
  if (shown.empty() || table.rows.empty()) return "";
  std::vector<Column> columns;
  columns.reserve(shown.size());
  for (const std::size_t i : shown)
    columns.push_back(
        {i, column_stands_right(table, i), stays_whole(table, i), table.columns[i].title});
  const std::string caption =
      table.caption.empty()
          ? fmt::format("<caption class=\"unseen\">{}</caption>\n", markup_text(name))
          : fmt::format("<caption>{}</caption>\n", html_text(table.caption));
  std::string classes = columns.size() >= wide ? "wide" : "";
  // Short cells far apart are hard to read across.
  if (std::ranges::all_of(columns, &Column::whole) && columns.size() <= most_narrow)
    add_class(classes, "narrow");
  const bool brief = table.rows.size() <= few;
  if (brief) add_class(classes, "short");
  return fmt::format("{}<table{}>\n{}{}{}</table>\n",
                     brief ? "" : "<div class=\"room\"></div>\n",
                     class_of(classes),
                     caption,
                     head(columns),
                     bodies({table, key, openable}, columns, shown));
}

}  // namespace basinwright::render
