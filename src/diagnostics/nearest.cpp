#include <algorithm>
#include <string>
#include <vector>

#include "basinwright/diagnostics/diagnostic.hpp"
#include "edits.hpp"
#include "glyphs.hpp"

namespace basinwright::diagnostics {
namespace {

using Word = std::vector<std::string>;  // one string a scalar

Word scalars(std::string_view text) {
  Word out;
  while (!text.empty()) {
    const std::size_t length = scalar_length(text);
    std::string scalar(text.substr(0, length));
    const char c = scalar.front();
    if (c >= 'A' && c <= 'Z') scalar.front() = static_cast<char>(c - 'A' + 'a');
    out.push_back(std::move(scalar));
    text.remove_prefix(length);
  }
  return out;
}

std::size_t distance(const Word& a, const Word& b) {
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({replaced, above[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(above);
    above.swap(row);
  }
  return above[b.size()];
}

}  // namespace

std::size_t edits(std::string_view from, std::string_view to) {
  return distance(scalars(from), scalars(to));
}

std::string_view nearest(std::string_view word, const std::vector<std::string_view>& known) {
  const Word mistyped = scalars(word);
  std::size_t least = std::max<std::size_t>(mistyped.size() / 3, 1) + 1;
  std::string_view found;
  for (const std::string_view candidate : known) {
    const Word letters = scalars(candidate);
    const std::size_t gap =
        std::max(letters.size(), mistyped.size()) - std::min(letters.size(), mistyped.size());
    if (gap >= least) continue;
    const std::size_t away = distance(mistyped, letters);
    if (away >= least) continue;
    least = away;
    found = candidate;
  }
  return found;
}

}  // namespace basinwright::diagnostics
