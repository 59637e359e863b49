#include "basinwright/render/markdown.hpp"

#include <algorithm>

#include "display_width.hpp"
#include "markdown_text.hpp"
#include "table_rows.hpp"

namespace basinwright::render {
namespace {

using document::Document;
using document::Role;
using document::Row;
using document::Table;

/// Beyond this a long cell overhangs, rather than pad all the others.
constexpr std::size_t widest_padding = 60;
constexpr std::size_t least_dashes = 4;

/// What stands before an item. A list that follows one of its kind takes other markers, or the two
/// would run together.
struct Markers {
  char bullet = '-';
  char after_number = '.';

  [[nodiscard]] Markers other() const { return bullet == '-' ? Markers{'*', ')'} : Markers{}; }
};

struct MarkdownColumn {
  std::size_t index = 0;
  bool right = false;
  std::string title;
  std::size_t width = least_dashes;
};

std::string cell_text(const Row& row, std::size_t index) {
  const document::Cell& cell = row.cells[index];
  return with_mark(emphasised(markdown_inline(cell.text), shown_role(row, cell)), cell.role);
}

std::vector<MarkdownColumn> columns_of(const Table& table) {
  std::vector<MarkdownColumn> columns;
  for (const std::size_t i : shown_columns(table)) {
    MarkdownColumn column{
        i, column_stands_right(table, i), markdown_inline(table.columns[i].title)};
    const auto widen = [&column](const std::string& text) {
      column.width = std::max(column.width, std::min(display_width(text), widest_padding));
    };
    widen(column.title);
    for (const Row& row : table.rows) widen(cell_text(row, i));
    columns.push_back(std::move(column));
  }
  return columns;
}

std::string padded(const std::string& text, const MarkdownColumn& column) {
  const std::size_t width = display_width(text);
  const std::string padding(width < column.width ? column.width - width : 0, ' ');
  return column.right ? padding + text : text + padding;
}

template <class Text>
std::string table_line(const std::vector<MarkdownColumn>& columns, Text text) {
  std::string line = "|";
  for (const MarkdownColumn& column : columns) line += ' ' + text(column) + " |";
  return line += '\n';
}

std::string block_text(const Table& table, Markers) {
  if (!table.shown) return "";
  require_full_rows(table);
  const std::vector<MarkdownColumn> columns = columns_of(table);
  if (columns.empty() || table.rows.empty()) return "";
  std::string lines;
  if (!table.caption.empty()) lines = "### " + markdown_inline(table.caption) + "\n\n";
  lines += table_line(columns, [](const MarkdownColumn& c) { return padded(c.title, c); });
  lines += table_line(columns, [](const MarkdownColumn& c) {
    return std::string(c.width - 1, '-') + (c.right ? ':' : '-');
  });
  for (const Row& row : table.rows) {
    lines += table_line(
        columns, [&row](const MarkdownColumn& c) { return padded(cell_text(row, c.index), c); });
  }
  return lines;
}

std::string block_text(const document::Paragraph& paragraph, Markers) {
  const std::string text = markdown_line(paragraph.text);
  if (!paragraph.shown || text.empty()) return "";
  return emphasised(text, paragraph.role) + '\n';
}

std::string block_text(const document::Facts& facts, Markers markers) {
  std::string lines;
  for (const document::Fact& fact : facts.facts) {
    if (!fact.shown) continue;
    const std::string label = markdown_inline(fact.label);
    std::string value = markdown_line(fact.cell.text);
    if (!label.empty()) {
      value = emphasised(label + ':', Role::heading) + ' ' +
              with_mark(emphasised(markdown_inline(fact.cell.text), fact.cell.role),
                        fact.cell.role,
                        Room::wide);
    }
    lines.append(1, markers.bullet).append(1, ' ').append(value).append(1, '\n');
  }
  return lines;
}

std::string block_text(const document::List& list, Markers markers) {
  std::string lines;
  std::size_t number = 0;
  for (const document::Cell& item : list.items) {
    if (list.numbered) lines += std::to_string(++number);
    lines += list.numbered ? markers.after_number : markers.bullet;
    lines += ' ' + with_mark(emphasised(markdown_line(item.text), item.role), item.role) + '\n';
  }
  return lines;
}

std::string block_text(const document::Drawing& drawing, Markers) {
  const std::string title = markdown_line(drawing.title);
  const std::string description = markdown_line(drawing.description);
  if (title.empty() && description.empty()) return "";
  if (title.empty() || description.empty()) return title + description + '\n';
  return emphasised(title, Role::heading) + "\n\n" + description + '\n';
}

/// What kind of list a block becomes.
enum class Listing { none, bulleted, numbered };

Listing listing_of(const document::Paragraph&) {
  return Listing::none;
}
Listing listing_of(const Table&) {
  return Listing::none;
}
Listing listing_of(const document::Drawing&) {
  return Listing::none;
}
Listing listing_of(const document::Facts&) {
  return Listing::bulleted;
}
Listing listing_of(const document::List& list) {
  return list.numbered ? Listing::numbered : Listing::bulleted;
}

/// Collects blocks, one empty line between two.
class MarkdownPage {
 public:
  void add(const std::string& block) {
    if (block.empty()) return;
    if (!bytes_.empty()) bytes_ += '\n';
    bytes_ += block;
  }

  void line(const std::string& text) {
    if (!text.empty()) add(text + '\n');
  }

  [[nodiscard]] const std::string& bytes() const { return bytes_; }

 private:
  std::string bytes_;
};

void put_markdown_head(MarkdownPage& page, const Document& document) {
  if (!document.title.empty()) page.line("# " + markdown_inline(document.title));
  page.line(markdown_line(document.subtitle));
  std::string notices;
  for (const std::string& notice : document.notices) {
    if (!notices.empty()) notices += ">\n";
    notices += "> " + markdown_line(notice) + '\n';
  }
  page.add(notices);
}

void put_markdown_section(MarkdownPage& page, const document::Section& section) {
  std::vector<std::string> blocks;
  Markers markers;
  Listing before = Listing::none;
  for (const document::Block& block : section.blocks) {
    const Listing listing = std::visit([](const auto& b) { return listing_of(b); }, block);
    const bool runs_on = listing != Listing::none && listing == before;
    const Markers here = runs_on ? markers.other() : Markers{};
    std::string text = std::visit([here](const auto& b) { return block_text(b, here); }, block);
    if (text.empty()) continue;
    blocks.push_back(std::move(text));
    markers = here;
    before = listing;
  }
  if (blocks.empty()) return;
  const std::string depth = section.under ? "### " : "## ";
  if (!section.title.empty()) page.line(depth + markdown_inline(section.title));
  for (const std::string& block : blocks) page.add(block);
}

}  // namespace

std::string markdown(const Document& document) {
  MarkdownPage page;
  put_markdown_head(page, document);
  for (const document::Section& section : document.sections) {
    if (section.shown) put_markdown_section(page, section);
  }
  if (!document.bottom_line.text.empty()) {
    page.line("---");
    page.line(emphasised(markdown_line(document.bottom_line.text), Role::total));
  }
  return page.bytes();
}

}  // namespace basinwright::render
