// What people read is worded in one place, so that a translation could follow.
#pragma once

#include <array>
#include <map>

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

/// Where words of pages stand: headers of constants, tables of codes and sources of figures.
inline bool holds_words(std::string_view path) {
  return path.starts_with("src/report/wording/") || path.ends_with("words.cpp") ||
         path.ends_with("html_words.hpp") || path.ends_with("word_figures.hpp");
}

/// Names with a blank that machines read.
inline constexpr std::array names_with_a_blank{"painted part"};

inline bool is_lower(char c) {
  return c >= 'a' && c <= 'z';
}
inline bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

/// What is left of a literal without escapes such as \n and \u00b7, and without what is in braces.
inline std::string bare_text(std::string_view literal) {
  constexpr std::size_t escape = 2;
  constexpr std::size_t code_point = 6;
  std::string out;
  for (std::size_t at = 0; at < literal.size();) {
    if (literal[at] == '\\') {
      const char after = at + 1 < literal.size() ? literal[at + 1] : ' ';
      at += after == 'u' ? code_point : escape;
      out += after == '"' ? '"' : ' ';
    } else if (literal[at] == '{') {
      at = std::min(literal.find('}', at), literal.size() - 1) + 1;
    } else {
      out += literal[at++];
    }
  }
  return out;
}

/// A capital before a small letter, or a word of two letters and more next to a blank.
inline bool is_prose(std::string_view text) {
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    const bool word = is_lower(text[i]) && is_lower(text[i + 1]);
    const std::size_t end = text.find_first_not_of("abcdefghijklmnopqrstuvwxyz", i);
    const bool blank_before = i > 0 && text[i - 1] == ' ';
    const bool blank_after = end != std::string_view::npos && text[end] == ' ';
    if (is_upper(text[i]) && is_lower(text[i + 1])) return true;
    if (word && (blank_before || blank_after)) return true;
  }
  return false;
}

/// Markup has capitals and blanks of its own; a sentence in it begins with a word, right at the
/// start, after a tag or as a label.
inline bool begins_a_sentence(std::string_view text) {
  for (const std::string_view before : {">", "aria-label=\\\""}) {
    const std::size_t at = text.find(before);
    if (at == std::string_view::npos) continue;
    const std::string_view word = text.substr(at + before.size(), 2);
    if (word.size() == 2 && (is_upper(word[0]) || is_lower(word[0])) && is_lower(word[1]))
      return true;
  }
  return text.size() > 2 && is_upper(text[0]) && is_lower(text[1]) && is_lower(text[2]);
}

/// What stands right before a literal says that no page shows it: our own mistake, a name that is
/// compared, the place in a source.
inline bool is_for_machines(std::string_view before) {
  const std::size_t end = before.find_last_not_of(" \n\t");
  before = end == std::string_view::npos ? "" : before.substr(0, end + 1);
  for (const std::string_view ending : {"_error(", "==", "!=", "starts_with(", "ends_with("}) {
    if (before.ends_with(ending)) return true;
  }
  const std::size_t kind = before.rfind("Kind::");
  return kind != std::string_view::npos && before.find('}', kind) == std::string_view::npos;
}

/// The byte after a literal that opens at a quote; a raw one is data of another language.
inline std::size_t end_of_literal(std::string_view code, std::size_t open) {
  std::size_t close = open + 1;
  if (open > 0 && code[open - 1] == 'R') {
    const std::size_t bracket = code.find('(', open);
    const std::string end = ")" + std::string(code.substr(open + 1, bracket - open - 1)) + "\"";
    return code.find(end, bracket) + end.size();
  }
  while (close < code.size() && code[close] != '"') close += code[close] == '\\' ? 2U : 1U;
  return close + 1;
}

/// Prose in the code of pages and of their formats.
inline Findings prose_out_of_place(const fs::path& root) {
  Findings findings;
  for (const File& file : files_below(root, {"src/report", "src/render"}, is_code)) {
    if (holds_words(file.path)) continue;
    const std::string code = code_only(file.text, Literals::kept);
    const bool page = file.path.starts_with("src/report/");
    for (std::size_t open = code.find('"'); open != std::string::npos;
         open = code.find('"', open)) {
      const std::size_t end = end_of_literal(code, open);
      const bool raw = open > 0 && code[open - 1] == 'R';
      const std::string literal = code.substr(open + 1, end - open - 2);
      const std::string_view before = std::string_view(code).substr(0, open);
      const std::size_t line =
          before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
      const bool include = before.substr(line).starts_with("#include");
      const bool prose = page ? is_prose(bare_text(literal)) : begins_a_sentence(literal);
      const bool name = std::ranges::find(names_with_a_blank, literal) != names_with_a_blank.end();
      if (prose && !raw && !include && !name && !is_for_machines(before)) {
        findings.push_back(place(file, line_at(code, open)) + "\"" + literal +
                           "\" is prose: it goes to src/report/wording");
      }
      open = end;
    }
  }
  return findings;
}

/// Names of words that come twice: two headers of one namespace may not define one name each.
inline Findings words_twice(const fs::path& root) {
  Findings findings;
  std::map<std::string, std::string> seen;
  for (const File& file : files_below(root, {"src/report/wording"}, is_header)) {
    const std::string start = "inline constexpr char ";
    const std::string& text = file.text;
    for (std::size_t at = text.find(start); at != std::string::npos; at = text.find(start, at)) {
      at += start.size();
      const std::string name = text.substr(at, text.find('[', at) - at);
      if (!seen.try_emplace(name, file.path).second)
        findings.push_back(place(file, line_at(text, at)) + name + " is in " + seen[name] + " too");
    }
  }
  return findings;
}

}  // namespace architecture
