// The project as files: what every check reads, and the form of what it finds.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace architecture {

namespace fs = std::filesystem;

/// One sentence a fault: where, what is wrong, what to do.
using Findings = std::vector<std::string>;

inline void add(Findings& findings, const Findings& more) {
  findings.insert(findings.end(), more.begin(), more.end());
}

struct File {
  std::string path;  ///< From the root, with slashes.
  std::string text;
};

inline std::string contents(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

inline bool is_code(std::string_view path) {
  return path.ends_with(".hpp") || path.ends_with(".cpp");
}
inline bool is_header(std::string_view path) {
  return path.ends_with(".hpp");
}

/// Hand-written files: code, scripts and build files, but no data.
inline bool is_written(std::string_view path) {
  return is_code(path) || path.ends_with(".py") || path.ends_with(".sh") ||
         path.ends_with("CMakeLists.txt");
}

/// Every file below some folders of the root, sorted by path.
template <class Wanted>
std::vector<File> files_below(const fs::path& root,
                              const std::vector<std::string>& folders,
                              Wanted wanted) {
  std::vector<File> files;
  for (const std::string& folder : folders) {
    if (!fs::is_directory(root / folder)) continue;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / folder)) {
      const std::string path = fs::relative(entry.path(), root).generic_string();
      if (entry.is_regular_file() && wanted(path)) files.push_back({path, contents(entry.path())});
    }
  }
  std::ranges::sort(files, {}, &File::path);
  return files;
}

/// The code of the rooms, public and private.
inline std::vector<File> room_code(const fs::path& root) {
  return files_below(root, {"include", "src"}, is_code);
}

/// All code, with that of the tests.
inline std::vector<File> all_code(const fs::path& root) {
  return files_below(root, {"include", "src", "tests"}, is_code);
}

/// The parts of a path or a line.
inline std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = text.find(at);
    parts.emplace_back(text.substr(0, end));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

/// The room a file belongs to: src/<room>/... or include/basinwright/<room>/...; else empty.
inline std::string room_of(std::string_view path) {
  const std::vector<std::string> parts = split(path, '/');
  if (parts.size() > 2 && parts[0] == "src") return parts[1];
  if (parts.size() > 3 && parts[0] == "include" && parts[1] == "basinwright") return parts[2];
  return "";
}

inline std::size_t line_count(std::string_view text) {
  const auto ends = static_cast<std::size_t>(std::ranges::count(text, '\n'));
  return ends + (text.empty() || text.back() == '\n' ? 0 : 1);
}

/// The line a byte stands in, from 1.
inline std::size_t line_at(std::string_view text, std::size_t at) {
  return 1 + static_cast<std::size_t>(std::ranges::count(text.substr(0, at), '\n'));
}

inline std::string place(const File& file, std::size_t line) {
  return file.path + ':' + std::to_string(line) + ": ";
}

}  // namespace architecture
