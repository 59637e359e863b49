#include "markdown_text.hpp"

#include <algorithm>

#include "utf8.hpp"
#include "visible.hpp"

namespace basinwright::render {
namespace {

using document::Role;

bool is_letter(char byte) {
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \n";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Whether the byte at `at` could begin, end or link something.
bool needs_escape(std::string_view text, std::size_t at) {
  constexpr std::string_view always = "\\`*_<>[]|~";
  const char byte = text[at];
  const char next = at + 1 < text.size() ? text[at + 1] : ' ';
  if (always.find(byte) != std::string_view::npos) return true;
  if (byte == '&') return is_letter(next) || next == '#';
  if (byte == '#') return at + 1 == text.size();
  if (byte == ':') return text.substr(at + 1).starts_with("//");
  if (byte == '.') {
    const std::string_view before = text.substr(0, at);
    return before.ends_with("www") || before.ends_with("WWW");
  }
  return false;
}

/// Where a line's first characters would open a block, the place to put a backslash.
std::size_t block_start(std::string_view line) {
  const auto stands_alone = [line](std::size_t at) { return at >= line.size() || line[at] == ' '; };
  if (line.empty()) return std::string_view::npos;
  if (line.front() == '#') return 0;
  if (line.front() == '+') return stands_alone(1) ? 0 : std::string_view::npos;
  if (line.front() == '-') {
    return stands_alone(1) || line[1] == '-' ? 0 : std::string_view::npos;
  }
  const std::size_t after =
      static_cast<std::size_t>(std::ranges::find_if_not(line, is_digit) - line.begin());
  const bool numbered = after > 0 && after < line.size() &&
                        (line[after] == '.' || line[after] == ')') && stands_alone(after + 1);
  return numbered ? after : std::string_view::npos;
}

bool is_space(char32_t scalar) {
  return scalar == 0x20 || scalar == 0xA0 || scalar == 0x1680 ||
         (scalar >= 0x2000 && scalar <= 0x200A) || scalar == 0x202F || scalar == 0x205F ||
         scalar == 0x3000;
}

/// Markers of emphasis only count when they touch something other than a space.
bool has_firm_ends(std::string_view text) {
  if (text.empty()) return false;
  char32_t last = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    last = scalar.value;
    at += scalar.length;
  }
  return !is_space(scalar_at(text, 0).value) && !is_space(last);
}

}  // namespace

std::string markdown_inline(std::string_view text) {
  const std::string seen = visible(text);
  const std::string_view words = trimmed(seen);
  std::string result;
  result.reserve(words.size());
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (words[at] == '\n') {
      result += "<br>";
      continue;
    }
    if (needs_escape(words, at)) result += '\\';
    result += words[at];
  }
  return result;
}

std::string markdown_line(std::string_view text) {
  std::string line = markdown_inline(text);
  const std::size_t at = block_start(line);
  if (at != std::string::npos) line.insert(at, 1, '\\');
  return line;
}

std::string emphasised(const std::string& escaped, Role role) {
  if (!has_firm_ends(escaped)) return escaped;
  if (role == Role::stop || role == Role::total || role == Role::heading) {
    return "**" + escaped + "**";
  }
  return role == Role::assumed ? '*' + escaped + '*' : escaped;
}

}  // namespace basinwright::render
