// Public headers that stand on their own.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>

#include "tree.hpp"

namespace architecture {

/// A compiler at work on one header.
struct Compilation {
  std::string header;
  std::FILE* pipe = nullptr;
};

inline Compilation compilation(const fs::path& root,
                               const std::string& compiler,
                               const File& file) {
  const std::string header = file.path.substr(std::string_view("include/").size());
  // Twice, so that a header without a guard fails too.
  const std::string line = "#include \"" + header + "\"\\n";
  const std::string command = "printf '" + line + line + "' | '" + compiler +
                              "' -std=c++20 -fsyntax-only -I '" + (root / "include").string() +
                              "' -x c++ - 2>&1";
  return {file.path, ::popen(command.c_str(), "r")};
}

/// Nothing if the header compiled, else the first lines the compiler said.
inline std::string complaint(const Compilation& job) {
  if (job.pipe == nullptr) return "the compiler could not be started";
  std::string output;
  char buffer[4096];
  for (std::size_t n = 0; (n = std::fread(buffer, 1, sizeof buffer, job.pipe)) > 0;) {
    output.append(buffer, n);
  }
  if (::pclose(job.pipe) == 0) return "";
  constexpr std::size_t enough = 600;
  return output.empty() ? "the compiler failed" : output.substr(0, enough);
}

/// Compiles each public header alone, a few at a time, and reports all that fail.
inline Findings dependent_headers(const fs::path& root, const std::string& compiler) {
  constexpr std::size_t at_once = 4;
  const std::vector<File> headers = files_below(root, {"include"}, is_header);
  Findings findings;
  for (std::size_t start = 0; start < headers.size(); start += at_once) {
    std::vector<Compilation> jobs;
    for (std::size_t i = start; i < std::min(start + at_once, headers.size()); ++i) {
      jobs.push_back(compilation(root, compiler, headers[i]));
    }
    for (const Compilation& job : jobs) {
      const std::string said = complaint(job);
      if (said.empty()) continue;
      findings.push_back(job.header + ": does not compile alone; include what it uses\n" + said);
    }
  }
  return findings;
}

}  // namespace architecture
