#include <algorithm>
#include <numeric>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <tuple>

#include "basinwright/purchase/packs.hpp"
#include "shared_stock.hpp"

namespace basinwright::purchase {
namespace {

void check(const std::vector<Pack>& packs) {
  for (const Pack& pack : packs) {
    if (pack.size <= 0) throw std::invalid_argument("packs: a size must be positive");
    if (pack.price < money::Money()) throw std::invalid_argument("packs: a price is negative");
    if (pack.stock && *pack.stock < 0) throw std::invalid_argument("packs: a stock is negative");
  }
}

std::vector<std::int64_t> needs_of(const Request& request) {
  std::vector<std::int64_t> needs;
  std::int64_t pooled = 0;
  for (const std::int64_t need : request.needs) {
    const std::int64_t whole = std::max<std::int64_t>(need, 0);
    needs.push_back(whole);
    if (!request.apart && __builtin_add_overflow(pooled, whole, &pooled)) {
      throw std::overflow_error("packs: the needs overflow");
    }
  }
  return request.apart ? needs : std::vector<std::int64_t>{pooled};
}

/// The packs with stock as the searches want them: the largest first, then by id.
template <class Wanted>
std::vector<Item> items_of(const std::vector<Pack>& packs, Wanted wanted) {
  std::vector<std::size_t> order(packs.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, [&packs](std::size_t a, std::size_t b) {
    return std::tie(packs[b].size, packs[a].id, a) < std::tie(packs[a].size, packs[b].id, b);
  });
  std::vector<Item> items;
  for (const std::size_t i : order) {
    const Pack& pack = packs[i];
    if (pack.stock == 0 || !wanted(pack)) continue;
    items.push_back({pack.size, pack.price.minor(), pack.stock, i});
  }
  return items;
}

std::vector<Choice> choices_of(const Plan& plan, const std::vector<Item>& items) {
  std::vector<Choice> out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (plan.counts[i] > 0) out.push_back({items[i].pack, plan.counts[i]});
  }
  return out;
}

std::optional<Basket> covered(const std::vector<std::int64_t>& needs,
                              const std::vector<Item>& items) {
  const auto plans = cover_apart(needs, items);
  if (!plans) return std::nullopt;
  Basket out;
  Plan total = nothing_of(items);
  for (const Plan& plan : *plans) {
    total.add(plan);
    out.by_need.push_back(choices_of(plan, items));
  }
  out.choices = choices_of(total, items);
  out.cost = money::Money::of_minor(total.cost);
  out.size = total.size;
  out.packs = total.packs;
  return out;
}

/// The best of the batches, the first name among equals; a pack of any batch joins each.
std::optional<Basket> best_batch(const std::vector<std::int64_t>& needs,
                                 const std::vector<Pack>& packs) {
  std::set<std::string_view> batches;
  for (const Pack& pack : packs) {
    if (!pack.batch.empty()) batches.insert(pack.batch);
  }
  if (batches.empty()) batches.insert("");
  std::optional<Basket> best;
  for (const std::string_view batch : batches) {
    const auto in_batch = [batch](const Pack& p) { return p.batch.empty() || p.batch == batch; };
    auto found = covered(needs, items_of(packs, in_batch));
    if (!found) continue;
    found->batch = batch;
    if (!best || std::tie(found->cost, found->size, found->packs) <
                     std::tie(best->cost, best->size, best->packs)) {
      best = std::move(found);
    }
  }
  return best;
}

}  // namespace

std::optional<Basket> cheapest(const Request& request, const std::vector<Pack>& packs) {
  check(packs);
  const std::vector<std::int64_t> needs = needs_of(request);
  if (request.one_batch) return best_batch(needs, packs);
  return covered(needs, items_of(packs, [](const Pack&) { return true; }));
}

}  // namespace basinwright::purchase
