#include <cmath>
#include <sstream>
#include <string>

#include "basinwright/odds/quantiles.hpp"
#include "support/catch.hpp"
#include "units/outside.hpp"

// Outside source: Python's fractions and math.comb, through oracle.py.

using namespace basinwright;

namespace {

void check_ranks(std::istringstream& fields) {
  std::int64_t years = 0;
  std::int64_t rank = 0;
  std::int64_t low = 0;
  std::int64_t high = 0;
  odds::Probability p;
  odds::Probability level;
  double coverage = 0.0;
  fields >> years >> p.part >> p.whole >> level.part >> level.whole >> rank >> low >> high >>
      coverage;
  REQUIRE(fields);
  const odds::RankInterval got = odds::rank_interval(years, p, level);
  REQUIRE(odds::quantile_rank(years, p) == rank);
  REQUIRE(got.low.value_or(0) == low);
  REQUIRE(got.high.value_or(0) == high);
  // Two roundings of three leading digits and one division: under 1e-15.
  REQUIRE(std::abs(got.coverage - coverage) <= 1e-15 * coverage);
}

void check_share(std::istringstream& fields) {
  std::int64_t count = 0;
  std::int64_t years = 0;
  odds::ShareInterval expected;
  fields >> count >> years >> expected.low >> expected.high;
  REQUIRE(fields);
  const odds::ShareInterval got = odds::wilson_interval(count, years);
  // Sums and differences of a few numbers up to 1, each rounded to 1.1e-16.
  REQUIRE(std::abs(got.low - expected.low) <= 1e-15);
  REQUIRE(std::abs(got.high - expected.high) <= 1e-15);
}

}  // namespace

TEST_CASE("the odds agree with the fractions of Python") {
  if (!outside::present(
          outside::python + " -c 'import fractions, statistics; from math import comb'",
          "python3 of 3.8 or later")) {
    return;
  }
  const std::string cases = outside::cases("1500");
  const auto lines = outside::python_lines("odds/oracle.py", cases);
  REQUIRE(lines.has_value());
  REQUIRE(lines->size() == std::stoul(cases) + 1);
  for (const std::string& line : *lines) {
    INFO(line);
    std::istringstream fields(line);
    std::string what;
    fields >> what;
    if (what == "ranks") {
      check_ranks(fields);
    } else if (what == "share") {
      check_share(fields);
    } else {
      REQUIRE(what == "normal");
      double z = 0.0;
      fields >> z;
      REQUIRE(std::abs(odds::normal_975 - z) <= 1e-15);
    }
  }
}
