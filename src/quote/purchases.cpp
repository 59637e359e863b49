#include "basinwright/quote/purchases.hpp"

#include <algorithm>
#include <numeric>

namespace basinwright::quote {

Purchase buy(const Need& need, const std::vector<purchase::Pack>& packs, money::Rounding rounding) {
  Purchase bought;
  bought.item = need.item;
  bought.use = need.use;
  bought.measure = need.measure;
  bought.need =
      std::accumulate(need.amounts.begin(), need.amounts.end(), std::int64_t{0}) - need.spare;
  if (packs.empty()) {
    bought.unpriced = true;
    return bought;
  }
  const auto basket = purchase::cheapest({need.amounts, need.apart, need.one_batch}, packs);
  if (!basket) {
    bought.short_stock = true;
    bought.unpriced = true;
    return bought;
  }
  for (const purchase::Choice& choice : basket->choices) {
    const purchase::Pack& pack = packs[choice.pack];
    bought.packs.push_back({pack.size,
                            choice.count,
                            pack.price,
                            pack.price * choice.count,
                            pack.supplier,
                            pack.batch});
  }
  bought.total = basket->cost;
  bought.left_over = basket->size - bought.need;
  // A size that is no whole number of units is rounded up, pack by pack: that is nothing left.
  if (bought.left_over < basket->packs) bought.left_over = 0;
  if (basket->size > 0) {
    bought.left_over_value = money::scaled(bought.total, bought.left_over, basket->size, rounding);
  }
  return bought;
}

std::vector<purchase::Pack> left_of(std::vector<purchase::Pack> packs, const Purchase& bought) {
  for (const Bought& taken : bought.packs) {
    std::int64_t count = taken.count;
    for (purchase::Pack& pack : packs) {
      if (pack.size != taken.size || pack.price != taken.unit_price || !pack.stock) continue;
      const std::int64_t from_here = std::min(count, *pack.stock);
      *pack.stock -= from_here;
      count -= from_here;
    }
  }
  return packs;
}

}  // namespace basinwright::quote
