// Needs into whole packs with their prices.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"
#include "basinwright/purchase/packs.hpp"

namespace basinwright::quote {

/// How much of an item is wanted: millilitres, grams or pieces.
enum class Measure { volume, mass, pieces };

struct Need {
  std::string item;
  Measure measure = Measure::volume;
  std::vector<std::int64_t> amounts;  ///< One, or one for each mixing session when `apart`.
  bool apart = false;                 ///< Mixed remainders cannot be kept.
  bool one_batch = false;
  std::string use{};       ///< A code, where one item is bought for several things: "sump" ...
  std::int64_t spare = 0;  ///< Of `amounts`, what is bought in case and not planned to be used.
};

struct Bought {
  std::int64_t size = 0, count = 0;
  money::Money unit_price, total;
  std::string supplier, batch;  ///< Empty: not said.
};

struct Purchase {
  std::string item;
  std::string use;  ///< As the need's.
  Measure measure = Measure::volume;
  std::int64_t need = 0;  ///< What is planned to be used.
  std::vector<Bought> packs;
  std::int64_t left_over = 0;    ///< Packs less need, when all goes as planned.
  money::Money left_over_value;  ///< Its share of the price paid.
  money::Money total;
  bool unpriced = false;     ///< The rate book has no pack of it: not in the price.
  bool short_stock = false;  ///< Its packs do not reach.
};

/// What stays of an item's packs once some of them are bought: packs of limited stock become fewer.
[[nodiscard]] std::vector<purchase::Pack> left_of(std::vector<purchase::Pack> packs,
                                                  const Purchase& bought);

/// What was bought for a need, for another that is served by the same packs: what is left over is
/// its own.
[[nodiscard]] Purchase for_need(Purchase bought, const Need& need, money::Rounding rounding);

/// Buys one need from an item's packs.
[[nodiscard]] Purchase buy(const Need& need,
                           const std::vector<purchase::Pack>& packs,
                           money::Rounding rounding);

}  // namespace basinwright::quote
