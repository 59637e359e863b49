#include "shared_stock.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "cover.hpp"
#include "scarcity.hpp"
#include "takings.hpp"

namespace basinwright::purchase {
namespace {

using Takings = std::vector<std::vector<Taking>>;

bool within_stock(const Plan& plan, const std::vector<Item>& items) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].stock && plan.counts[i] > *items[i].stock) return false;
  }
  return true;
}

/// The needs so far: what they take together and one by one.
struct Label {
  Plan total;
  std::vector<Plan> parts;
  std::int64_t excess = 0;
};

bool preferred(const Label& a, const Label& b) {
  if (better(a.total, b.total) || better(b.total, a.total)) return better(a.total, b.total);
  return std::ranges::lexicographical_compare(b.parts, a.parts, {}, &Plan::counts, &Plan::counts);
}

/// By scarce packs used, the best label: whatever follows depends on nothing else.
using Labels = std::map<Used, Label>;

/// Sorts each need's takings by their excess.
void rank(Takings& takings, const Scarcity& scarcity) {
  for (std::vector<Taking>& of_need : takings) {
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (const Taking& taking : of_need) {
      least = std::min(least, priced(taking, scarcity.prices));
    }
    for (Taking& taking : of_need) taking.excess = priced(taking, scarcity.prices) - least;
    std::ranges::stable_sort(of_need, {}, &Taking::excess);
  }
}

/// Adds a taking to a label, unless that overdraws the stock.
void join(Labels& out, const Labels::value_type& from, const Taking& taking, const Used& stock) {
  Used used = from.first;
  for (std::size_t i = 0; i < used.size(); ++i) {
    used[i] += taking.used[i];
    if (used[i] > stock[i]) return;
  }
  Label next = from.second;
  next.total.add(taking.plan);
  next.parts.push_back(taking.plan);
  next.excess += taking.excess;
  const auto [place, fresh] = out.try_emplace(std::move(used), next);
  if (!fresh && preferred(next, place->second)) place->second = std::move(next);
}

/// Joins the needs' takings one need after the other. The excesses of a total add up to no more
/// than its cost above the bound, so what exceeds the cheapest known total is left out.
Labels joined(const Takings& takings, const Scarcity& scarcity, const Used& stock, Label start) {
  const std::int64_t slack = scarcity.known ? *scarcity.known - scarcity.at_least
                                            : std::numeric_limits<std::int64_t>::max();
  Labels labels{{Used(stock.size(), 0), std::move(start)}};
  for (const std::vector<Taking>& of_need : takings) {
    Labels next;
    for (const auto& label : labels) {
      for (const Taking& taking : of_need) {
        if (taking.excess > slack - label.second.excess) break;
        join(next, label, taking, stock);
      }
    }
    labels = std::move(next);
  }
  return labels;
}

std::optional<std::vector<Plan>> share_out(const std::vector<std::int64_t>& needs,
                                           const std::vector<Item>& items) {
  const std::vector<std::size_t> scarce = scarce_items(needs, items);
  Used stock;
  for (const std::size_t i : scarce) stock.push_back(items[i].stock.value_or(0));
  Takings takings = list_takings(needs, items, scarce);
  const Scarcity scarcity = price_scarcity(takings, stock);
  rank(takings, scarcity);
  const Labels labels = joined(takings, scarcity, stock, {nothing_of(items), {}, 0});
  if (labels.empty()) return std::nullopt;
  const auto best = std::ranges::min_element(
      labels, [](const auto& a, const auto& b) { return preferred(a.second, b.second); });
  return best->second.parts;
}

}  // namespace

std::optional<std::vector<Plan>> cover_apart(const std::vector<std::int64_t>& needs,
                                             const std::vector<Item>& items) {
  const CoverTable table(items, needs.empty() ? 0 : std::ranges::max(needs));
  std::vector<Plan> alone;
  Plan total = nothing_of(items);
  for (const std::int64_t need : needs) {
    auto plan = table.best(need);
    if (!plan) return std::nullopt;
    total.add(*plan);
    alone.push_back(std::move(*plan));
  }
  if (within_stock(total, items)) return alone;
  return share_out(needs, items);
}

}  // namespace basinwright::purchase
