#include <cstdint>
#include <limits>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"
#include "support/catch.hpp"

using namespace basinwright::money;

namespace {

constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();
constexpr Rounding away = Rounding::half_away;
constexpr Rounding even = Rounding::half_even;

Money minor(std::int64_t units) {
  return Money::of_minor(units);
}

std::vector<std::int64_t> split_of(std::int64_t total, const std::vector<std::int64_t>& weights) {
  std::vector<std::int64_t> out;
  for (const Money& part : split(minor(total), weights)) out.push_back(part.minor());
  return out;
}

using Parts = std::vector<std::int64_t>;

}  // namespace

TEST_CASE("tax is taken once on the subtotal") {
  // Common practice of invoices: three lines of 10.05 at 10 % are taxed 3.02 together, not 3.03.
  const Money subtotal = minor(1005) * 3;
  CHECK(share(subtotal, {100'000}, away) == minor(302));
  CHECK(share(minor(1005), {100'000}, away) * 3 == minor(303));
}

TEST_CASE("tax inside a gross price") {
  // Worked by hand: 99.99 x 10/110 = 9.09.
  const GrossParts parts = inside_gross(minor(9999), {100'000}, away);
  CHECK(parts.net == minor(9090));
  CHECK(parts.tax == minor(909));
  CHECK(inside_gross(minor(9999), {0}, away).net == minor(9999));
  CHECK_THROWS_AS(inside_gross(minor(1), {-whole}, away), std::invalid_argument);
}

TEST_CASE("a mark-up is on cost and a margin on price") {
  // Common practice: 25 % on 1000 is 1250 as mark-up, 1333.33 as margin.
  CHECK(with_markup(minor(100000), {250'000}, away) == minor(125000));
  CHECK(with_margin(minor(100000), {250'000}, away) == minor(133333));
  CHECK(with_margin(minor(100000), {0}, away) == minor(100000));
  CHECK_THROWS_AS(with_margin(minor(1), {whole}, away), std::invalid_argument);
  CHECK_THROWS_AS(with_margin(minor(1), {-1}, away), std::invalid_argument);
}

TEST_CASE("ties round away from zero or to even, alike on both sides of zero") {
  // The two rules as defined in ISO 80000-1 annex B (rule B is half away; from memory).
  for (const auto& [half, to_away, to_even] :
       {std::tuple{1, 1, 0}, std::tuple{3, 2, 2}, std::tuple{5, 3, 2}, std::tuple{7, 4, 4}}) {
    CHECK(scaled(minor(half), 1, 2, away) == minor(to_away));
    CHECK(scaled(minor(half), 1, 2, even) == minor(to_even));
    CHECK(scaled(minor(-half), 1, 2, away) == minor(-to_away));
    CHECK(scaled(minor(half), -1, 2, even) == minor(-to_even));
  }
  CHECK(scaled(minor(4), 1, 3, away) == minor(1));
  CHECK(scaled(minor(5), 1, 3, even) == minor(2));
  CHECK_THROWS_AS(scaled(minor(1), 1, 0, away), std::invalid_argument);
  CHECK_THROWS_AS(scaled(minor(1), 1, -2, away), std::invalid_argument);
}

TEST_CASE("sums that leave 64 bits throw") {
  CHECK(minor(most) + minor(0) == minor(most));
  CHECK_THROWS_AS(minor(most) + minor(1), std::overflow_error);
  CHECK_THROWS_AS(minor(least) - minor(1), std::overflow_error);
  CHECK_THROWS_AS(minor(0) - minor(least), std::overflow_error);
  CHECK_THROWS_AS(minor(most) * 2, std::overflow_error);
  CHECK_THROWS_AS(minor(least) * -1, std::overflow_error);
  CHECK_THROWS_AS(with_markup(minor(most), {1}, away), std::overflow_error);
  CHECK(scaled(minor(most), most, most, away) == minor(most));
  CHECK(scaled(minor(least), most, most, even) == minor(least));
  CHECK_THROWS_AS(scaled(minor(most), 3, 2, away), std::overflow_error);
  Money sum = minor(5);
  sum += minor(7);
  CHECK(sum == minor(12));
}

TEST_CASE("splits go by largest remainder, ties to the earlier part") {
  // The method of Hamilton and Hare, whose usual example has seats for votes (from memory).
  CHECK(split_of(10, {47000, 16000, 15800, 12000, 6100, 3100}) == Parts{5, 2, 1, 1, 1, 0});
  CHECK(split_of(100, {1, 1, 1}) == Parts{34, 33, 33});
  CHECK(split_of(101, {1, 1, 1}) == Parts{34, 34, 33});
  CHECK(split_of(-100, {1, 1, 1}) == Parts{-34, -33, -33});
  CHECK(split_of(5, {0, 1, 0, 1}) == Parts{0, 3, 0, 2});
  CHECK(split_of(0, {2, 3}) == Parts{0, 0});
  CHECK(split_of(most, {most, most}) == Parts{(most / 2) + 1, most / 2});
  CHECK(split_of(least, {1}) == Parts{least});
  CHECK_THROWS_AS(split(minor(1), {}), std::invalid_argument);
  CHECK_THROWS_AS(split(minor(1), {0, 0}), std::invalid_argument);
  CHECK_THROWS_AS(split(minor(1), {2, -1}), std::invalid_argument);
}

TEST_CASE("parts of a split sum to the total and lie within one unit of their share") {
  std::mt19937_64 random(5);
  for (int round = 0; round < 3000; ++round) {
    const auto total = static_cast<std::int64_t>(random() % 2000001) - 1000000;
    std::vector<std::int64_t> weights(1 + random() % 9);
    std::int64_t sum = 0;
    for (std::int64_t& weight : weights) {
      weight = static_cast<std::int64_t>(random() % 1000);
      sum += weight;
    }
    if (sum == 0) continue;
    const Parts parts = split_of(total, weights);
    std::int64_t back = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      back += parts[i];
      const std::int64_t off = parts[i] * sum - total * weights[i];
      REQUIRE((off < sum && off > -sum));
      REQUIRE(parts[i] * (total < 0 ? -1 : 1) >= 0);
    }
    REQUIRE(back == total);
  }
}

TEST_CASE("rounding is the same on both sides of zero, and tax inside a price sums to it") {
  std::mt19937_64 random(6);
  for (int round = 0; round < 5000; ++round) {
    const Money a = minor(static_cast<std::int64_t>(random() % 2000001) - 1000000);
    const Money opposite = minor(0) - a;
    const Percentage rate{static_cast<std::int64_t>(random() % whole)};
    for (const Rounding rule : {away, even}) {
      REQUIRE(share(opposite, rate, rule) == minor(0) - share(a, rate, rule));
      REQUIRE(with_markup(opposite, rate, rule) == minor(0) - with_markup(a, rate, rule));
      const GrossParts parts = inside_gross(a, rate, rule);
      REQUIRE(parts.net + parts.tax == a);
    }
  }
}
