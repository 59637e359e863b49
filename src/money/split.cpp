#include <algorithm>
#include <numeric>
#include <stdexcept>

#include "basinwright/money/money.hpp"
#include "wide.hpp"

namespace basinwright::money {
namespace {

Wide sum_of(const std::vector<std::int64_t>& weights) {
  Wide sum = 0;
  for (const std::int64_t weight : weights) {
    if (weight < 0) throw std::invalid_argument("split: a weight is negative");
    sum += weight;
  }
  if (sum == 0) throw std::invalid_argument("split: no weight is positive");
  return sum;
}

/// Indices of the parts, the largest remainder first.
std::vector<std::size_t> by_remainder(const std::vector<Wide>& remainders) {
  std::vector<std::size_t> order(remainders.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(
      order, [&](std::size_t a, std::size_t b) { return remainders[a] > remainders[b]; });
  return order;
}

}  // namespace

std::vector<Money> split(Money total, const std::vector<std::int64_t>& weights) {
  const Wide sum = sum_of(weights);
  const bool negative = total.minor() < 0;
  const Wide magnitude = negative ? -static_cast<Wide>(total.minor()) : Wide{total.minor()};
  std::vector<Wide> parts;
  std::vector<Wide> remainders;
  parts.reserve(weights.size());
  remainders.reserve(weights.size());
  Wide left = magnitude;
  for (const std::int64_t weight : weights) {
    parts.push_back(magnitude * weight / sum);
    remainders.push_back(magnitude * weight % sum);
    left -= parts.back();
  }
  for (const std::size_t i : by_remainder(remainders)) {
    if (left == 0) break;
    ++parts[i];
    --left;
  }
  std::vector<Money> out;
  out.reserve(parts.size());
  for (const Wide part : parts) out.push_back(Money::of_minor(narrow(negative ? -part : part)));
  return out;
}

}  // namespace basinwright::money
