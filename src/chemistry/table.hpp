// Straight lines between the rows of a table.
#pragma once

#include <cmath>
#include <cstddef>
#include <span>

namespace basinwright::chemistry {

/// One row; rows stand in rising order of `at`.
struct Row {
  double at;
  double value;
};

/// The two rows about `at`, and how far along it lies from the first (0) to the second (1).
struct Between {
  const Row& low;
  const Row& high;
  double along;
};

/// The end rows' lines go on beyond the table.
/// @param rows at least two
inline Between between(std::span<const Row> rows, double at) {
  std::size_t upper = 1;
  while (upper + 1 < rows.size() && rows[upper].at < at) ++upper;
  const Row& low = rows[upper - 1];
  const Row& high = rows[upper];
  return {low, high, (at - low.at) / (high.at - low.at)};
}

/// The value at `at` on a straight line.
inline double interpolate(std::span<const Row> rows, double at) {
  const Between here = between(rows, at);
  return here.low.value + here.along * (here.high.value - here.low.value);
}

/// The value at `at` on a straight line of logarithms.
inline double interpolate_exponential(std::span<const Row> rows, double at) {
  const Between here = between(rows, at);
  return here.low.value * std::pow(here.high.value / here.low.value, here.along);
}

/// Where a rising function of the unknown between `low` and `high` reaches `wanted`, by halving:
/// the same bits on every machine whose function gives the same bits.
template <class Function>
double root_of_rising(const Function& function, double wanted, double low, double high) {
  constexpr int halvings = 80;  // The width falls below one unit in the last place.
  for (int i = 0; i < halvings; ++i) {
    const double middle = low + (high - low) / 2.0;
    (function(middle) < wanted ? low : high) = middle;
  }
  return low + (high - low) / 2.0;
}

}  // namespace basinwright::chemistry
