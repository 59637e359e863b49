#pragma once

#include "basinwright/job/rate_book.hpp"
#include "view.hpp"

namespace basinwright::readers {

/// A data sheet of `coating_systems`.
[[nodiscard]] materials::CoatingSystem read_system(const std::string& name, View& view);
/// Strengths and rates of the chemicals, and packs that stand with them; after `packs`, whose node
/// is given.
void read_chemicals(View& view, const Node* packs, job::RateBook& book);
/// An amount at a key, in the book's currency; reports decimals the currency does not have.
[[nodiscard]] std::optional<money::Money> read_money(View& view,
                                                     std::string_view key,
                                                     const money::Currency& currency);

}  // namespace basinwright::readers
