#include "text_lines.hpp"

#include <algorithm>

#include "display_width.hpp"
#include "plain_ascii.hpp"
#include "visible.hpp"
#include "wrap.hpp"

namespace basinwright::render {
namespace {

using document::Role;

constexpr std::size_t gap = 3;

std::string_view sequence(Role role) {
  switch (role) {
    case Role::stop:
      return "\x1b[1;31m";
    case Role::caution:
      return "\x1b[33m";
    case Role::good:
      return "\x1b[32m";
    case Role::assumed:
    case Role::muted:
      return "\x1b[2m";
    case Role::total:
      return "\x1b[1m";
    case Role::plain:
    case Role::heading:
    case Role::quantity:
    case Role::money:
    case Role::tick:
    case Role::blank:
      return "";
  }
  return "";
}

void put(
    std::string& line, std::size_t& used, const Placed& column, std::size_t index, bool colour) {
  if (index >= column.lines.size() || column.lines[index].empty()) return;
  const std::string& text = column.lines[index];
  const std::size_t width = display_width(text);
  const std::size_t inset = column.right && width < column.width ? column.width - width : 0;
  const std::size_t from = std::max(column.at + inset, used == 0 ? 0 : used + 1);
  line.append(from - used, ' ').append(coloured(text, column.role, colour));
  used = from + width;
}

bool is_amount(const Labelled& fact) {
  return fact.role == Role::money || fact.role == Role::total;
}

/// Widths of the two columns of a block of facts.
struct FactColumns {
  std::size_t label = 0;
  std::size_t value = 0;
  bool right = false;

  [[nodiscard]] std::size_t value_at() const { return label == 0 ? 0 : label + gap; }
};

FactColumns fact_columns(const std::vector<Labelled>& facts, const Look& look) {
  FactColumns columns;
  for (const Labelled& fact : facts) {
    columns.label = std::max(columns.label, widest_line(fact.label));
    columns.value = std::max(columns.value, widest_line(fact.text));
  }
  const std::size_t room = look.width - std::min(look.width, gap);
  const std::size_t share = room * 2 / 5;
  const std::size_t label_room =
      columns.value < room ? std::max(share, room - columns.value) : share;
  columns.label = std::min(columns.label, label_room);
  columns.value = std::min(columns.value, room - columns.label);
  return columns;
}

void add_fact(Lines& lines, const Labelled& fact, const FactColumns& columns, const Look& look) {
  const Lines row =
      side_by_side({{wrapped(fact.label, columns.label), 0, columns.label, false, Role::plain},
                    {wrapped(fact.text, columns.value),
                     columns.value_at(),
                     columns.value,
                     columns.right,
                     fact.role}},
                   look.colour);
  lines.insert(lines.end(), row.begin(), row.end());
}

}  // namespace

Look Look::narrowed(std::size_t by) const {
  Look look = *this;
  look.width = width > by ? width - by : 1;
  return look;
}

std::string Look::clean(std::string_view text) const {
  return ascii ? plain_ascii(visible(text)) : visible(text);
}

std::string Look::rule(std::size_t columns) const {
  if (ascii) return std::string(columns, '-');
  std::string line;
  for (std::size_t i = 0; i < columns; ++i) line += "\u2500";
  return line;
}

std::string_view Look::bullet(Role role) const {
  if (role == Role::stop) return ascii ? "X" : "\u2715";
  if (role == Role::caution) return "!";
  if (role == Role::tick) return "[ ]";
  return ascii ? "-" : "\u2022";
}

std::string coloured(std::string_view text, Role role, bool colour) {
  const std::string_view begin = colour ? sequence(role) : "";
  if (begin.empty()) return std::string(text);
  return std::string(begin).append(text).append("\x1b[0m");
}

Lines side_by_side(const std::vector<Placed>& columns, bool colour) {
  std::size_t height = 0;
  for (const Placed& column : columns) height = std::max(height, column.lines.size());
  Lines lines(height);
  for (std::size_t i = 0; i < height; ++i) {
    std::size_t used = 0;
    for (const Placed& column : columns) put(lines[i], used, column, i, colour);
  }
  return lines;
}

Lines labelled_lines(const std::vector<Labelled>& facts, const Look& look) {
  const FactColumns columns = fact_columns(facts, look);
  Lines lines;
  for (const Labelled& fact : facts) add_fact(lines, fact, columns, look);
  return lines;
}

Lines facts_lines(const std::vector<Labelled>& facts, const Look& look) {
  FactColumns columns = fact_columns(facts, look);
  columns.right = std::ranges::all_of(facts, is_amount);
  Lines lines;
  bool in_total = false;
  for (const Labelled& fact : facts) {
    const bool total = fact.role == Role::total;
    const bool begins = total && !in_total && !lines.empty();
    if (begins) lines.push_back(look.rule(columns.value_at() + columns.value));
    in_total = total;
    add_fact(lines, fact, columns, look);
  }
  return lines;
}

}  // namespace basinwright::render
