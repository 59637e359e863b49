#include "basinwright/money/money.hpp"

#include <limits>
#include <stdexcept>

#include "wide.hpp"

namespace basinwright::money {

std::int64_t narrow(Wide value) {
  using Limits = std::numeric_limits<std::int64_t>;
  if (value < Limits::min() || value > Limits::max()) {
    throw std::overflow_error("money: an amount leaves 64 bits");
  }
  return static_cast<std::int64_t>(value);
}

Wide rounded_quotient(Wide numerator, Wide denominator, Rounding rounding) {
  const bool negative = numerator < 0;
  const Wide magnitude = negative ? -numerator : numerator;
  Wide quotient = magnitude / denominator;
  const Wide rest = magnitude % denominator;
  const Wide missing = denominator - rest;
  const bool tie = rest == missing;
  const bool up = tie ? rounding == Rounding::half_away || quotient % 2 != 0 : rest > missing;
  if (up) ++quotient;
  return negative ? -quotient : quotient;
}

Money operator+(Money a, Money b) {
  return Money(narrow(static_cast<Wide>(a.minor_) + b.minor_));
}

Money operator-(Money a, Money b) {
  return Money(narrow(static_cast<Wide>(a.minor_) - b.minor_));
}

Money operator*(Money a, std::int64_t count) {
  return Money(narrow(static_cast<Wide>(a.minor_) * count));
}

}  // namespace basinwright::money
