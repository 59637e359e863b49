// Names of test cases that every runner can ask for.
#pragma once

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

/// Test names with other signs than letters, digits, space and , . ( ) -: a runner that takes one
/// for a pattern finds no test and calls that a pass.
inline Findings wrong_test_names(const fs::path& root) {
  constexpr std::string_view opening = "TEST_CASE(\"";
  Findings findings;
  for (const File& file : files_below(root, {"tests"}, is_code)) {
    const std::string code = code_only(file.text, Literals::kept);
    for (std::size_t at = code.find(opening); at != std::string::npos;
         at = code.find(opening, at)) {
      const std::size_t start = at;
      at += opening.size();
      const std::string name = code.substr(at, code.find('"', at) - at);
      const bool plain = std::ranges::all_of(name, [](char byte) {
        return std::isalnum(static_cast<unsigned char>(byte)) != 0 ||
               std::string_view(" ,.()-").find(byte) != std::string_view::npos;
      });
      if (plain && !name.empty()) continue;
      findings.push_back(place(file, line_at(code, start)) + "test name \"" + name +
                         "\"; use letters, digits, space and , . ( ) - only");
    }
  }
  return findings;
}

}  // namespace architecture
