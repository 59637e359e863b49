// What is remembered between jobs changes no purchase: every answer is held against one found anew.
#include <random>

#include "basinwright/quote/purchase_memory.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using quote::Need;
using quote::Purchase;

namespace {

std::string told(const Purchase& p) {
  std::string text = p.item + "|" + p.use + "|" + std::to_string(p.need) + "|" +
                     std::to_string(p.total.minor()) + "|" + std::to_string(p.left_over) + "|" +
                     std::to_string(p.left_over_value.minor()) + (p.unpriced ? "|no price" : "") +
                     (p.short_stock ? "|short" : "");
  for (const quote::Bought& b : p.packs)
    text += "|" + std::to_string(b.size) + "x" + std::to_string(b.count) + b.supplier + b.batch;
  return text;
}

}  // namespace

TEST_CASE("a remembered purchase is the one that would be found") {
  std::mt19937 random(11);
  const auto below = [&](unsigned n) { return static_cast<std::int64_t>(random() % n); };
  quote::PurchaseMemory roomy, small(3);
  std::size_t most = 0;
  for (int i = 0; i < 2000; ++i) {
    Need need{.item = below(2) == 0 ? "acid" : "coating", .amounts = {1000 * (1 + below(6))}};
    need.apart = below(2) == 0;
    if (need.apart) need.amounts.push_back(500 * (1 + below(3)));
    need.one_batch = below(3) == 0;
    need.spare = below(2) * 100;
    std::vector<purchase::Pack> packs;
    for (int p = 0; p < 2; ++p) {
      purchase::Pack pack{.id = std::to_string(p), .size = 500 * (1 + below(4))};
      pack.price = money::Money::of_minor(100 * (1 + below(5)));
      if (below(4) == 0) pack.stock = below(3);
      if (below(3) == 0) pack.batch = below(2) == 0 ? "A" : "B";
      packs.push_back(pack);
    }
    const auto rounding = money::Rounding::half_away;
    const std::string anew = told(quote::buy(need, packs, rounding));
    REQUIRE(told(roomy.buy(need, packs, rounding)) == anew);
    REQUIRE(told(roomy.buy(need, packs, rounding)) == anew);
    REQUIRE(told(small.buy(need, packs, rounding)) == anew);
    most = std::max(most, small.held());
  }
  CHECK(most <= 3);
  CHECK(roomy.held() > 100);
}

TEST_CASE("packs bought for an amount serve every amount up to what they hold") {
  std::mt19937 random(23);
  const auto below = [&](unsigned n) { return static_cast<std::int64_t>(random() % n); };
  const auto rounding = money::Rounding::half_away;
  for (int kind = 0; kind < 60; ++kind) {
    std::vector<purchase::Pack> packs;
    for (std::int64_t p = 0; p <= below(4); ++p) {
      purchase::Pack pack{.id = std::to_string(p), .size = 1 + below(400)};
      pack.price = money::Money::of_minor(below(9) * below(100));
      if (below(3) == 0) pack.stock = below(4);
      if (below(3) == 0) pack.batch = below(2) == 0 ? "A" : "B";
      packs.push_back(pack);
    }
    quote::PurchaseMemory memory;
    for (int i = 0; i < 60; ++i) {
      Need need{.item = "acid", .amounts = {below(900)}};
      need.one_batch = kind % 3 == 0;
      need.spare = kind % 4 == 0 ? 5 : 0;
      INFO("kind " << kind << ", " << need.amounts.front());
      REQUIRE(told(memory.buy(need, packs, rounding)) == told(quote::buy(need, packs, rounding)));
    }
    CHECK(memory.held() < 60);
  }
  // 7 L in canisters of 5 L, then all from 5 L and 1 mL to 10 L.
  const std::vector<purchase::Pack> canisters{{.id = "5", .size = 5000, .price = {}}};
  quote::PurchaseMemory memory;
  for (const std::int64_t amount : {7000, 10000, 7001, 5001, 6000}) {
    Need need{.item = "acid", .amounts = {amount}};
    CHECK(memory.buy(need, canisters, rounding).left_over == 10000 - amount);
  }
  CHECK(memory.held() == 1);
  CHECK(memory.buy({.item = "acid", .amounts = {10001}}, canisters, rounding).left_over == 4999);
  CHECK(memory.buy({.item = "acid", .amounts = {5000}}, canisters, rounding).left_over == 0);
  CHECK(memory.held() == 3);
}
