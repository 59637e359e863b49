#include "takings.hpp"

#include <algorithm>
#include <utility>

#include "cover.hpp"

namespace basinwright::purchase {
namespace {

class Lister {
 public:
  Lister(const std::vector<Item>& items,
         const std::vector<std::size_t>& scarce,
         const CoverTable& others)
      : items_(items), scarce_(scarce), others_(others) {}

  [[nodiscard]] std::vector<Taking> all(std::int64_t need) {
    out_.clear();
    extend({Used(scarce_.size(), 0), nothing_of(items_)}, 0, need);
    return std::move(out_);
  }

 private:
  void extend(Taking start, std::size_t next, std::int64_t left) {
    if (left <= 0 || next == scarce_.size()) {
      const auto filling = others_.best(left);
      if (!filling) return;
      start.plan.add(*filling);
      out_.push_back(std::move(start));
      return;
    }
    const std::size_t index = scarce_[next];
    const Item& item = items_[index];
    const std::int64_t most = std::min(item.stock.value_or(0), ceil_of(left, item.size));
    for (std::int64_t count = 0; count <= most; ++count) {
      extend(start, next + 1, left - count * item.size);
      ++start.used[next];
      start.plan.add(item, index, 1);
    }
  }

  const std::vector<Item>& items_;
  const std::vector<std::size_t>& scarce_;
  const CoverTable& others_;
  std::vector<Taking> out_;
};

}  // namespace

std::vector<std::size_t> scarce_items(const std::vector<std::int64_t>& needs,
                                      const std::vector<Item>& items) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    std::int64_t wanted = 0;
    for (const std::int64_t need : needs) wanted += ceil_of(need, items[i].size);
    if (items[i].stock && *items[i].stock < wanted) out.push_back(i);
  }
  return out;
}

std::vector<std::vector<Taking>> list_takings(const std::vector<std::int64_t>& needs,
                                              const std::vector<Item>& items,
                                              const std::vector<std::size_t>& scarce) {
  std::vector<Item> others = items;
  for (Item& item : others) item.stock.reset();
  for (const std::size_t i : scarce) others[i].stock = 0;
  const CoverTable table(others, needs.empty() ? 0 : std::ranges::max(needs));
  Lister lister(items, scarce, table);
  std::vector<std::vector<Taking>> out;
  out.reserve(needs.size());
  for (const std::int64_t need : needs) out.push_back(lister.all(need));
  return out;
}

}  // namespace basinwright::purchase
