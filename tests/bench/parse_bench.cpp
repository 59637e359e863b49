// How long the lines of a file take a general JSON library to read into its tree, and nothing else:
// what a batch is measured against. Usage: bench_parse FILE THREADS; whoever runs it takes the
// time.
#include <fmt/format.h>
#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include <nlohmann/json.hpp>

int main(int count, char** arguments) {
  if (count != 3) {
    fmt::print(stderr, "usage: bench_parse FILE THREADS\n");
    return 2;
  }
  std::ifstream file(arguments[1], std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  std::vector<std::string_view> lines;
  for (std::size_t from = 0; from < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', from), bytes.size());
    lines.emplace_back(bytes.data() + from, end - from);
    from = end + 1;
  }
  std::atomic<std::size_t> next = 0;
  std::atomic<std::size_t> members = 0;
  const auto work = [&] {
    constexpr std::size_t at_once = 64;
    for (std::size_t from = next.fetch_add(at_once); from < lines.size();
         from = next.fetch_add(at_once)) {
      for (std::size_t i = from; i < std::min(lines.size(), from + at_once); ++i)
        members += nlohmann::json::parse(lines[i]).size();
    }
  };
  {
    std::vector<std::jthread> others;
    for (int i = 1; i < std::atoi(arguments[2]); ++i) others.emplace_back(work);
    work();
  }
  fmt::print("{} lines, {} members\n", lines.size(), members.load());
}
