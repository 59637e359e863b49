// Integers wide enough for the product of two amounts.
#pragma once

#include <cstdint>

#include "basinwright/money/money.hpp"

namespace basinwright::money {

__extension__ using Wide = __int128;

/// @throws std::overflow_error when `value` does not fit 64 bits
[[nodiscard]] std::int64_t narrow(Wide value);

/// `numerator` / `denominator` to the nearest whole number; ties by `rounding`.
[[nodiscard]] Wide rounded_quotient(Wide numerator, Wide denominator, Rounding rounding);

}  // namespace basinwright::money
