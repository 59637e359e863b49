#include "basinwright/quote/purchase_memory.hpp"

#include <algorithm>

namespace basinwright::quote {
namespace {

// Structures are taken apart by name: a member that comes along later does not compile until
// somebody thought of it.
class Key {
 public:
  Key() { bytes_.reserve(usual_bytes); }
  Key& add(std::int64_t number) {
    bytes_.append(reinterpret_cast<const char*>(&number), sizeof number);
    return *this;
  }
  Key& add(const std::string& text) {
    add(static_cast<std::int64_t>(text.size()));
    bytes_ += text;
    return *this;
  }
  // A single amount is found by its size.
  Key& add(const Need& need) {
    const auto& [item, measure, amounts, apart, one_batch, use, spare] = need;
    add(item).add(static_cast<std::int64_t>(measure)).add(use).add(spare);
    add(apart ? 1 : 0).add(one_batch ? 1 : 0).add(static_cast<std::int64_t>(amounts.size()));
    if (amounts.size() == 1) return *this;
    for (const std::int64_t amount : amounts) add(amount);
    return *this;
  }
  Key& add(const purchase::Pack& pack) {
    const auto& [id, size, price, stock, batch, supplier] = pack;
    add(id).add(size).add(price.minor()).add(batch).add(supplier);
    return add(stock ? 1 : 0).add(stock.value_or(0));
  }
  [[nodiscard]] std::string take() { return std::move(bytes_); }

 private:
  static constexpr std::size_t usual_bytes = 512;
  std::string bytes_;
};

// Up to how much the packs bought for a single amount are what would be bought: whoever needs more,
// yet not more than they hold, chooses from fewer baskets, these among them, by the same order.
std::int64_t serves_up_to(const Need& need,
                          const std::vector<purchase::Pack>& packs,
                          const Purchase& bought) {
  const std::int64_t amount = need.amounts.front();
  std::int64_t size = 0;
  for (const Bought& pack : bought.packs) size += pack.size * pack.count;
  return size > amount && amount > 0 && purchase::takes_surely(size, packs) ? size : amount;
}

}  // namespace

Purchase PurchaseMemory::buy(const Need& need,
                             const std::vector<purchase::Pack>& packs,
                             money::Rounding rounding) {
  Key key;
  key.add(need).add(static_cast<std::int64_t>(rounding));
  for (const purchase::Pack& pack : packs) key.add(pack);
  std::string bytes = key.take();
  const bool single = need.amounts.size() == 1;
  const std::int64_t amount = single ? need.amounts.front() : 0;
  {
    const std::scoped_lock hold(lock_);
    if (const auto it = found_.find(bytes); it != found_.end()) {
      const auto known = it->second.lower_bound(amount);
      if (known != it->second.end() && known->second.from <= amount)
        return for_need(known->second.bought, need, rounding);
    }
  }
  Purchase bought = quote::buy(need, packs, rounding);
  const std::int64_t until = single ? serves_up_to(need, packs, bought) : amount;
  const std::scoped_lock hold(lock_);
  if (held_ >= most_) {
    found_.clear();
    held_ = 0;
  }
  const auto [known, fresh] = found_[std::move(bytes)].try_emplace(until, Known{amount, bought});
  held_ += fresh ? 1 : 0;
  known->second.from = std::min(known->second.from, amount);
  return bought;
}

}  // namespace basinwright::quote
