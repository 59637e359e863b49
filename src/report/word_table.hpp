// Looking up the words for a code.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace basinwright::report {

using Entry = std::pair<std::string_view, std::string_view>;

/// @throws std::logic_error for a code without words: a mistake of ours
template <class Table>
const auto& look_up(const Table& table, std::string_view code) {
  const auto it = std::ranges::find_if(table, [&](const auto& row) { return row.first == code; });
  if (it == table.end()) throw std::logic_error("no words for " + std::string(code));
  return it->second;
}

/// The same text with a capital first.
inline std::string capital(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out[0] >= 'a' && out[0] <= 'z')
    out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return out;
}

}  // namespace basinwright::report
