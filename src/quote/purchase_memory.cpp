#include "basinwright/quote/purchase_memory.hpp"

namespace basinwright::quote {
namespace {

// Structures are taken apart by name: a member that comes along later does not compile until
// somebody thought of it.
class Key {
 public:
  Key& add(std::int64_t number) {
    bytes_.append(reinterpret_cast<const char*>(&number), sizeof number);
    return *this;
  }
  Key& add(const std::string& text) {
    add(static_cast<std::int64_t>(text.size()));
    bytes_ += text;
    return *this;
  }
  Key& add(const Need& need) {
    const auto& [item, measure, amounts, apart, one_batch, use, spare] = need;
    add(item).add(static_cast<std::int64_t>(measure)).add(use).add(spare);
    add(apart ? 1 : 0).add(one_batch ? 1 : 0).add(static_cast<std::int64_t>(amounts.size()));
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
  std::string bytes_;
};

}  // namespace

Purchase PurchaseMemory::buy(const Need& need,
                             const std::vector<purchase::Pack>& packs,
                             money::Rounding rounding) {
  Key key;
  key.add(need).add(static_cast<std::int64_t>(rounding));
  for (const purchase::Pack& pack : packs) key.add(pack);
  std::string bytes = key.take();
  {
    const std::scoped_lock hold(lock_);
    if (const auto it = found_.find(bytes); it != found_.end()) return it->second;
  }
  Purchase bought = quote::buy(need, packs, rounding);
  const std::scoped_lock hold(lock_);
  if (found_.size() >= most_) found_.clear();
  found_.emplace(std::move(bytes), bought);
  return bought;
}

}  // namespace basinwright::quote
