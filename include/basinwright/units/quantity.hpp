// Physical quantities that cannot be added up wrongly: one template over integer exponents.
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace basinwright::units {

/// Exponents of metre, kilogram, second and kelvin.
struct Dimensions {
  std::int8_t length = 0;
  std::int8_t mass = 0;
  std::int8_t time = 0;
  std::int8_t temperature = 0;
  friend constexpr bool operator==(const Dimensions&, const Dimensions&) = default;
};

template <class Q>
struct Unit;

/// A quantity with the dimension m^L kg^M s^T K^K, held in SI.
///
/// It is made by a unit (`metres(2.4)`, `us_gallons(5)`) and read only through one
/// (`depth.in(feet)`), so no number is ever without its unit.
template <int L, int M, int T, int K>
class Quantity {
 public:
  static constexpr Dimensions dimensions{L, M, T, K};

  constexpr Quantity() = default;

  /// The number of `unit`s in this quantity.
  [[nodiscard]] constexpr double in(const Unit<Quantity>& unit) const { return si_ / unit.factor; }
  /// The number in SI units; for recording and comparing, not for show.
  [[nodiscard]] constexpr double si() const { return si_; }
  [[nodiscard]] static constexpr Quantity from_si(double value) { return Quantity(value); }

  constexpr Quantity& operator+=(Quantity other) { return si_ += other.si_, *this; }
  constexpr Quantity& operator-=(Quantity other) { return si_ -= other.si_, *this; }
  constexpr Quantity& operator*=(double k) { return si_ *= k, *this; }
  constexpr Quantity& operator/=(double k) { return si_ /= k, *this; }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.si_); }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.si_ + b.si_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.si_ - b.si_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.si_ / k); }
  friend constexpr bool operator==(Quantity, Quantity) = default;
  friend constexpr auto operator<=>(Quantity a, Quantity b) { return a.si_ <=> b.si_; }

 private:
  constexpr explicit Quantity(double si) : si_(si) {}
  double si_ = 0.0;
};

template <int L, int M, int T, int K, int L2, int M2, int T2, int K2>
constexpr auto operator*(Quantity<L, M, T, K> a, Quantity<L2, M2, T2, K2> b) {
  if constexpr (L + L2 == 0 && M + M2 == 0 && T + T2 == 0 && K + K2 == 0) {
    return a.si() * b.si();
  } else {
    return Quantity<L + L2, M + M2, T + T2, K + K2>::from_si(a.si() * b.si());
  }
}

template <int L, int M, int T, int K, int L2, int M2, int T2, int K2>
constexpr auto operator/(Quantity<L, M, T, K> a, Quantity<L2, M2, T2, K2> b) {
  if constexpr (L == L2 && M == M2 && T == T2 && K == K2) {
    return a.si() / b.si();
  } else {
    return Quantity<L - L2, M - M2, T - T2, K - K2>::from_si(a.si() / b.si());
  }
}

template <int L, int M, int T, int K>
[[nodiscard]] inline Quantity<L, M, T, K> abs(Quantity<L, M, T, K> a) {
  return Quantity<L, M, T, K>::from_si(std::abs(a.si()));
}

using Length = Quantity<1, 0, 0, 0>;
using Area = Quantity<2, 0, 0, 0>;
using Volume = Quantity<3, 0, 0, 0>;
using Mass = Quantity<0, 1, 0, 0>;
using Duration = Quantity<0, 0, 1, 0>;
using TemperatureDifference = Quantity<0, 0, 0, 1>;
/// Area covered by a volume of coating, one coat (m2/m3 in SI; said as m2/L).
using SpreadingRate = Quantity<-1, 0, 0, 0>;
/// Volume of liquid put on an area (m3/m2 in SI; said as L/m2).
using ApplicationRate = Quantity<1, 0, 0, 0>;
/// Mass put on an area.
using ArealMass = Quantity<-2, 1, 0, 0>;
/// Mass in a volume: density and concentration.
using Concentration = Quantity<-3, 1, 0, 0>;
using Flow = Quantity<3, 0, -1, 0>;
/// Area worked by one person in a time.
using WorkRate = Quantity<2, 0, -1, 0>;
/// Length worked by one person in a time.
using EdgeRate = Quantity<1, 0, -1, 0>;
using Speed = Quantity<1, 0, -1, 0>;

}  // namespace basinwright::units
