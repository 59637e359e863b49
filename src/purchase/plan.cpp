#include "plan.hpp"

#include <stdexcept>
#include <tuple>

namespace basinwright::purchase {
namespace {

std::int64_t added(std::int64_t a, std::int64_t b) {
  std::int64_t out = 0;
  if (__builtin_add_overflow(a, b, &out)) throw std::overflow_error("packs: a total overflows");
  return out;
}

std::int64_t multiplied(std::int64_t a, std::int64_t b) {
  std::int64_t out = 0;
  if (__builtin_mul_overflow(a, b, &out)) throw std::overflow_error("packs: a total overflows");
  return out;
}

}  // namespace

void Plan::add(const Item& item, std::size_t index, std::int64_t count) {
  cost = added(cost, multiplied(item.price, count));
  size = added(size, multiplied(item.size, count));
  packs = added(packs, count);
  counts[index] = added(counts[index], count);
}

void Plan::add(const Plan& other) {
  cost = added(cost, other.cost);
  size = added(size, other.size);
  packs = added(packs, other.packs);
  for (std::size_t i = 0; i < counts.size(); ++i) counts[i] = added(counts[i], other.counts[i]);
}

Plan nothing_of(const std::vector<Item>& items) {
  return {0, 0, 0, std::vector<std::int64_t>(items.size(), 0)};
}

bool better(const Plan& a, const Plan& b) {
  return std::tie(a.cost, a.size, a.packs, b.counts) < std::tie(b.cost, b.size, b.packs, a.counts);
}

}  // namespace basinwright::purchase
