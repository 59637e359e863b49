// What callers owe: figures that readers have already checked.
#pragma once

#include <cmath>
#include <stdexcept>

#include "basinwright/units/ratio.hpp"

namespace basinwright::chemistry {

/// @throws std::invalid_argument unless finite and not negative
template <class Quantity>
void require_amount(Quantity quantity, const char* message) {
  const double value = quantity.si();
  if (!std::isfinite(value) || value < 0.0) throw std::invalid_argument(message);
}

/// @throws std::invalid_argument unless finite and above zero
template <class Quantity>
void require_some(Quantity quantity, const char* message) {
  const double value = quantity.si();
  if (!std::isfinite(value) || !(value > 0.0)) throw std::invalid_argument(message);
}

/// @throws std::invalid_argument unless above 0 and up to 1
inline void require_purity(units::Fraction purity) {
  if (!(purity.share() > 0.0 && purity.share() <= 1.0)) {
    throw std::invalid_argument("purity is not above 0 and up to 1");
  }
}

}  // namespace basinwright::chemistry
