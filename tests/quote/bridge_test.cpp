// The way from one price to another, and prices on random jobs' costs. Sums are checked in whole
// minor units; the rules are those of a written quotation (common practice): lines sum to the net,
// tax falls once on it, stages sum to the total.
#include "basinwright/quote/bridge.hpp"

#include <algorithm>
#include <random>

#include "support/catch.hpp"

using namespace basinwright;
using money::Money;
using money::Percentage;

namespace {

class Costs {
 public:
  explicit Costs(std::uint32_t seed) : random_(seed) {}

  std::int64_t below(std::int64_t limit) {
    return static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(limit));
  }

  quote::PriceQuestion question() {
    quote::PriceQuestion q;
    for (const char* what : {"materials", "labour", "hire", "travel", "disposal", "fill water"}) {
      if (below(4) > 0) q.costs.push_back({what, Money::of_minor(below(1'000'000))});
    }
    if (below(2) == 0) {
      q.overheads.markup = Percentage{below(500'000)};
    } else if (below(2) == 0) {
      q.overheads.margin = Percentage{below(500'000)};
    }
    q.overheads.contingency = Percentage{below(2) * below(100'000)};
    if (below(2) == 0) q.discount = Percentage{below(200'000)};
    if (below(2) == 0) q.rounding_step = Money::of_minor(1 + below(5000));
    if (below(4) > 0) q.tax = quote::Tax{"tax", Percentage{below(250'000)}};
    if (below(2) == 0)
      q.stages = {{"on order", {300'000}}, {"half way", {333'333}}, {"end", {366'667}}};
    if (below(2) == 0) q.rounding = money::Rounding::half_even;
    return q;
  }

 private:
  std::mt19937_64 random_;
};

Money sum(const std::vector<quote::Line>& lines) {
  Money total;
  for (const quote::Line& line : lines) total += line.amount;
  return total;
}

}  // namespace

TEST_CASE("a bridge by hand") {
  quote::Price before;
  before.lines = {{"materials", Money::of_minor(1000)}, {"labour", Money::of_minor(500)}};
  before.net = Money::of_minor(1500);
  before.tax = Money::of_minor(150);
  before.total = Money::of_minor(1650);
  quote::Price after;
  after.lines = {{"materials", Money::of_minor(1300)},
                 {"hire", Money::of_minor(70)},
                 {"labour", Money::of_minor(450)}};
  after.net = Money::of_minor(1820);
  after.tax = Money::of_minor(182);
  after.total = Money::of_minor(2002);
  const quote::Bridge bridge = quote::bridge(before, after);
  REQUIRE(bridge.lines.size() == 4);
  CHECK(bridge.lines[0].what == "materials");
  CHECK(bridge.lines[0].change() == Money::of_minor(300));
  CHECK(bridge.lines[1].what == "hire");
  CHECK(bridge.lines[1].before == Money());
  CHECK(bridge.lines[2].what == "labour");
  CHECK(bridge.lines[2].change() == Money::of_minor(-50));
  CHECK(bridge.lines[3].what == "tax");
  CHECK(bridge.lines[3].change() == Money::of_minor(32));
  CHECK(bridge.after - bridge.before == Money::of_minor(352));
}

TEST_CASE("lines sum to net, stages to total, and a bridge to the difference") {
  Costs costs(20270401);
  int lines_apart = 0;
  for (int i = 0; i < 3000; ++i) {
    const quote::PriceQuestion one = costs.question();
    const quote::PriceQuestion other = costs.question();
    const quote::Price before = quote::price(one);
    const quote::Price after = quote::price(other);
    CHECK(sum(before.lines) == before.net);
    CHECK(before.net + before.tax == before.total);
    Money due;
    for (const quote::Due& stage : before.stages) due += stage.amount;
    CHECK(due == before.total);
    if (one.tax) CHECK(before.tax == money::share(before.net, one.tax->rate, one.rounding));
    const quote::Bridge bridge = quote::bridge(before, after);
    Money change;
    for (const quote::BridgeLine& line : bridge.lines) change += line.change();
    CHECK(change == after.total - before.total);
    CHECK(bridge.before == before.total);
    CHECK(bridge.after == after.total);
    lines_apart += before.lines.size() != after.lines.size() ? 1 : 0;
  }
  CHECK(lines_apart > 500);
}

TEST_CASE("a dearer cost never makes a lower total") {
  Costs costs(20270402);
  for (int i = 0; i < 2000; ++i) {
    quote::PriceQuestion q = costs.question();
    if (q.costs.empty()) continue;
    q.rounding_step.reset();  // A rounded total may stay, never fall; see below.
    const quote::Price before = quote::price(q);
    q.costs.front().amount += Money::of_minor(costs.below(100'000));
    CHECK(quote::price(q).total >= before.total);
  }
}

TEST_CASE("a rounded total is a multiple of its step, or was left as it was") {
  Costs costs(20270403);
  int rounded = 0;
  for (int i = 0; i < 2000; ++i) {
    quote::PriceQuestion q = costs.question();
    q.rounding_step = Money::of_minor(100);
    const quote::Price price = quote::price(q);
    const bool has_line = std::ranges::any_of(
        price.lines, [](const quote::Line& line) { return line.what == "rounding"; });
    if (!has_line) continue;
    CHECK(price.total.minor() % 100 == 0);
    ++rounded;
  }
  CHECK(rounded > 1000);
}
