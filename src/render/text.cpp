#include "basinwright/render/text.hpp"

#include <algorithm>
#include <type_traits>

#include "display_width.hpp"
#include "table_rows.hpp"
#include "text_lines.hpp"
#include "text_table.hpp"
#include "wrap.hpp"

namespace basinwright::render {
namespace {

using document::Block;
using document::Cell;
using document::Document;
using document::Role;

constexpr int least_width = 20;
constexpr std::size_t margin = 2;

void add(Lines& lines, const Lines& more) {
  lines.insert(lines.end(), more.begin(), more.end());
}

bool is_marked(Role role) {
  return role == Role::stop || role == Role::caution;
}

/// Text with a mark before its first line, the others indented to it.
Lines marked(const std::string& mark, const std::string& words, Role role, const Look& look) {
  const std::size_t width = display_width(mark);
  const Look body = look.narrowed(width + 1);
  return side_by_side({{{mark}, 0, width, false, role},
                       {wrapped(words, body.width), width + 1, body.width, false, role}},
                      look.colour);
}

Lines block_lines(const document::Paragraph& paragraph, const Look& look) {
  const std::string words = look.clean(paragraph.text);
  if (!paragraph.shown || words.empty()) return {};
  if (is_marked(paragraph.role)) {
    return marked(std::string(look.bullet(paragraph.role)), words, paragraph.role, look);
  }
  return side_by_side({{wrapped(words, look.width), 0, look.width, false, paragraph.role}},
                      look.colour);
}

Lines block_lines(const document::Facts& facts, const Look& look) {
  std::vector<Labelled> shown;
  for (const document::Fact& fact : facts.facts) {
    if (!fact.shown) continue;
    shown.push_back({look.clean(fact.label),
                     with_mark(look.clean(fact.cell.text), fact.cell.role, Room::wide),
                     fact.cell.role});
  }
  return facts_lines(shown, look);
}

Lines block_lines(const document::Table& table, const Look& look) {
  if (!table.shown) return {};
  Lines body = table_lines(table, look);
  if (body.empty() || table.caption.empty()) return body;
  Lines lines = wrapped(look.clean(table.caption), look.width);
  lines.emplace_back();
  add(lines, body);
  return lines;
}

Lines block_lines(const document::List& list, const Look& look) {
  const std::size_t digits = std::to_string(list.items.size()).size();
  Lines lines;
  std::size_t number = 0;
  for (const Cell& item : list.items) {
    std::string mark(look.bullet(item.role));
    if (list.numbered) {
      mark = std::to_string(++number);
      mark.insert(0, digits - mark.size(), ' ').append(1, '.');
    }
    add(lines, marked(mark, look.clean(item.text), item.role, look));
  }
  return lines;
}

/// What stands for a picture where none can be shown.
Lines block_lines(const document::Drawing& drawing, const Look& look) {
  Lines lines;
  for (const std::string& words : {look.clean(drawing.title), look.clean(drawing.description)}) {
    if (!words.empty()) add(lines, wrapped(words, look.width));
  }
  return lines;
}

/// What the page rests on, behind a bar.
Lines notice_lines(const std::string& notice, const Look& look) {
  const Look body = look.narrowed(2);
  const Lines words = wrapped(look.clean(notice), body.width);
  const Lines bars(words.size(), std::string(look.bar()));
  return side_by_side(
      {{bars, 0, 1, false, Role::plain}, {words, 2, body.width, false, Role::plain}}, look.colour);
}

/// Collects lines, one empty line between blocks.
class TextPage {
 public:
  void block(const Lines& lines, std::size_t indent) {
    if (lines.empty()) return;
    if (!lines_.empty()) lines_.emplace_back();
    flush(lines, indent);
  }

  void flush(const Lines& lines, std::size_t indent) {
    for (const std::string& line : lines) {
      lines_.push_back(line.empty() ? line : std::string(indent, ' ') + line);
    }
  }

  [[nodiscard]] std::string bytes() const {
    std::string result;
    for (const std::string& line : lines_) result.append(line).append(1, '\n');
    return result;
  }

 private:
  Lines lines_;
};

void put_head(TextPage& page, const Document& document, const Look& look) {
  if (!document.title.empty()) {
    page.block(wrapped(look.clean(document.title), look.width), 0);
    page.flush({look.rule(look.width)}, 0);
  }
  if (!document.subtitle.empty()) {
    page.flush(wrapped(look.clean(document.subtitle), look.width), 0);
  }
  Lines notices;
  for (const std::string& notice : document.notices) add(notices, notice_lines(notice, look));
  page.block(notices, 0);
}

void put_section(TextPage& page, const document::Section& section, const Look& look) {
  const Look inner = look.narrowed(margin);
  std::vector<Lines> blocks;
  for (const Block& block : section.blocks) {
    Lines lines = std::visit([&inner](const auto& b) { return block_lines(b, inner); }, block);
    if (!lines.empty()) blocks.push_back(std::move(lines));
  }
  if (blocks.empty()) return;
  if (!section.title.empty()) page.block(wrapped(look.clean(section.title), look.width), 0);
  for (const Lines& lines : blocks) page.block(lines, margin);
}

void put_bottom_line(TextPage& page, const Cell& line, const Look& look) {
  if (line.text.empty()) return;
  page.block({look.rule(look.width)}, 0);
  page.flush(
      side_by_side({{wrapped(look.clean(line.text), look.width), 0, look.width, false, line.role}},
                   look.colour),
      0);
}

/// The no-break spaces that plain spelling left for the line breaks.
void spread_no_break_spaces(std::string& bytes) {
  constexpr std::string_view no_break_space = "\xC2\xA0";
  for (std::size_t at = bytes.find(no_break_space); at != std::string::npos;
       at = bytes.find(no_break_space, at)) {
    bytes.replace(at, no_break_space.size(), " ");
  }
}

}  // namespace

std::string text(const Document& document, const TextOptions& options) {
  const Look look{static_cast<std::size_t>(std::max(options.width, least_width)),
                  options.colour,
                  options.ascii};
  TextPage page;
  put_head(page, document, look);
  for (const document::Section& section : document.sections) {
    if (section.shown) put_section(page, section, look);
  }
  put_bottom_line(page, document.bottom_line, look);
  std::string bytes = page.bytes();
  if (options.ascii) spread_no_break_spaces(bytes);
  return bytes;
}

}  // namespace basinwright::render
