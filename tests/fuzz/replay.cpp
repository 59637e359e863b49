// Examines files once: kept findings, examples and broken files, with any compiler.
//
//     basinwright_fuzz_replay TARGET FILE_OR_FOLDER...
#include <algorithm>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "fuzz/targets.hpp"

namespace {

std::vector<std::filesystem::path> files_of(const std::filesystem::path& place) {
  if (!std::filesystem::is_directory(place)) return {place};
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(place)) {
    if (entry.is_regular_file()) files.push_back(entry.path());
  }
  std::ranges::sort(files);
  return files;
}

int replay(int argc, char** argv) {
  const auto& target = basinwright::fuzz::target_named(argc > 1 ? argv[1] : "");
  int count = 0;
  for (int i = 2; i < argc; ++i) {
    for (const auto& path : files_of(argv[i])) {
      std::ifstream file(path, std::ios::binary);
      if (!file) throw std::runtime_error("cannot read " + path.string());
      const std::string bytes{std::istreambuf_iterator<char>(file), {}};
      std::fprintf(stderr, "%s\n", path.c_str());  // The last one named is the one that broke.
      target.examine(bytes);
      ++count;
    }
  }
  std::printf("%s: %d files\n", argv[1], count);
  return count > 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return replay(argc, argv);
  } catch (const std::exception& e) {
    std::fprintf(stderr, "%s\n", e.what());
    return 1;
  }
}
