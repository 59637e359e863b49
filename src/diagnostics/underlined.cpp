#include <algorithm>
#include <optional>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "glyphs.hpp"

namespace basinwright::diagnostics {
namespace {

constexpr std::size_t widest = 100;       // columns of a printed source line, marks included
constexpr std::size_t lead_columns = 40;  // kept before the caret when a line is cut
constexpr std::string_view cut_mark = "...";
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// The part of a source line that is shown.
struct Excerpt {
  std::vector<Glyph> shown;
  std::size_t caret = 0;  ///< Index into `shown`; its size when just past the end.
  bool cut_before = false;
  bool cut_after = false;
};

/// Line `number` of `text` without its line end; nothing past the last line.
std::optional<std::string_view> line_of(std::string_view text, std::size_t number) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  if (number == 0) return std::nullopt;
  for (std::size_t i = 1; i < number; ++i) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return std::nullopt;
    text.remove_prefix(end + 1);
  }
  if (text.empty()) return std::nullopt;
  std::string_view line = text.substr(0, text.find('\n'));
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

/// Drops up to `count` scalars from the front of `line`; how many there were.
std::size_t skip(std::string_view& line, std::size_t count) {
  std::size_t skipped = 0;
  for (; skipped < count && !line.empty(); ++skipped) line.remove_prefix(scalar_length(line));
  return skipped;
}

std::size_t columns(const std::vector<Glyph>& all) {
  std::size_t sum = 0;
  for (const Glyph& g : all) sum += g.columns;
  return sum;
}

/// Narrows `all` to a window of `room` columns with the caret well inside.
Excerpt window(const std::vector<Glyph>& all, std::size_t caret, std::size_t room) {
  std::size_t begin = caret;
  std::size_t used = 0;
  const auto widen_left = [&](std::size_t limit) {
    while (begin > 0 && used + all[begin - 1].columns <= limit) used += all[--begin].columns;
  };
  widen_left(lead_columns);
  std::size_t end = caret;
  while (end < all.size() && used + all[end].columns <= room) used += all[end++].columns;
  widen_left(room);
  const auto at = [&all](std::size_t i) { return all.begin() + static_cast<std::ptrdiff_t>(i); };
  return {{at(begin), at(end)}, caret - begin, begin > 0, end < all.size()};
}

Excerpt excerpt(std::string_view line, std::size_t column) {
  // Only the neighbourhood of the caret is looked at: a line may be a whole file.
  std::string_view rest = line;
  const std::size_t wanted = column - 1;
  const std::size_t first = skip(rest, wanted > widest ? wanted - widest : 0);
  std::vector<Glyph> near = glyphs(rest, 3 * widest);
  const std::size_t caret = std::min(wanted - first, near.size());
  const std::size_t total = columns(near);
  if (first == 0 && total <= widest) return {std::move(near), caret, false, false};
  Excerpt out = window(near, caret, widest - 2 * cut_mark.size());
  out.cut_before = out.cut_before || first > 0;
  return out;
}

std::string source_line(const Excerpt& e) {
  std::string out(e.cut_before ? cut_mark : "");
  for (const Glyph& g : e.shown) out += g.text;
  return out.append(e.cut_after ? cut_mark : "");
}

std::string caret_line(const Excerpt& e, std::size_t width) {
  std::string out(e.cut_before ? cut_mark.size() : 0, ' ');
  for (std::size_t i = 0; i < e.caret; ++i) {
    const Glyph& g = e.shown[i];
    out += g.text == "\t" ? g.text : std::string(g.columns, ' ');
  }
  const std::size_t start = out.size();
  const std::size_t room = e.shown.size() - e.caret;
  for (std::size_t i = 0; i < std::min(width, room); ++i) {
    const Glyph& g = e.shown[e.caret + i];
    out.append(g.text == "\t" ? 1 : g.columns, '~');
  }
  if (out.size() == start) out += '^';
  out[start] = '^';
  return out;
}

std::string place(const Position& at) {
  std::string out = printable(at.file);
  if (at.line == 0) return out;
  if (!out.empty()) out += ':';
  out += std::to_string(at.line);
  if (at.column > 0) out.append(":").append(std::to_string(at.column));
  return out;
}

std::string headline(const Diagnostic& d) {
  std::string out = place(d.at);
  if (!out.empty()) out += ": ";
  out += name(d.severity);
  if (!d.code.empty()) out.append("[").append(printable(d.code)).append("]");
  return out.append(": ").append(printable(d.message)).append("\n");
}

}  // namespace

std::string underlined(const Diagnostic& diagnostic, std::string_view text) {
  std::string out = headline(diagnostic);
  const Position& at = diagnostic.at;
  if (const auto line = line_of(text, at.line); line && at.column > 0) {
    const Excerpt e = excerpt(*line, at.column);
    out += source_line(e) + "\n" + caret_line(e, at.width) + "\n";
  }
  for (const Position& other : diagnostic.also) out += "  see also: " + place(other) + "\n";
  if (!diagnostic.hint.empty()) out += "  hint: " + printable(diagnostic.hint) + "\n";
  return out;
}

}  // namespace basinwright::diagnostics
