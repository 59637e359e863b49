// Running a reference program that stands outside the project, and saying so when it is missing.
#pragma once

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "support/places.hpp"

namespace outside {

/// What a shell command printed, line by line; nothing when it failed.
inline std::optional<std::vector<std::string>> lines_of(const std::string& command) {
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return std::nullopt;
  std::string all;
  std::array<char, 4096> buffer{};
  while (const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), pipe)) {
    all.append(buffer.data(), got);
  }
  if (pclose(pipe) != 0) return std::nullopt;
  std::vector<std::string> out;
  std::size_t from = 0;
  for (std::size_t end = all.find('\n'); end != std::string::npos; end = all.find('\n', from)) {
    out.push_back(all.substr(from, end - from));
    from = end + 1;
  }
  return out;
}

/// Whether the command `probe` succeeds; prints a line when it does not.
inline bool present(const std::string& probe, const std::string& what) {
  if (std::system((probe + " >/dev/null 2>&1").c_str()) == 0) return true;
  std::printf("SKIPPED: %s is not installed, so its check did not run\n", what.c_str());
  return false;
}

/// Debian's own interpreter: the one found first may be another.
inline const std::string python = "/usr/bin/python3";
inline bool has_python() {
  return present(python + " -c 'import decimal'", "python3");
}

/// How many random cases an oracle is asked for; a deep run sets BASINWRIGHT_ORACLE_CASES.
inline std::string cases(const std::string& usual) {
  const char* wanted = std::getenv("BASINWRIGHT_ORACLE_CASES");
  return wanted == nullptr ? usual : std::string(wanted);
}

/// The lines of a Python script under tests/, run with `arguments`.
inline std::optional<std::vector<std::string>> python_lines(const std::string& script,
                                                            const std::string& arguments) {
  return lines_of(python + " '" + places::source() + "/tests/" + script + "' " + arguments);
}

}  // namespace outside
