// The examples that docs/method.md works by hand, where no room's own test has them.
#include "basinwright/odds/quantiles.hpp"
#include "basinwright/quote/price.hpp"
#include "basinwright/quote/rules.hpp"
#include "support/catch.hpp"

using namespace basinwright;

// By hand: (0.8 + 1.9600^2 / 20 +/- 1.9600 sqrt(0.016 + 1.9600^2 / 400)) / (1 + 1.9600^2 / 10).
TEST_CASE("eight years of ten in time are 49 to 94 in a hundred") {
  const odds::ShareInterval got = odds::wilson_interval(8, 10);
  CHECK(got.low == Approx(0.490).margin(5e-4));
  CHECK(got.high == Approx(0.943).margin(5e-4));
}

// By hand: 0.31 x 78.05 = 24.2 discs.
TEST_CASE("counted things are whole pieces") {
  quote::Basis basis;
  basis.abraded = 78.05;
  const auto counted =
      quote::count({{"disc", quote::Per::abraded_area, 0.31, money::Money::of_minor(290)}}, basis);
  REQUIRE(counted.size() == 1);
  CHECK(counted.front().count == 25);
  CHECK(counted.front().total == money::Money::of_minor(7250));
}

// By hand: 1,000.00 x 20 %, and 1,000.00 / 0.8 - 1,000.00.
TEST_CASE("a mark-up is a share of the cost, a margin one of the price") {
  const money::Percentage fifth{money::whole / 5};
  quote::PriceQuestion question;
  question.costs = {{"materials", money::Money::of_minor(100000)}};
  question.overheads.markup = fifth;
  CHECK(quote::price(question).net == money::Money::of_minor(120000));
  question.overheads.markup.reset();
  question.overheads.margin = fifth;
  CHECK(quote::price(question).net == money::Money::of_minor(125000));
}
