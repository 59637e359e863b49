#include "natural.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace basinwright::odds {
namespace {

constexpr int digit_bits = 32;
// Three digits hold at least 65 significant bits, more than a double keeps.
constexpr std::size_t leading = 3;

struct Scaled {
  double mantissa = 0.0;
  int exponent = 0;
};

Scaled scaled(const std::vector<std::uint32_t>& digits) {
  Scaled result;
  const std::size_t taken = std::min(leading, digits.size());
  for (std::size_t i = 0; i < taken; ++i) {
    result.mantissa = std::ldexp(result.mantissa, digit_bits) + digits[digits.size() - 1 - i];
  }
  result.exponent = digit_bits * static_cast<int>(digits.size() - taken);
  return result;
}

}  // namespace

Natural::Natural(std::uint32_t value) {
  if (value != 0) digits_.push_back(value);
}

Natural& Natural::operator+=(const Natural& other) {
  digits_.resize(std::max(digits_.size(), other.digits_.size()), 0);
  std::uint64_t carry = 0;
  for (std::size_t i = 0; i < digits_.size(); ++i) {
    carry += digits_[i];
    if (i < other.digits_.size()) carry += other.digits_[i];
    digits_[i] = static_cast<std::uint32_t>(carry);
    carry >>= digit_bits;
  }
  if (carry != 0) digits_.push_back(static_cast<std::uint32_t>(carry));
  return *this;
}

Natural& Natural::operator*=(std::uint32_t factor) {
  if (factor == 0) digits_.clear();
  std::uint64_t carry = 0;
  for (std::uint32_t& digit : digits_) {
    carry += std::uint64_t{digit} * factor;
    digit = static_cast<std::uint32_t>(carry);
    carry >>= digit_bits;
  }
  if (carry != 0) digits_.push_back(static_cast<std::uint32_t>(carry));
  return *this;
}

Natural& Natural::divide_exactly(std::uint32_t divisor) {
  std::uint64_t rest = 0;
  for (std::size_t i = digits_.size(); i-- > 0;) {
    rest = rest << digit_bits | digits_[i];
    digits_[i] = static_cast<std::uint32_t>(rest / divisor);
    rest %= divisor;
  }
  if (rest != 0) throw std::logic_error("Natural: the division leaves a remainder");
  while (!digits_.empty() && digits_.back() == 0) digits_.pop_back();
  return *this;
}

std::strong_ordering operator<=>(const Natural& a, const Natural& b) {
  if (a.digits_.size() != b.digits_.size()) return a.digits_.size() <=> b.digits_.size();
  for (std::size_t i = a.digits_.size(); i-- > 0;) {
    if (a.digits_[i] != b.digits_[i]) return a.digits_[i] <=> b.digits_[i];
  }
  return std::strong_ordering::equal;
}

double ratio(const Natural& a, const Natural& b) {
  const Scaled above = scaled(a.digits_);
  const Scaled below = scaled(b.digits_);
  return std::ldexp(above.mantissa / below.mantissa, above.exponent - below.exponent);
}

Natural power(std::uint32_t base, std::int64_t exponent) {
  Natural result(1);
  for (std::int64_t i = 0; i < exponent; ++i) result *= base;
  return result;
}

}  // namespace basinwright::odds
