// How one number came about, as a tree.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "sections.hpp"

namespace basinwright::report {

/// Numbers by the paths of the page's JSON.
using Keys = std::set<std::string, std::less<>>;

/// The tree for machines, and its rows for people.
struct Explained {
  Value tree;
  document::Table table;
};

/// @param elsewhere  Numbers with an explanation of their own: named by their key, as the value of
///   the cell, and not told again.
[[nodiscard]] Explained explained(const Subject& s,
                                  const trace::Step& step,
                                  const std::vector<GivenPlace>& places,
                                  const Keys& elsewhere = {});

/// What a number of the page is called, by its key: a fact's label, or a row's name and its column.
struct Called {
  std::string key;    ///< "purchases.3.left_over".
  std::string alias;  ///< "purchases.coating.left_over"; empty where the row has no name.
  std::string words;  ///< "Left over, coating".
  bool shown = true;  ///< People see it there.
};
[[nodiscard]] std::vector<Called> numbers_of(const document::Document& page);

}  // namespace basinwright::report
