// Ceilings on files and functions, and what may stand at the top of the project.
#pragma once

#include <set>

#include "functions.hpp"
#include "tree.hpp"

namespace architecture {

inline constexpr std::size_t file_ceiling = 400;
inline constexpr std::size_t function_ceiling = 60;
inline constexpr std::size_t build_file_limit = 120;
inline constexpr std::size_t main_limit = 30;

inline Findings long_files(const fs::path& root) {
  Findings findings;
  for (const File& file : files_below(root, {"src", "include", "tests"}, is_written)) {
    const std::size_t lines = line_count(file.text);
    if (lines <= file_ceiling) continue;
    findings.push_back(file.path + ": " + std::to_string(lines) + " lines; the ceiling is " +
                       std::to_string(file_ceiling) + ": split it by noun");
  }
  return findings;
}

inline Findings long_functions(const fs::path& root) {
  Findings findings;
  for (const File& file : all_code(root)) {
    for (const Function& function : functions_of(file.text)) {
      if (function.lines <= function_ceiling) continue;
      findings.push_back(place(file, function.line) + std::to_string(function.lines) +
                         " lines of function; the ceiling is " + std::to_string(function_ceiling) +
                         ": take parts out and name them");
    }
  }
  return findings;
}

/// The build file and the main function stay thin.
inline Findings thick_entries(const fs::path& root) {
  Findings findings;
  const auto hold = [&](const std::string& path, std::size_t limit, const std::string& cure) {
    const std::size_t lines = line_count(contents(root / path));
    if (lines < limit) return;
    findings.push_back(path + ": " + std::to_string(lines) + " lines; it must stay under " +
                       std::to_string(limit) + ": " + cure);
  };
  hold("CMakeLists.txt", build_file_limit, "move parts to the folders they build");
  hold("src/cli/main.cpp", main_limit, "move the work to other files of src/cli");
  return findings;
}

inline Findings wrong_top_level(const fs::path& root) {
  static const std::set<std::string> allowed = {"CMakeLists.txt",
                                                "README.md",
                                                "DEVELOPERS.md",
                                                "LICENSE",
                                                "src",
                                                "include",
                                                "tests",
                                                "examples",
                                                "docs"};
  Findings findings;
  for (const fs::directory_entry& entry : fs::directory_iterator(root)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with('.') || name.starts_with("build") || allowed.contains(name)) continue;
    findings.push_back(name + ": does not belong at the top level; move it below src, include, " +
                       "tests, examples or docs");
  }
  std::ranges::sort(findings);
  return findings;
}

}  // namespace architecture
