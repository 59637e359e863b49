// Every way a unit may be written, for whoever wants to name the one that was meant.
#pragma once

#include <string_view>
#include <vector>

namespace basinwright::units {

/// All spellings of all units, those with several meanings left out; the usual one of a unit first.
[[nodiscard]] std::vector<std::string_view> unit_spellings();

}  // namespace basinwright::units
