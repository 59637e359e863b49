#include <string>
#include <vector>

#include "basinwright/cli/run.hpp"

int main(int argc, char** argv) {
  return basinwright::cli::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc));
}
