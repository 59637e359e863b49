// The pH of a water, and of strong acid in it.
#pragma once

#include <compare>

#include "basinwright/chemistry/moles.hpp"

namespace basinwright::chemistry {

/// A pH reading or limit: minus the decimal logarithm of the hydrogen ions in mol/L.
class Ph {
 public:
  constexpr Ph() = default;
  [[nodiscard]] constexpr double value() const { return value_; }
  friend constexpr bool operator==(Ph, Ph) = default;
  friend constexpr std::partial_ordering operator<=>(Ph a, Ph b) { return a.value_ <=> b.value_; }
  friend constexpr Ph ph(double value);

 private:
  double value_ = 7.0;
};

/// @param value 0 to 14 where a meter reads it; strong acid may go below 0.
[[nodiscard]] constexpr Ph ph(double value) {
  Ph made;
  made.value_ = value;
  return made;
}

/// The pH of strong acid alone in water: h = (a + sqrt(a^2 + 4 Kw)) / 2, Kw = 1e-14 (25 C).
/// @param acid not negative
/// @source carbonate-constants, "Water"
[[nodiscard]] Ph strong_acid_ph(Molarity acid);

/// Strong acid that alone would give this pH, a = h - Kw / h; none at and above pH 7.
/// @source carbonate-constants, "Water"
[[nodiscard]] Molarity strong_acid_at(Ph reading);

}  // namespace basinwright::chemistry
