#include "scarcity.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace basinwright::purchase {
namespace {

constexpr int rounds = 80;

using Prices = std::vector<std::int64_t>;

bool fits(const Used& used, const Used& left) {
  return std::ranges::equal(used, left, [](std::int64_t u, std::int64_t l) { return u <= l; });
}

/// The cheapest priced taking that `left` allows; null when none does.
const Taking* cheapest_within(const std::vector<Taking>& takings,
                              const Prices& prices,
                              const Used& left) {
  const Taking* best = nullptr;
  std::int64_t least = std::numeric_limits<std::int64_t>::max();
  for (const Taking& taking : takings) {
    const std::int64_t cost = priced(taking, prices);
    if (cost >= least || !fits(taking.used, left)) continue;
    least = cost;
    best = &taking;
  }
  return best;
}

/// What the needs cost when each in turn takes the best that is left, or nothing.
std::optional<std::int64_t> in_turn(const std::vector<std::vector<Taking>>& takings,
                                    const Prices& prices,
                                    Used left) {
  std::int64_t cost = 0;
  for (const std::vector<Taking>& of_need : takings) {
    const Taking* taking = cheapest_within(of_need, prices, left);
    if (taking == nullptr) return std::nullopt;
    cost += taking->plan.cost;
    for (std::size_t i = 0; i < left.size(); ++i) left[i] -= taking->used[i];
  }
  return cost;
}

/// The bound at some prices, and by how much the takings behind it overdraw each stock.
struct Relaxed {
  std::int64_t bound = 0;
  std::vector<double> overdraft;
};

Relaxed relaxed(const std::vector<std::vector<Taking>>& takings,
                const Prices& prices,
                const Used& stock) {
  Relaxed out;
  for (std::size_t i = 0; i < stock.size(); ++i) {
    out.bound -= prices[i] * stock[i];
    out.overdraft.push_back(-static_cast<double>(stock[i]));
  }
  for (const std::vector<Taking>& of_need : takings) {
    const Taking& best = *cheapest_within(of_need, prices, stock);
    out.bound += priced(best, prices);
    for (std::size_t i = 0; i < stock.size(); ++i) {
      out.overdraft[i] += static_cast<double>(best.used[i]);
    }
  }
  return out;
}

/// Moves the prices up where stock is overdrawn and down where it is left.
void step(Prices& prices, const Relaxed& at, double target, std::int64_t ceiling) {
  double square = 0.0;
  for (const double over : at.overdraft) square += over * over;
  if (square == 0.0) return;
  const double length = std::max(target - static_cast<double>(at.bound), 1.0) / square;
  for (std::size_t i = 0; i < prices.size(); ++i) {
    const double wanted = static_cast<double>(prices[i]) + length * at.overdraft[i];
    const double capped = std::clamp(wanted, 0.0, static_cast<double>(ceiling));
    prices[i] = std::min(static_cast<std::int64_t>(capped), ceiling);
  }
}

}  // namespace

std::int64_t priced(const Taking& taking, const Prices& prices) {
  return std::inner_product(
      taking.used.begin(), taking.used.end(), prices.begin(), taking.plan.cost);
}

Scarcity price_scarcity(const std::vector<std::vector<Taking>>& takings, const Used& stock) {
  const std::int64_t packs = std::accumulate(stock.begin(), stock.end(), std::int64_t{1});
  constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max() / 4096;
  const std::int64_t ceiling = most / packs;
  Scarcity out{Prices(stock.size(), 0), std::numeric_limits<std::int64_t>::min(), std::nullopt};
  Prices prices(stock.size(), 0);
  for (int round = 0; round < rounds; ++round) {
    const Relaxed at = relaxed(takings, prices, stock);
    if (at.bound > out.at_least) {
      out.at_least = at.bound;
      out.prices = prices;
    }
    const auto cost = in_turn(takings, prices, stock);
    if (cost && (!out.known || *cost < *out.known)) out.known = cost;
    if (out.known == out.at_least) break;
    constexpr double hope = 1.05;  // of the bound, while no total is known
    const double target =
        static_cast<double>(out.known.value_or(out.at_least)) * (out.known ? 1.0 : hope);
    step(prices, at, target, ceiling);
  }
  return out;
}

}  // namespace basinwright::purchase
