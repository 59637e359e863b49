#include <algorithm>
#include <cstdint>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "basinwright/purchase/packs.hpp"
#include "support/catch.hpp"

// Outside source: the definition itself, by looking at every basket of small random cases. The
// search below shares nothing with the room but its header.

using namespace basinwright;
using purchase::Pack;
using purchase::Request;

namespace {

using Counts = std::vector<std::int64_t>;

/// A total in the documented order of preference: the last part is larger when better.
struct Total {
  std::int64_t cost = 0, size = 0, packs = 0;
  Counts counts;
  Counts split;  ///< The counts of each need, one after the other.
};

bool preferred(const Total& a, const Total& b) {
  if (std::tie(a.cost, a.size, a.packs) != std::tie(b.cost, b.size, b.packs)) {
    return std::tie(a.cost, a.size, a.packs) < std::tie(b.cost, b.size, b.packs);
  }
  return std::tie(a.counts, a.split) > std::tie(b.counts, b.split);
}

/// Every vector of counts that covers `need`, with no count beyond what covers it alone.
void covers(const std::vector<Pack>& packs,
            std::int64_t need,
            Counts& counts,
            std::vector<Counts>& out) {
  const std::size_t k = counts.size();
  if (k == packs.size()) {
    std::int64_t held = 0;
    for (std::size_t i = 0; i < k; ++i) held += counts[i] * packs[i].size;
    if (held >= need) out.push_back(counts);
    return;
  }
  std::int64_t most = need <= 0 ? 0 : (need + packs[k].size - 1) / packs[k].size;
  if (packs[k].stock) most = std::min(most, *packs[k].stock);
  for (std::int64_t count = 0; count <= most; ++count) {
    counts.push_back(count);
    covers(packs, need, counts, out);
    counts.pop_back();
  }
}

Total total_of(const std::vector<Pack>& packs, const Counts& counts) {
  Total out;
  out.counts = counts;
  for (std::size_t i = 0; i < packs.size(); ++i) {
    out.cost += counts[i] * packs[i].price.minor();
    out.size += counts[i] * packs[i].size;
    out.packs += counts[i];
  }
  return out;
}

/// Every way to cover the needs apart, within the stock.
void combine(const std::vector<Pack>& packs,
             const std::vector<std::vector<Counts>>& ways,
             const Total& so_far,
             std::optional<Total>& best) {
  const Counts& sum = so_far.counts;
  const std::size_t next = so_far.split.size() / packs.size();
  for (std::size_t i = 0; i < packs.size(); ++i) {
    if (packs[i].stock && sum[i] > *packs[i].stock) return;
  }
  if (next == ways.size()) {
    Total total = total_of(packs, sum);
    total.split = so_far.split;
    if (!best || preferred(total, *best)) best = std::move(total);
    return;
  }
  for (const Counts& way : ways[next]) {
    Total more = so_far;
    for (std::size_t i = 0; i < way.size(); ++i) more.counts[i] += way[i];
    more.split.insert(more.split.end(), way.begin(), way.end());
    combine(packs, ways, more, best);
  }
}

/// `packs` must stand in the documented order.
std::optional<Total> exhaustive(const std::vector<std::int64_t>& needs,
                                const std::vector<Pack>& packs) {
  std::vector<std::vector<Counts>> ways;
  for (const std::int64_t need : needs) {
    Counts counts;
    covers(packs, need, counts, ways.emplace_back());
  }
  std::optional<Total> best;
  Total none;
  none.counts.assign(packs.size(), 0);
  combine(packs, ways, none, best);
  return best;
}

class Cases {
 public:
  explicit Cases(unsigned seed) : random_(seed) {}

  std::int64_t number(std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(high - low + 1));
  }

  std::vector<Pack> packs(std::int64_t most, std::int64_t grain, bool batches) {
    std::vector<Pack> out(static_cast<std::size_t>(number(1, most)));
    for (std::size_t i = 0; i < out.size(); ++i) {
      out[i].id.push_back(static_cast<char>('a' + number(0, 25)));
      out[i].id += std::to_string(i);
      out[i].size = grain * number(1, 7);
      // Prices near the size, so that ties and near ties abound.
      const std::int64_t fair = out[i].size / grain;
      out[i].price = money::Money::of_minor(std::max<std::int64_t>(0, fair + number(-2, 2)));
      if (number(0, 2) != 0) out[i].stock = number(0, 4);
      if (batches && number(0, 5) != 0)
        out[i].batch.push_back(static_cast<char>('A' + number(0, 2)));
    }
    return out;
  }

 private:
  std::mt19937_64 random_;
};

std::vector<Pack> ordered(std::vector<Pack> packs) {
  std::ranges::sort(packs, [](const Pack& a, const Pack& b) {
    return std::tie(b.size, a.id) < std::tie(a.size, b.id);
  });
  return packs;
}

Counts counts_of(const std::vector<purchase::Choice>& choices,
                 const std::vector<Pack>& given,
                 const std::vector<Pack>& sorted) {
  Counts out(sorted.size(), 0);
  for (const purchase::Choice& choice : choices) {
    const auto place = std::ranges::find(sorted, given[choice.pack].id, &Pack::id);
    out[static_cast<std::size_t>(place - sorted.begin())] = choice.count;
  }
  return out;
}

