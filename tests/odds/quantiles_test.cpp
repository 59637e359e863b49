#include "basinwright/odds/quantiles.hpp"

#include <chrono>
#include <fstream>
#include <stdexcept>

#include "basinwright/dates/date.hpp"
#include "odds_rows.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace basinwright;
using odds_rows::json;

namespace {

bool has_ranks(const odds::RankInterval& got, std::int64_t low, std::int64_t high) {
  return got.low == low && got.high == high;
}

}  // namespace

// Outside source: tests/reference/odds.json, order statistics in exact arithmetic.
TEST_CASE("every reference row of the odds is met in every key") {
  std::ifstream stream(places::source() + "/tests/reference/odds.json");
  const json file = json::parse(stream);
  const double relative = file.at("tolerance").at("relative");
  REQUIRE(relative == 1e-9);
  REQUIRE(file.at("rows").size() == 10);
  for (const json& row : file.at("rows")) {
    const json got = odds_rows::computed(row);
    REQUIRE(got.size() == 4);
    for (const auto& [key, expected] : row.at("expected").items()) {
      INFO(key << " of " << row.at("finish_days").dump() << "\ngot " << got.at(key).dump()
               << "\nexpected " << expected.dump());
      CHECK(odds_rows::agree(got.at(key), expected, relative));
    }
  }
}

// Hyndman and Fan 1996, definition 1, from memory: the least x with F(x) >= p.
TEST_CASE("the rank of a quantile never hangs on a last bit") {
  CHECK(odds::quantile_rank(10, {9, 10}) == 9);
  CHECK(odds::quantile_rank(10, {90, 100}) == 9);
  CHECK(odds::quantile_rank(11, {9, 10}) == 10);
  CHECK(odds::quantile_rank(40, {1, 2}) == 20);
  CHECK(odds::quantile_rank(30, {7, 10}) == 21);
  CHECK(odds::quantile_rank(100, {29, 100}) == 29);  // 100 * 0.29 is 28.999999999999996 in doubles
  CHECK(odds::quantile_rank(100, {7, 100}) == 7);    // 100 * 0.07 is 7.000000000000001 in doubles
  CHECK(odds::quantile_rank(1, {1, 1000000}) == 1);
  CHECK(odds::quantile_rank(1000, {999999, 1000000}) == 1000);
}

// Tables of the sign test and of confidence intervals for the median, from memory: n = 6 (1, 6)
// 96.9 %, n = 8 (2, 7) 93.0 %, n = 9 (2, 8) 96.1 %, n = 15 (4, 12) 96.5 %, n = 25 (8, 18) 95.7 %.
TEST_CASE("intervals of the median are those of the tables") {
  const struct {
    std::int64_t years, low, high;
    double percent;
  } table[] = {
      {6, 1, 6, 96.9}, {8, 2, 7, 93.0}, {9, 2, 8, 96.1}, {15, 4, 12, 96.5}, {25, 8, 18, 95.7}};
  for (const auto& line : table) {
    const odds::RankInterval got = odds::rank_interval(line.years, {1, 2});
    INFO(line.years << " years, coverage " << got.coverage);
    CHECK(has_ranks(got, line.low, line.high));
    CHECK(std::abs(100.0 * got.coverage - line.percent) <= 0.05);
  }
}

// A tail of exactly 0.05 is within 0.05: P(B <= 0) for n = 1, p = 19/20 is 1/20.
TEST_CASE("a tail that equals its limit is within it") {
  CHECK(odds::rank_interval(1, {19, 20}).low == 1);
  CHECK(odds::rank_interval(1, {95, 100}).low == 1);
  CHECK(odds::rank_interval(1, {949999, 1000000}).low == std::nullopt);
  CHECK(odds::rank_interval(1, {1, 20}).high == 1);
  CHECK(odds::rank_interval(1, {50001, 1000000}).high == std::nullopt);
  CHECK(odds::rank_interval(2, {1, 2}, {1, 2}).low == 1);  // P(B <= 0) = 1/4
  CHECK(odds::rank_interval(2, {1, 2}, {1, 2}).high == 2);
}

// Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3, from memory.
TEST_CASE("the score interval gives the published examples") {
  const struct {
    std::int64_t count, years;
    double low, high;
  } table[] = {{81, 263, 0.2553, 0.3662},
               {15, 148, 0.0624, 0.1605},
               {0, 20, 0.0, 0.1611},
               {1, 29, 0.0061, 0.1718}};
  for (const auto& line : table) {
    const odds::ShareInterval got = odds::wilson_interval(line.count, line.years);
    INFO(line.count << " of " << line.years << ": " << got.low << " to " << got.high);
    CHECK(std::abs(got.low - line.low) <= 5e-5);
    CHECK(std::abs(got.high - line.high) <= 5e-5);
    const odds::ShareInterval other = odds::wilson_interval(line.years - line.count, line.years);
    CHECK(std::abs(other.low + got.high - 1.0) <= 1e-15);
    CHECK(std::abs(other.high + got.low - 1.0) <= 1e-15);
  }
  for (std::int64_t years = 1; years <= 200; ++years) {
    CHECK(odds::wilson_interval(0, years).low == 0.0);
    CHECK(odds::wilson_interval(years, years).high == 1.0);
  }
}

// Common sense of the definition: years without a finish are later than any date.
TEST_CASE("unfinished years come last and count as not ready") {
  const dates::Date first = *dates::parse_date("2027-04-03");
  const dates::Date second = *dates::parse_date("2027-05-20");
  const odds::Finishes<dates::Date> finishes{std::nullopt, second, first, std::nullopt, first};
  CHECK(odds::in_order(finishes) ==
        odds::Finishes<dates::Date>{first, first, second, std::nullopt, std::nullopt});
  const auto median = odds::quantile(finishes, {1, 2});
  CHECK(median.rank == 3);
  CHECK(median.value == second);
  CHECK(median.low == first);
  CHECK(median.ranks.high == 5);
  CHECK(median.high == std::nullopt);
  CHECK(odds::quantile(finishes, {9, 10}).value == std::nullopt);
  CHECK(odds::ready_by(finishes, first).ready == 2);
  CHECK(odds::ready_by(finishes, second - std::chrono::days(1)).ready == 2);
  CHECK(odds::ready_by(finishes, second).ready == 3);
  CHECK(odds::ready_by(finishes, second).years == 5);
}

TEST_CASE("odds outside their ranges are refused") {
  const odds::Probability half{1, 2};
  for (const std::int64_t years : {std::int64_t{0}, std::int64_t{-1}, odds::most_years + 1}) {
    CHECK_THROWS_AS(odds::quantile_rank(years, half), std::invalid_argument);
    CHECK_THROWS_AS(odds::rank_interval(years, half), std::invalid_argument);
  }
  for (const odds::Probability p : {odds::Probability{0, 2},
                                    odds::Probability{2, 2},
                                    odds::Probability{-1, 2},
                                    odds::Probability{1, -2},
                                    odds::Probability{1, 1000001}}) {
    CHECK_THROWS_AS(odds::quantile_rank(5, p), std::invalid_argument);
    CHECK_THROWS_AS(odds::rank_interval(5, p), std::invalid_argument);
    CHECK_THROWS_AS(odds::rank_interval(5, half, p), std::invalid_argument);
  }
  CHECK_THROWS_AS(odds::quantile(odds::Finishes<int>{}, half), std::invalid_argument);
  CHECK_THROWS_AS(odds::ready_by(odds::Finishes<int>{}, 3), std::invalid_argument);
  CHECK_THROWS_AS(odds::wilson_interval(1, 0), std::invalid_argument);
  CHECK_THROWS_AS(odds::wilson_interval(-1, 5), std::invalid_argument);
  CHECK_THROWS_AS(odds::wilson_interval(6, 5), std::invalid_argument);
  CHECK_THROWS_AS(odds::wilson_interval(1, 5, 0.0), std::invalid_argument);
}
