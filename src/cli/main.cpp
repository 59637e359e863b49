#include <unistd.h>
#include <new>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/cli/run.hpp"

namespace {

// Ends at once: to unwind takes memory too, and compilers are least sure of those paths.
[[noreturn]] void out_of_memory() {
  constexpr std::string_view words = "basinwright: out of memory; nothing was written\n";
  if (::write(STDERR_FILENO, words.data(), words.size()) < 0) ::_exit(1);
  ::_exit(static_cast<int>(basinwright::cli::Status::ours));
}

}  // namespace

int main(int argc, char** argv) {
  std::set_new_handler(out_of_memory);
  return basinwright::cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc));
}
