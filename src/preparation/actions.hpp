#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/preparation/route.hpp"

namespace basinwright::preparation {

/// What a step is made of, in order, as codes.
[[nodiscard]] std::vector<std::string> actions_of(std::string_view task, const Question& question);

}  // namespace basinwright::preparation
