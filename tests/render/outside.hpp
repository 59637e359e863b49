// Programs from outside that read our output back.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "support/catch.hpp"
#include "support/places.hpp"

namespace outside {

/// A folder that goes away with the test.
class Folder {
 public:
  Folder()
      : path_(std::filesystem::temp_directory_path() /
              ("basinwright-render-" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(path_);
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] std::string write(std::string_view name, std::string_view bytes) const {
    const std::filesystem::path file = path_ / name;
    std::ofstream(file, std::ios::binary) << bytes;
    return file.string();
  }

 private:
  std::filesystem::path path_;
};

struct Result {
  int status = -1;
  std::string output;
};

inline Result run(const std::string& command) {
  Result result;
  std::FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return result;
  char buffer[4096];
  for (std::size_t n = 0; (n = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) {
    result.output.append(buffer, n);
  }
  const int status = ::pclose(pipe);
  result.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return result;
}

/// Whether a program is there; says loudly what stays unchecked if not.
inline bool has(const std::string& program, const std::string& unchecked) {
  if (std::filesystem::exists("/usr/bin/" + program)) return true;
  WARN("SKIPPED: " << program << " is not installed, so " << unchecked << " is not checked");
  return false;
}

/// What read_back.py prints for some bytes; nothing if python3 is absent or cannot tell.
inline std::optional<std::string> read_back(const std::string& how, std::string_view bytes) {
  if (!has("python3", "read_back.py " + how)) return std::nullopt;
  const Folder folder;
  const std::string file = folder.write("input", bytes);
  const Result result = run("PYTHONIOENCODING=utf-8 /usr/bin/python3 '" + places::source() +
                            "/tests/render/read_back.py' " + how + " '" + file + "' 2>&1");
  if (result.status == 77) {
    WARN("SKIPPED: this python3 cannot tell, so read_back.py " << how << " is not checked");
    return std::nullopt;
  }
  INFO(result.output);
  REQUIRE(result.status == 0);
  return result.output;
}

inline std::string hex(std::string_view bytes) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string result;
  for (const char byte : bytes) {
    const auto value = static_cast<unsigned char>(byte);
    result += digits[value / 16U];
    result += digits[value % 16U];
  }
  return result.empty() ? "-" : result;
}

inline std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> result;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) result.push_back(line);
  return result;
}

}  // namespace outside
