#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "basinwright/purchase/packs.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

// Outside source: tests/reference/packs.json, whose answers come from exhaustive search, dynamic
// programming and an integer-programming solver, all equal. Whole numbers: no tolerance.

using namespace basinwright;
using nlohmann::json;
using purchase::Basket;
using purchase::Choice;
using purchase::Pack;

namespace {

json rows() {
  std::ifstream file(places::source() + "/tests/reference/packs.json");
  return json::parse(file).at("rows");
}

std::vector<Pack> packs_of(const json& row) {
  std::vector<Pack> out;
  for (const json& p : row.at("packs")) {
    Pack pack;
    pack.id = p.at("id");
    pack.size = p.at("ml");
    pack.price = money::Money::of_minor(p.at("cents").get<std::int64_t>());
    if (!p.at("max").is_null()) pack.stock = p.at("max").get<std::int64_t>();
    pack.batch = p.value("batch", "");
    out.push_back(pack);
  }
  return out;
}

purchase::Request request_of(const json& row) {
  purchase::Request request;
  const json& need = row.at("required_ml");
  request.needs = need.is_array() ? need.get<std::vector<std::int64_t>>()
                                  : std::vector<std::int64_t>{need.get<std::int64_t>()};
  request.apart = row.at("mode") == "per_coat";
  request.one_batch = row.at("same_batch");
  return request;
}

using Numbers = std::map<std::string, std::int64_t>;

Numbers named(const std::vector<Choice>& choices, const std::vector<Pack>& packs) {
  Numbers out;
  for (const Choice& choice : choices) out[packs.at(choice.pack).id] += choice.count;
  return out;
}

void compare(const Basket& basket, const std::vector<Pack>& packs, const json& expected) {
  CHECK(basket.cost.minor() == expected.at("cost_cents").get<std::int64_t>());
  CHECK(basket.size == expected.at("volume_ml").get<std::int64_t>());
  CHECK(basket.packs == expected.at("packs").get<std::int64_t>());
  CHECK(named(basket.choices, packs) == expected.at("counts").get<Numbers>());
  if (expected.contains("batch")) CHECK(basket.batch == expected.at("batch").get<std::string>());
  if (!expected.contains("per_coat")) return;
  const auto coats = expected.at("per_coat").get<std::vector<Numbers>>();
  REQUIRE(basket.by_need.size() == coats.size());
  for (std::size_t j = 0; j < coats.size(); ++j) {
    CHECK(named(basket.by_need[j], packs) == coats[j]);
  }
}

}  // namespace

TEST_CASE("every reference row of packs is met") {
  int met = 0;
  for (const json& row : rows()) {
    INFO(row.at("name"));
    const std::vector<Pack> packs = packs_of(row);
    const auto basket = purchase::cheapest(request_of(row), packs);
    const json& expected = row.at("expected");
    REQUIRE(basket.has_value() == (expected.at("status") == "optimal"));
    if (basket) compare(*basket, packs, expected);
    ++met;
  }
  CHECK(met == 30);
}
