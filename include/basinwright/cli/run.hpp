// A request carried out.
#pragma once

#include <string>
#include <vector>

#include "basinwright/cli/request.hpp"

namespace basinwright::cli {

/// Parses, reads, plans and prints; never throws.
[[nodiscard]] int run(const std::vector<std::string>& arguments);

}  // namespace basinwright::cli
