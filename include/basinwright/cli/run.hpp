// A request carried out.
#pragma once

#include <string>
#include <vector>

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

/// Said without taking any memory.
inline constexpr const char* out_of_memory = "basinwright: out of memory; nothing was written\n";

/// Parses, reads, plans and prints; never throws.
[[nodiscard]] int run(const std::vector<std::string>& arguments);

}  // namespace basinwright::cli
