// Tax by rates. A document shows the taxable amount and the tax of each rate (common practice;
// Council Directive 2006/112/EC, Art. 226 (8) to (10)); each tax is rounded once, on its subtotal.
// Sums by hand.
#include <algorithm>
#include <random>

#include "basinwright/quote/price.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using money::Money;
using money::Percentage;
using quote::PriceQuestion;

namespace {

Money minor(std::int64_t amount) {
  return Money::of_minor(amount);
}

Percentage percent(std::int64_t whole) {
  return {whole * money::whole / 100};
}

PriceQuestion two_rates() {
  PriceQuestion q;
  q.costs = {{"materials", minor(100'00)}, {"labour", minor(50'00)}};
  q.tax = quote::Tax{"tax", percent(21), {{"tax on labour", percent(9), {"labour"}}}};
  return q;
}

}  // namespace

TEST_CASE("each rate is taken of its own subtotal") {
  const quote::Price p = quote::price(two_rates());
  REQUIRE(p.taxes.size() == 2);
  CHECK(p.taxes[0].name == "tax");
  CHECK(p.taxes[0].rate == percent(21));
  CHECK(p.taxes[0].net == minor(100'00));
  CHECK(p.taxes[0].amount == minor(21'00));
  CHECK(p.taxes[1].name == "tax on labour");
  CHECK(p.taxes[1].net == minor(50'00));
  CHECK(p.taxes[1].amount == minor(4'50));
  CHECK(p.tax == minor(25'50));
  CHECK(p.total == minor(175'50));
}

TEST_CASE("what is laid on the cost is taxed as the cost is") {
  PriceQuestion q = two_rates();
  q.overheads.markup = percent(10);
  const quote::Price p = quote::price(q);
  CHECK(p.net == minor(165'00));
  CHECK(p.taxes[0].net == minor(110'00));
  CHECK(p.taxes[1].net == minor(55'00));
  CHECK(p.tax == minor(23'10 + 4'95));
}

TEST_CASE("a rate is rounded once, whatever the lines") {
  PriceQuestion q;
  q.costs = {{"materials", minor(10'05)}, {"hire", minor(10'05)}, {"travel", minor(10'05)}};
  // Three lines of 10.05 at 10 %: 3.02, not 3.03.
  q.tax = quote::Tax{"tax", percent(10), {}};
  CHECK(quote::price(q).tax == minor(3'02));
  q.tax = quote::Tax{"tax", percent(20), {{"less", percent(10), {"materials", "hire", "travel"}}}};
  const quote::Price p = quote::price(q);
  CHECK(p.tax == minor(3'02));
  REQUIRE(p.taxes.size() == 1);
  CHECK(p.taxes[0].name == "less");
}

TEST_CASE("subtotals sum to the net, the odd unit with the earlier rate") {
  PriceQuestion q;
  q.costs = {{"materials", minor(10'00)}, {"hire", minor(10'00)}, {"labour", minor(10'00)}};
  q.overheads.contingency = {money::whole * 3 / 10'000};  // 0.009, a unit
  q.tax =
      quote::Tax{"full", percent(20), {{"half", percent(10), {"hire"}}, {"free", {}, {"labour"}}}};
  const quote::Price p = quote::price(q);
  REQUIRE(p.taxes.size() == 3);
  CHECK(p.taxes[0].net == minor(10'01));
  CHECK(p.taxes[1].net == minor(10'00));
  CHECK(p.taxes[2].net == minor(10'00));
  CHECK(p.taxes[2].amount == Money());
  CHECK(p.tax == minor(3'00));
}

TEST_CASE("a round total holds under several rates") {
  PriceQuestion q = two_rates();
  q.rounding_step = minor(10'00);
  const quote::Price p = quote::price(q);
  CHECK(p.total == minor(180'00));
  CHECK(p.lines.back().what == "rounding");
}

TEST_CASE("the least charge for labour is taxed as labour") {
  PriceQuestion q = two_rates();
  q.costs.push_back({"call-out minimum", minor(10'00)});
  const quote::Price p = quote::price(q);
  CHECK(p.taxes[1].net == minor(60'00));
}

TEST_CASE("without tax there is none to list") {
  PriceQuestion q = two_rates();
  q.tax = {};
  CHECK(quote::price(q).taxes.empty());
}

TEST_CASE("subtotals and taxes sum on random prices") {
  std::mt19937 random(7);
  const auto below = [&](std::uint32_t n) { return static_cast<std::int64_t>(random() % n); };
  for (int i = 0; i < 3000; ++i) {
    PriceQuestion q;
    q.tax = quote::Tax{
        "a", {below(300'000)}, {{"b", {below(200'000)}, {"labour"}}, {"c", {below(9)}, {"hire"}}}};
    q.costs = {{"materials", minor(below(9'000'00))},
               {"labour", minor(below(9'000'00))},
               {"hire", minor(below(500'00))}};
    if (below(2) == 1) q.overheads.margin = Percentage{below(700'000)};
    if (below(2) == 1) q.discount = Percentage{below(300'000)};
    if (below(2) == 1) q.rounding_step = minor(5'00);
    const quote::Price p = quote::price(q);
    Money net, tax;
    for (const quote::Taxed& one : p.taxes) {
      net += one.net;
      tax += one.amount;
      CHECK(one.amount == money::share(one.net, one.rate, q.rounding));
    }
    REQUIRE(net == p.net);
    REQUIRE(tax == p.tax);
    REQUIRE(p.net + p.tax == p.total);
    const bool rounded = !p.lines.empty() && p.lines.back().what == "rounding";
    if (rounded) REQUIRE(p.total.minor() % 5'00 == 0);
  }
}
