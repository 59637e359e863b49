#include <cstdio>
#include <new>
#include <string>
#include <vector>

#include "basinwright/cli/run.hpp"

int main(int argc, char** argv) {
  try {
    return basinwright::cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc));
  } catch (const std::bad_alloc&) {
    std::fputs(basinwright::cli::out_of_memory, stderr);
    return static_cast<int>(basinwright::cli::Status::ours);
  }
}
