#include "basinwright/quote/purchases.hpp"

#include <algorithm>
#include <numeric>

namespace basinwright::quote {

Purchase for_need(Purchase bought, const Need& need, money::Rounding rounding) {
  bought.need =
      std::accumulate(need.amounts.begin(), need.amounts.end(), std::int64_t{0}) - need.spare;
  std::int64_t size = 0, packs = 0;
  for (const Bought& pack : bought.packs) {
    size += pack.size * pack.count;
    packs += pack.count;
  }
  if (size == 0) return bought;
  bought.left_over = size - bought.need;
  // A size that is no whole number of units is rounded up, pack by pack: that is nothing left.
  if (bought.left_over < packs) bought.left_over = 0;
  bought.left_over_value = money::scaled(bought.total, bought.left_over, size, rounding);
  return bought;
}

Purchase buy(const Need& need, const std::vector<purchase::Pack>& packs, money::Rounding rounding) {
  Purchase bought;
  bought.item = need.item;
  bought.use = need.use;
  bought.measure = need.measure;
  if (packs.empty()) {
    bought.unpriced = true;
    return for_need(std::move(bought), need, rounding);
  }
  const auto basket = purchase::cheapest({need.amounts, need.apart, need.one_batch}, packs);
  if (!basket) {
    bought.short_stock = true;
    bought.unpriced = true;
    return for_need(std::move(bought), need, rounding);
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
  return for_need(std::move(bought), need, rounding);
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
