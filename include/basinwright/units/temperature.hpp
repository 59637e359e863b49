// A temperature is a point on a scale: point minus point is a difference, point plus point is not.
#pragma once

#include <string_view>

#include "basinwright/units/quantity.hpp"

namespace basinwright::units {

struct TemperatureScale;

/// A temperature as a point, held in kelvin.
class Temperature {
 public:
  constexpr Temperature() = default;
  [[nodiscard]] constexpr double in(const TemperatureScale& scale) const;
  [[nodiscard]] constexpr double si() const { return kelvin_; }
  [[nodiscard]] static constexpr Temperature from_si(double kelvin) { return Temperature(kelvin); }

  friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
    return TemperatureDifference::from_si(a.kelvin_ - b.kelvin_);
  }
  friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
    return Temperature(a.kelvin_ + d.si());
  }
  friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) {
    return Temperature(a.kelvin_ - d.si());
  }
  friend constexpr bool operator==(Temperature, Temperature) = default;
  friend constexpr auto operator<=>(Temperature a, Temperature b) {
    return a.kelvin_ <=> b.kelvin_;
  }

 private:
  constexpr explicit Temperature(double kelvin) : kelvin_(kelvin) {}
  double kelvin_ = 273.15;
};

/// A temperature scale: `celsius(20)` makes a point, `t.in(fahrenheit)` reads one.
struct TemperatureScale {
  double degree;  ///< Kelvins in one degree.
  double zero;    ///< Kelvins at zero degrees.
  std::string_view symbol;
  constexpr Temperature operator()(double value) const {
    return Temperature::from_si(zero + value * degree);
  }
};

constexpr double Temperature::in(const TemperatureScale& scale) const {
  return (kelvin_ - scale.zero) / scale.degree;
}

inline constexpr TemperatureScale celsius{1.0, 273.15, "C"};
inline constexpr TemperatureScale fahrenheit{1.0 / 1.8, 273.15 - 32.0 / 1.8, "F"};

}  // namespace basinwright::units
