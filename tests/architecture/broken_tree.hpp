// Small projects in a temporary folder, to see each check bite.
#pragma once

#include <unistd.h>

#include "support/catch.hpp"
#include "tree.hpp"

namespace architecture {

/// A project that goes away with the test.
class BrokenTree {
 public:
  BrokenTree() : root_(fs::temp_directory_path() / name()) { fs::create_directories(root_); }
  ~BrokenTree() {
    std::error_code ignored;
    fs::remove_all(root_, ignored);
  }
  BrokenTree(const BrokenTree&) = delete;
  BrokenTree& operator=(const BrokenTree&) = delete;

  void write(const std::string& path, std::string_view text) const {
    fs::create_directories((root_ / path).parent_path());
    std::ofstream(root_ / path, std::ios::binary) << text;
  }

  [[nodiscard]] const fs::path& root() const { return root_; }

 private:
  static std::string name() {
    static int count = 0;
    return "basinwright-tree-" + std::to_string(::getpid()) + '-' + std::to_string(++count);
  }

  fs::path root_;
};

/// Demands exactly one finding, which holds some words.
inline void require_one(const Findings& findings, std::string_view words) {
  for (const std::string& finding : findings) UNSCOPED_INFO(finding);
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().find(words) != std::string::npos);
}

/// Demands that nothing was found; prints everything that was.
inline void require_none(const Findings& findings) {
  for (const std::string& finding : findings) FAIL_CHECK(finding);
  SUCCEED();
}

/// Some lines of nothing.
inline std::string lines(std::size_t count, std::string_view line = "\n") {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += line;
  return text;
}

}  // namespace architecture
