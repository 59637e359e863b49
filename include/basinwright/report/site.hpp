// Pages of a running job: what the site log says against the plan.
#pragma once

#include <string>

#include "basinwright/report/pages.hpp"
#include "basinwright/sitelog/rules.hpp"

namespace basinwright::report {

/// What an entry broke, in a sentence: "coat-1, section 2: dew margin 2.1 C, under the 3.0 C
/// asked".
[[nodiscard]] std::string broken_rule(const sitelog::Breach& breach);

}  // namespace basinwright::report
