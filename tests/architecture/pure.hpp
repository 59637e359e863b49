// What the rooms below cli must not call: clocks, the environment, locales and what depends on
// them.
#pragma once

#include <set>

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

/// Names that may not be used below cli, however they are qualified.
inline const std::set<std::string>& impure_names() {
  static const std::set<std::string> names = {
      "getenv",       "secure_getenv", "system_clock", "steady_clock", "high_resolution_clock",
      "gettimeofday", "clock_gettime", "localtime",    "localtime_r",  "gmtime",
      "mktime",       "strftime",      "setlocale",    "imbue",        "strtod",
      "strtof",       "strtold",       "stod",         "stof",         "stold",
      "atof"};
  return names;
}

/// Whether a name at a place of the code calls the C library's clock: `std::time(`, `::time(`, or a
/// bare `time(` with an argument that only the clock takes. Rooms may have a `time` of their own.
inline bool is_clock_call(std::string_view code, std::size_t begin, std::size_t end) {
  const bool called = end < code.size() && code[end] == '(';
  if (!called || code.substr(begin, end - begin) != "time") return false;
  std::string_view before = code.substr(0, begin);
  if (before.ends_with("::")) {
    before.remove_suffix(2);
    return before.ends_with("std") || before.empty() || !is_name(before.back());
  }
  if (before.ends_with('.') || before.ends_with("->")) return false;
  const std::string_view argument = code.substr(end + 1);
  constexpr std::string_view of_the_clock[] = {"0)", "nullptr)", "NULL)", "&"};
  return std::ranges::any_of(
      of_the_clock, [argument](std::string_view start) { return argument.starts_with(start); });
}

inline bool is_locale(std::string_view code, std::size_t begin, std::size_t end) {
  return code.substr(begin, end - begin) == "locale" && code.substr(0, begin).ends_with("std::");
}

inline Findings impure_calls(const fs::path& root) {
  Findings findings;
  for (const File& file : room_code(root)) {
    if (room_of(file.path) == "cli") continue;
    const std::string code = code_only(file.text);
    for (std::size_t at = 0; at < code.size();) {
      std::size_t end = at;
      while (end < code.size() && is_name(code[end])) ++end;
      const std::string name = code.substr(at, end - at);
      if (impure_names().contains(name) || is_clock_call(code, at, end) ||
          is_locale(code, at, end)) {
        findings.push_back(place(file, line_at(code, at)) + "uses " + name +
                           "; below cli, clocks and the environment are arguments and numbers " +
                           "are read by from_chars");
      }
      at = end + (end == at ? 1 : 0);
    }
  }
  return findings;
}

}  // namespace architecture
