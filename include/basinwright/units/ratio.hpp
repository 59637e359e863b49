// Numbers without a unit that must still not be mixed up: shares of a whole and parts per million.
#pragma once

#include <compare>

namespace basinwright::units {

/// A share of a whole, 1 = all of it; read as a share or in percent.
class Fraction {
 public:
  constexpr Fraction() = default;
  [[nodiscard]] constexpr double share() const { return share_; }
  [[nodiscard]] constexpr double in_percent() const { return share_ * 100.0; }
  friend constexpr bool operator==(Fraction, Fraction) = default;
  friend constexpr auto operator<=>(Fraction a, Fraction b) { return a.share_ <=> b.share_; }
  friend constexpr Fraction fraction(double share);

 private:
  double share_ = 0.0;
};

[[nodiscard]] constexpr Fraction fraction(double share) {
  Fraction f;
  f.share_ = share;
  return f;
}
[[nodiscard]] constexpr Fraction percent(double value) {
  return fraction(value / 100.0);
}

/// Parts per million by mass or volume, as the place that uses it says.
class PartsPerMillion {
 public:
  constexpr PartsPerMillion() = default;
  [[nodiscard]] constexpr double count() const { return count_; }
  friend constexpr bool operator==(PartsPerMillion, PartsPerMillion) = default;
  friend constexpr auto operator<=>(PartsPerMillion a, PartsPerMillion b) {
    return a.count_ <=> b.count_;
  }
  friend constexpr PartsPerMillion parts_per_million(double count);

 private:
  double count_ = 0.0;
};

[[nodiscard]] constexpr PartsPerMillion parts_per_million(double count) {
  PartsPerMillion p;
  p.count_ = count;
  return p;
}

}  // namespace basinwright::units
