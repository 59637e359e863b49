#include "basinwright/quote/bridge.hpp"

#include <algorithm>

namespace basinwright::quote {
namespace {

money::Money amount_of(const Price& price, const std::string& what) {
  money::Money sum;
  for (const Line& line : price.lines) {
    if (line.what == what) sum += line.amount;
  }
  return sum;
}

}  // namespace

Bridge bridge(const Price& before, const Price& after) {
  Bridge out;
  const auto add = [&](const std::string& what) {
    if (std::ranges::find(out.lines, what, &BridgeLine::what) != out.lines.end()) return;
    out.lines.push_back({what, amount_of(before, what), amount_of(after, what)});
  };
  // A line that only the later price has stands where it stands there.
  std::size_t next = 0;
  for (const Line& line : before.lines) {
    const auto same = std::ranges::find(after.lines.begin() + static_cast<std::ptrdiff_t>(next),
                                        after.lines.end(),
                                        line.what,
                                        &Line::what);
    if (same != after.lines.end()) {
      for (; after.lines.begin() + static_cast<std::ptrdiff_t>(next) != same; ++next)
        add(after.lines[next].what);
      ++next;
    }
    add(line.what);
  }
  for (; next < after.lines.size(); ++next) add(after.lines[next].what);
  out.lines.push_back({"tax", before.tax, after.tax});
  out.before = before.total;
  out.after = after.total;
  return out;
}

}  // namespace basinwright::quote
