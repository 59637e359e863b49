// Whole numbers of any size, as far as exact binomial sums need them.
#pragma once

#include <compare>
#include <cstdint>
#include <vector>

namespace basinwright::odds {

/// A whole number of 0 or more, base 2^32, lowest digit first, no leading zeros.
class Natural {
 public:
  Natural() = default;
  explicit Natural(std::uint32_t value);

  Natural& operator+=(const Natural& other);
  Natural& operator*=(std::uint32_t factor);
  /// Division that leaves no remainder.
  Natural& divide_exactly(std::uint32_t divisor);

  friend bool operator==(const Natural&, const Natural&) = default;
  friend std::strong_ordering operator<=>(const Natural& a, const Natural& b);
  /// a / b for b above 0, to a few units of the last place.
  friend double ratio(const Natural& a, const Natural& b);

 private:
  std::vector<std::uint32_t> digits_;
};

[[nodiscard]] double ratio(const Natural& a, const Natural& b);

/// base^exponent.
[[nodiscard]] Natural power(std::uint32_t base, std::int64_t exponent);

}  // namespace basinwright::odds
