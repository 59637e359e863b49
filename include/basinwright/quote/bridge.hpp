// From one price to another, line by line.
#pragma once

#include <string>
#include <vector>

#include "basinwright/quote/price.hpp"

namespace basinwright::quote {

/// One line of both prices; a line that one of them lacks is 0 there.
struct BridgeLine {
  std::string what;
  money::Money before, after;
  [[nodiscard]] money::Money change() const { return after - before; }
};

/// The lines' changes sum exactly to `after - before`.
struct Bridge {
  std::vector<BridgeLine> lines;  ///< In the order of the prices, the tax last.
  money::Money before, after;     ///< Totals.
};

/// @param before,after in the same currency
[[nodiscard]] Bridge bridge(const Price& before, const Price& after);

}  // namespace basinwright::quote