void same(const std::optional<purchase::Basket>& found,
          const std::optional<Total>& expected,
          const std::vector<Pack>& given) {
  REQUIRE(found.has_value() == expected.has_value());
  if (!found) return;
  const std::vector<Pack> sorted = ordered(given);
  Counts split;
  for (const auto& choices : found->by_need) {
    const Counts counts = counts_of(choices, given, sorted);
    split.insert(split.end(), counts.begin(), counts.end());
  }
  REQUIRE(std::tuple(found->cost.minor(), found->size, found->packs) ==
          std::tuple(expected->cost, expected->size, expected->packs));
  REQUIRE(counts_of(found->choices, given, sorted) == expected->counts);
  REQUIRE(split == expected->split);
}

}  // namespace

TEST_CASE("one need is covered as the definition says") {
  Cases cases(1);
  int infeasible = 0;
  for (int round = 0; round < 3000; ++round) {
    const std::int64_t grain = cases.number(1, 3);
    const std::vector<Pack> packs = cases.packs(4, grain, false);
    const std::vector<std::int64_t> needs{cases.number(-1, 22 * grain)};
    const auto expected = exhaustive(needs, ordered(packs));
    if (!expected) ++infeasible;
    same(purchase::cheapest({needs, false, false}, packs), expected, packs);
  }
  CHECK(infeasible > 100);
  CHECK(infeasible < 2000);
}

TEST_CASE("needs apart share one stock as the definition says") {
  Cases cases(2);
  int infeasible = 0;
  int tied = 0;
  for (int round = 0; round < 2500; ++round) {
    const std::vector<Pack> packs = cases.packs(3, 1, false);
    std::vector<std::int64_t> needs{cases.number(0, 12), cases.number(0, 12)};
    if (round % 5 == 0) needs = {cases.number(0, 6), cases.number(0, 6), cases.number(0, 6)};
    const auto expected = exhaustive(needs, ordered(packs));
    const auto found = purchase::cheapest({needs, true, false}, packs);
    same(found, expected, packs);
    if (!expected) ++infeasible;
    // Where the needs' own best baskets together exceed the stock, the search must have worked.
    Counts together(packs.size(), 0);
    for (const std::int64_t need : needs) {
      const auto alone = purchase::cheapest({{need}, false, false}, packs);
      if (!alone) continue;
      for (const purchase::Choice& c : alone->choices) together[c.pack] += c.count;
    }
    for (std::size_t i = 0; i < packs.size(); ++i) {
      if (found && packs[i].stock && together[i] > *packs[i].stock) ++tied;
    }
  }
  CHECK(infeasible > 100);
  CHECK(tied > 300);
}

TEST_CASE("ties between shared baskets are broken as the definition says") {
  // Prices in step with the sizes: cost, waste and packs are often equal, and the counts decide.
  Cases cases(4);
  for (int round = 0; round < 1500; ++round) {
    std::vector<Pack> packs = cases.packs(4, 1, false);
    for (Pack& pack : packs) {
      pack.price = money::Money::of_minor(pack.size);
      pack.stock = cases.number(1, 3);
    }
    const std::vector<std::int64_t> needs{cases.number(1, 16), cases.number(1, 16)};
    same(purchase::cheapest({needs, true, false}, packs), exhaustive(needs, ordered(packs)), packs);
  }
}

TEST_CASE("one batch is the best of the batches") {
  Cases cases(3);
  for (int round = 0; round < 1500; ++round) {
    const std::vector<Pack> packs = cases.packs(5, 1, true);
    const std::vector<std::int64_t> needs{cases.number(0, 14), cases.number(0, 9)};
    const bool apart = round % 2 == 0;
    const std::vector<std::int64_t> asked =
        apart ? needs : std::vector<std::int64_t>{needs[0] + needs[1]};
    std::set<std::string> batches;
    for (const Pack& pack : packs) {
      if (!pack.batch.empty()) batches.insert(pack.batch);
    }
    if (batches.empty()) batches.insert("");
    std::optional<Total> best;
    std::string name;
    for (const std::string& batch : batches) {
      std::vector<Pack> own = ordered(packs);
      std::erase_if(own, [&](const Pack& p) { return !p.batch.empty() && p.batch != batch; });
      const auto total = exhaustive(asked, own);
      if (!total) continue;
      if (best && std::tie(total->cost, total->size, total->packs) >=
                      std::tie(best->cost, best->size, best->packs)) {
        continue;
      }
      best = total;
      name = batch;
    }
    const auto found = purchase::cheapest({needs, apart, true}, packs);
    REQUIRE(found.has_value() == best.has_value());
    if (!found) continue;
    REQUIRE(std::tuple(found->cost.minor(), found->size, found->packs, found->batch) ==
            std::tuple(best->cost, best->size, best->packs, name));
    for (const purchase::Choice& choice : found->choices) {
      REQUIRE((packs[choice.pack].batch.empty() || packs[choice.pack].batch == name));
    }
  }
}
