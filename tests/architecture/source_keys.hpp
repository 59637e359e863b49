// Every number's source resolves in docs/sources.md.
#pragma once

#include <set>

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

inline constexpr const char* sources_page = "docs/sources.md";

struct SourceUse {
  std::string key;  ///< Empty: not written as a literal.
  std::size_t line = 0;
};

/// The text after blanks and a designator such as `.key =`.
inline std::size_t value_at(std::string_view code, std::size_t at) {
  const auto blanks = [&] { at = std::min(code.find_first_not_of(" \t\n", at), code.size()); };
  blanks();
  if (code.substr(at).starts_with(".key")) {
    at += 4;
    blanks();
    if (at < code.size() && code[at] == '=') ++at;
    blanks();
  }
  return at;
}

/// The keys that follow `Kind::published,` and the other kinds that need one.
inline std::vector<SourceUse> source_uses(const File& file) {
  const std::string text = code_only(file.text, Literals::kept);
  const std::string_view code = text;
  std::vector<SourceUse> uses;
  for (const std::string kind : {"published", "common_practice", "from_memory", "assumed"}) {
    const std::string name = "Kind::" + kind;
    for (std::size_t at = code.find(name); at != std::string::npos; at = code.find(name, at)) {
      const std::size_t start = at;
      at += name.size();
      const std::size_t comma = code.find_first_not_of(" \t\n", at);
      if (comma == std::string::npos || code[comma] != ',') continue;
      const std::size_t value = value_at(code, comma + 1);
      const bool literal = value < code.size() && code[value] == '"';
      const std::size_t end = literal ? code.find('"', value + 1) : value;
      uses.push_back(
          {literal ? text.substr(value + 1, end - value - 1) : "", line_at(code, start)});
    }
  }
  std::ranges::sort(uses, {}, &SourceUse::line);
  return uses;
}

/// Keys the page explains: lines that begin with "- `key`:" and headings of a `key`.
inline std::set<std::string> explained_keys(std::string_view page) {
  std::set<std::string> keys;
  for (const std::string& line : split(page, '\n')) {
    const std::size_t open = line.find('`');
    const std::size_t close = open == std::string::npos ? open : line.find('`', open + 1);
    if (close == std::string::npos) continue;
    const bool item = open == 2 && line.starts_with("- ") && line.compare(close + 1, 1, ":") == 0;
    const bool heading = line.starts_with("#") && line.find_first_not_of("# ") == open;
    if (item || heading) keys.insert(line.substr(open + 1, close - open - 1));
  }
  return keys;
}

/// Keys the page does not explain, each with the place of its first use.
inline Findings unexplained_sources(const fs::path& root) {
  std::set<std::string> met = explained_keys(contents(root / sources_page));
  Findings findings;
  for (const File& file : room_code(root)) {
    for (const SourceUse& use : source_uses(file)) {
      if (use.key.empty()) {
        findings.push_back(place(file, use.line) +
                           "the key after the kind is no literal; write it there in quotes");
      } else if (met.insert(use.key).second) {
        findings.push_back(place(file, use.line) + "source key \"" + use.key + "\" is not in " +
                           sources_page + "; add the line \"- `" + use.key +
                           "`: document, place, what it gives\"");
      }
    }
  }
  return findings;
}

}  // namespace architecture
