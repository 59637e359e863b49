#include "cover.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <stdexcept>
#include <tuple>

namespace basinwright::purchase {
namespace {

constexpr std::int64_t largest_table = std::int64_t{1} << 26;
// Leaves room for sums over needs and for prices on scarce packs.
constexpr std::int64_t largest_cost = std::numeric_limits<std::int64_t>::max() / 4096;

std::int64_t common_unit(const std::vector<Item>& items) {
  std::int64_t unit = 0;
  for (const Item& item : items) unit = std::gcd(unit, item.size);
  return std::max<std::int64_t>(unit, 1);
}

}  // namespace

bool takes_surely(std::int64_t need, const std::vector<Pack>& packs) {
  if (packs.empty() || need < 0) return false;
  const std::int64_t largest = std::ranges::max(packs, {}, &Pack::size).size;
  const std::int64_t dearest = std::ranges::max(packs, {}, &Pack::price).price.minor();
  const std::int64_t room = largest_table / static_cast<std::int64_t>(packs.size());
  // As `check_range`, for a step and a smallest pack of 1.
  return need <= room && largest <= room - need && dearest <= largest_cost / (need + largest + 1);
}

CoverTable::CoverTable(const std::vector<Item>& items, std::int64_t largest_need)
    : items_(items), unit_(common_unit(items)) {
  const std::int64_t need = std::max<std::int64_t>(largest_need, 0);
  check_range(need);
  keys_.resize(items_.empty()
                   ? 1
                   : static_cast<std::size_t>(ceil_of(need, unit_) + items_.front().size / unit_));
  keys_[0] = {0, 0};
  taken_.assign(items_.size(), Counts(keys_.size(), 0));
  for (std::size_t k = items_.size(); k-- > 0;) {
    const std::size_t useful = (keys_.size() - 1) / steps(items_[k].size);
    const std::int64_t most = items_[k].stock.value_or(static_cast<std::int64_t>(useful));
    if (most >= static_cast<std::int64_t>(useful)) {
      take_any(items_[k], taken_[k]);
    } else if (most > 0) {
      take_at_most(items_[k], most, taken_[k]);
    }
  }
  rank();
}

std::size_t CoverTable::steps(std::int64_t size) const {
  return static_cast<std::size_t>(size / unit_);
}

void CoverTable::check_range(std::int64_t largest_need) const {
  if (items_.empty()) return;
  const std::int64_t need_steps = ceil_of(largest_need, unit_);
  const std::int64_t size_steps = items_.front().size / unit_;
  const std::int64_t room = largest_table / static_cast<std::int64_t>(items_.size());
  if (need_steps > room || size_steps > room - need_steps) {
    throw std::length_error("packs: the need is too large for its smallest step");
  }
  const std::int64_t states = need_steps + size_steps;
  const std::int64_t most_packs = states / (items_.back().size / unit_) + 1;
  const std::int64_t dearest = std::ranges::max(items_, {}, &Item::price).price;
  if (dearest > largest_cost / most_packs) {
    throw std::overflow_error("packs: a total overflows");
  }
}

void CoverTable::take_any(const Item& item, Counts& taken) {
  const std::size_t step = steps(item.size);
  for (std::size_t v = step; v < keys_.size(); ++v) {
    const Key& below = keys_[v - step];
    if (!below.reached()) continue;
    const Key with{below.cost + item.price, below.packs + 1};
    if (std::tie(with.cost, with.packs) > std::tie(keys_[v].cost, keys_[v].packs)) continue;
    keys_[v] = with;
    taken[v] = taken[v - step] + 1;
  }
}

void CoverTable::take_at_most(const Item& item, std::int64_t most, Counts& taken) {
  const std::size_t residues = std::min(steps(item.size), keys_.size());
  for (std::size_t r = 0; r < residues; ++r) take_of_residue(item, r, most, taken);
}

void CoverTable::take_of_residue(const Item& item,
                                 std::size_t residue,
                                 std::int64_t most,
                                 Counts& taken) {
  // A window of the last `most` + 1 totals without this item, the best in front: each is worth its
  // key less what this item would have cost up to there.
  struct Start {
    std::int64_t index;
    Key key;
  };
  std::vector<Start> window;
  std::size_t front = 0;
  const std::size_t step = steps(item.size);
  std::int64_t index = 0;
  for (std::size_t v = residue; v < keys_.size(); v += step, ++index) {
    if (keys_[v].reached()) {
      const Key worth{keys_[v].cost - index * item.price, keys_[v].packs - index};
      while (window.size() > front && std::tie(window.back().key.cost, window.back().key.packs) >
                                          std::tie(worth.cost, worth.packs)) {
        window.pop_back();
      }
      window.push_back({index, worth});
    }
    while (window.size() > front && window[front].index < index - most) ++front;
    if (window.size() == front) continue;
    const Start& best = window[front];
    keys_[v] = {best.key.cost + index * item.price, best.key.packs + index};
    taken[v] = static_cast<std::int32_t>(index - best.index);
  }
}

void CoverTable::rank() {
  cheapest_.resize(keys_.size());
  std::size_t best = keys_.size() - 1;
  for (std::size_t v = keys_.size(); v-- > 0;) {
    if (keys_[v].cost <= keys_[best].cost) best = v;
    cheapest_[v] = best;
  }
}

std::optional<Plan> CoverTable::best(std::int64_t need) const {
  Plan plan = nothing_of(items_);
  if (need <= 0) return plan;
  const auto least = static_cast<std::size_t>(ceil_of(need, unit_));
  if (least >= keys_.size()) return std::nullopt;
  std::size_t v = cheapest_[least];
  if (!keys_[v].reached()) return std::nullopt;
  for (std::size_t k = 0; k < items_.size(); ++k) {
    const std::int32_t count = taken_[k][v];
    plan.add(items_[k], k, count);
    v -= static_cast<std::size_t>(count) * steps(items_[k].size);
  }
  return plan;
}

}  // namespace basinwright::purchase
