#include <cstdint>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "basinwright/purchase/packs.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using purchase::Basket;
using purchase::cheapest;
using purchase::Pack;

// Rules of the choice: common practice, worked by hand.

namespace {

Pack pack(const std::string& id,
          std::int64_t size,
          std::int64_t price,
          std::optional<std::int64_t> stock = std::nullopt) {
  return {id, size, money::Money::of_minor(price), stock, "", ""};
}

}  // namespace

TEST_CASE("nothing is bought for no need") {
  for (const auto& needs : std::vector<std::vector<std::int64_t>>{{}, {0}, {-5}, {0, 0}}) {
    for (const bool apart : {false, true}) {
      const auto basket = cheapest({needs, apart, false}, {pack("a", 1000, 5)});
      REQUIRE(basket.has_value());
      CHECK(basket->packs == 0);
      CHECK(basket->choices.empty());
      CHECK(cheapest({needs, apart, true}, {}).has_value());
    }
  }
  CHECK_FALSE(cheapest({{1}, false, false}, {}).has_value());
  CHECK_FALSE(cheapest({{1}, true, true}, {pack("a", 1000, 5, 0)}).has_value());
}

TEST_CASE("needs pool unless they stand apart") {
  const std::vector<Pack> packs{pack("kit", 20000, 9000)};
  CHECK(cheapest({{10000, 10000}, false, false}, packs)->packs == 1);
  const auto apart = cheapest({{10000, 10000}, true, false}, packs);
  CHECK(apart->packs == 2);
  REQUIRE(apart->by_need.size() == 2);
  CHECK(apart->by_need[1].front().count == 1);
}

TEST_CASE("choices stand from the largest pack to the smallest, then by id") {
  const std::vector<Pack> packs{
      pack("z", 1000, 100), pack("b", 4000, 400, 1), pack("a", 4000, 400, 1)};
  const auto basket = cheapest({{9000}, false, false}, packs);
  REQUIRE(basket->choices.size() == 3);
  CHECK(packs[basket->choices[0].pack].id == "a");
  CHECK(packs[basket->choices[1].pack].id == "b");
  CHECK(packs[basket->choices[2].pack].id == "z");
}

TEST_CASE("scarce stock goes where it saves most") {
  // By hand: one large pack is left. It would save 10 on the first need, but it saves 110 on the
  // second, where three small ones are the only other way.
  const std::vector<Pack> packs{pack("large", 3, 190, 1), pack("small", 1, 100)};
  const auto basket = cheapest({{2, 3}, true, false}, packs);
  REQUIRE(basket.has_value());
  CHECK(basket->cost.minor() == 390);
  CHECK(packs[basket->by_need[1].front().pack].id == "large");
  CHECK(packs[basket->by_need[0].front().pack].id == "small");
}

TEST_CASE("nonsense is our own fault") {
  CHECK_THROWS_AS(cheapest({{1}, false, false}, {pack("a", 0, 1)}), std::invalid_argument);
  CHECK_THROWS_AS(cheapest({{1}, false, false}, {pack("a", -1, 1)}), std::invalid_argument);
  CHECK_THROWS_AS(cheapest({{1}, false, false}, {pack("a", 1, -1)}), std::invalid_argument);
  CHECK_THROWS_AS(cheapest({{1}, false, false}, {pack("a", 1, 1, -1)}), std::invalid_argument);
  const std::int64_t huge = std::numeric_limits<std::int64_t>::max();
  CHECK_THROWS_AS(cheapest({{huge}, false, false}, {pack("a", 1, 1)}), std::length_error);
  CHECK_THROWS_AS(cheapest({{huge, huge}, false, false}, {pack("a", 1, 1)}), std::overflow_error);
  CHECK_THROWS_AS(cheapest({{9}, false, false}, {pack("a", 1, huge)}), std::overflow_error);
}

TEST_CASE("a large need in packs without a common measure is solved in the table") {
  // 500 L in the sizes of US and metric packs: 3785 mL and the others share no divisor but 1.
  const std::vector<Pack> packs{pack("a", 946, 240),
                                pack("b", 3785, 690),
                                pack("c", 7571, 1360),
                                pack("d", 18927, 3300),
                                pack("e", 20000, 3490, 20),
                                pack("f", 5000, 880, 7)};
  const auto basket = cheapest({{500000}, false, false}, packs);
  REQUIRE(basket.has_value());
  CHECK(basket->size >= 500000);
  // No pack can be spared, and no price per millilitre beats the best one over the whole need.
  for (const auto& choice : basket->choices) CHECK(basket->size - packs[choice.pack].size < 500000);
  CHECK(static_cast<double>(basket->cost.minor()) >= 500000.0 * 3300 / 18927);
}
