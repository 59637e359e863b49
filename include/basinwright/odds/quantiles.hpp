// How sure a finish is: order statistics of the finishes of replayed years.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

namespace basinwright::odds {

/// A probability strictly between 0 and 1 as a fraction of whole numbers, so that no rank hangs on
/// the last bit of 0.9.
struct Probability {
  std::int64_t part = 1;
  std::int64_t whole = 2;  ///< At most 1,000,000.
};

/// Years a replay may have.
inline constexpr std::int64_t most_years = 1000;

/// Rank, from 1, of the order statistic that is the quantile: ceil(n p), in whole numbers. It is
/// always a finish that really occurred.
/// @param years 1 to `most_years`
/// @throws std::invalid_argument outside these ranges
/// @source hyndman-fan-1996, definition 1, the inverse of the empirical distribution function
[[nodiscard]] std::int64_t quantile_rank(std::int64_t years, Probability p);

/// Ranks between which the quantile lies; nothing where so few years give no bound.
struct RankInterval {
  std::optional<std::int64_t> low;
  std::optional<std::int64_t> high;
  double coverage = 1.0;  ///< Probability that the interval holds the quantile, at least.
};

/// Ranks of a distribution-free confidence interval of the quantile.
///
/// With B ~ Bin(n, p) and a = (1 - confidence) / 2: `low` is the largest l with P(B <= l - 1) <= a,
/// `high` the smallest u with P(B >= u) <= a, and the coverage is P(l <= B <= u - 1), a missing
/// bound counting as 0 or n + 1. Compared exactly; the coverage is rounded once, to about 1e-15.
/// @param years 1 to `most_years`; years count as exchangeable
/// @throws std::invalid_argument outside these ranges
/// @source order-statistic-intervals, any text on nonparametric statistics
[[nodiscard]] RankInterval rank_interval(std::int64_t years,
                                         Probability p,
                                         Probability confidence = {9, 10});

/// Bounds of a share, 0 to 1.
struct ShareInterval {
  double low = 0.0;
  double high = 1.0;
};

/// The 0.975 quantile of the standard normal distribution: two-sided 95 %.
inline constexpr double normal_975 = 1.959963984540054;

/// Wilson's score interval for a share k of n:
/// (k/n + z^2/2n -+ z sqrt(k/n (1 - k/n)/n + z^2/4n^2)) / (1 + z^2/n).
/// @param count 0 to `years`
/// @param years 1 or more
/// @param z positive
/// @throws std::invalid_argument outside these ranges
/// @source wilson-1927, the interval of the score test
[[nodiscard]] ShareInterval wilson_interval(std::int64_t count,
                                            std::int64_t years,
                                            double z = normal_975);

/// The finish of each replayed year; nothing when it did not finish inside the horizon.
template <class T>
using Finishes = std::vector<std::optional<T>>;

/// The finishes in order, years without one last.
template <class T>
[[nodiscard]] Finishes<T> in_order(Finishes<T> finishes) {
  std::sort(finishes.begin(), finishes.end(), [](const auto& a, const auto& b) {
    return a.has_value() && (!b.has_value() || *a < *b);
  });
  return finishes;
}

/// A quantile of the finishes with its interval. A rank without a value is a year that did not
/// finish: later than the horizon.
template <class T>
struct Quantile {
  std::int64_t rank = 1;
  std::optional<T> value;
  RankInterval ranks;
  std::optional<T> low;
  std::optional<T> high;
};

/// @param finishes one year or more, in any order
/// @throws std::invalid_argument as `rank_interval`
template <class T>
[[nodiscard]] Quantile<T> quantile(const Finishes<T>& finishes,
                                   Probability p,
                                   Probability confidence = {9, 10}) {
  const auto years = static_cast<std::int64_t>(finishes.size());
  Quantile<T> result;
  result.rank = quantile_rank(years, p);
  result.ranks = rank_interval(years, p, confidence);
  const Finishes<T> ordered = in_order(finishes);
  const auto at = [&ordered](std::int64_t rank) {
    return ordered[static_cast<std::size_t>(rank - 1)];
  };
  result.value = at(result.rank);
  if (result.ranks.low) result.low = at(*result.ranks.low);
  if (result.ranks.high) result.high = at(*result.ranks.high);
  return result;
}

/// How many years were ready by a day, and the 95 % interval of that share.
struct ReadyShare {
  std::int64_t ready = 0;
  std::int64_t years = 0;
  ShareInterval interval;
};

/// Years that finished on `day` or earlier.
/// @throws std::invalid_argument without a year
template <class T>
[[nodiscard]] ReadyShare ready_by(const Finishes<T>& finishes, const T& day) {
  const auto ready = std::count_if(finishes.begin(), finishes.end(), [&day](const auto& finish) {
    return finish.has_value() && !(day < *finish);
  });
  const auto years = static_cast<std::int64_t>(finishes.size());
  return {ready, years, wilson_interval(ready, years)};
}

}  // namespace basinwright::odds
