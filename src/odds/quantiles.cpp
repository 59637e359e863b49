#include "basinwright/odds/quantiles.hpp"

#include <cmath>
#include <numeric>
#include <stdexcept>

#include "natural.hpp"

namespace basinwright::odds {
namespace {

constexpr std::int64_t most_parts = 1'000'000;

void check(Probability p) {
  if (p.part < 1 || p.part >= p.whole || p.whole > most_parts) {
    throw std::invalid_argument("a probability between 0 and 1, in whole parts of at most 10^6");
  }
}

void check_years(std::int64_t years) {
  if (years < 1 || years > most_years) throw std::invalid_argument("1 to 1000 replayed years");
}

std::uint32_t digit(std::int64_t value) {
  return static_cast<std::uint32_t>(value);
}

/// A binomial distribution in whole numbers: P(B = k) = ways[k] / all.
struct Binomial {
  std::vector<Natural> ways;
  Natural all;
};

Binomial binomial(std::int64_t years, Probability p) {
  const std::int64_t common = std::gcd(p.part, p.whole);
  const std::int64_t success = p.part / common;
  const std::int64_t failure = p.whole / common - success;
  Binomial result;
  result.all = power(digit(success + failure), years);
  Natural ways = power(digit(failure), years);
  for (std::int64_t k = 0; k < years; ++k) {
    result.ways.push_back(ways);
    ways *= digit((years - k) * success);
    ways.divide_exactly(digit((k + 1) * failure));
  }
  result.ways.push_back(ways);
  return result;
}

/// Whether a tail stays within (1 - confidence) / 2, multiplied out.
bool within(Natural tail, Natural all, Probability confidence) {
  tail *= digit(2 * confidence.whole);
  all *= digit(confidence.whole - confidence.part);
  return tail <= all;
}

}  // namespace

std::int64_t quantile_rank(std::int64_t years, Probability p) {
  check_years(years);
  check(p);
  return (years * p.part + p.whole - 1) / p.whole;
}

RankInterval rank_interval(std::int64_t years, Probability p, Probability confidence) {
  check_years(years);
  check(p);
  check(confidence);
  const Binomial of = binomial(years, p);
  const auto ways = [&of](std::int64_t k) -> const Natural& {
    return of.ways[static_cast<std::size_t>(k)];
  };
  RankInterval result;
  Natural below;
  for (std::int64_t k = 0; k < years; ++k) {
    below += ways(k);
    if (!within(below, of.all, confidence)) break;
    result.low = k + 1;
  }
  Natural above;
  for (std::int64_t k = years; k > 0; --k) {
    above += ways(k);
    if (!within(above, of.all, confidence)) break;
    result.high = k;
  }
  Natural held;
  for (std::int64_t k = result.low.value_or(0); k < result.high.value_or(years + 1); ++k) {
    held += ways(k);
  }
  result.coverage = ratio(held, of.all);
  return result;
}

ShareInterval wilson_interval(std::int64_t count, std::int64_t years, double z) {
  if (years < 1 || count < 0 || count > years || !(z > 0.0) || !std::isfinite(z)) {
    throw std::invalid_argument("wilson_interval: 0 <= count <= years, 1 <= years, z > 0");
  }
  const auto n = static_cast<double>(years);
  const double share = static_cast<double>(count) / n;
  const double term = z * z / n;
  const double centre = share + term / 2.0;
  const double half = z * std::sqrt((share * (1.0 - share) + term / 4.0) / n);
  ShareInterval result{(centre - half) / (1.0 + term), (centre + half) / (1.0 + term)};
  // Both ends are exact there; the differences above are not.
  if (count == 0) result.low = 0.0;
  if (count == years) result.high = 1.0;
  return result;
}

}  // namespace basinwright::odds
