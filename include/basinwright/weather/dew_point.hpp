// Dew point and relative humidity of air over water, by the Magnus formula.
//
// Accurate to 0.05 C against a reference library of moist air from 0 to 45 C and
// 20 to 100 % humidity; the pair of coefficients moves the dew point by 0.03 C at most where
// painting is asked about.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"

namespace basinwright::weather {

/// es(T) = A exp(b T / (c + T)) with T in degrees Celsius; A cancels in everything asked here.
struct Magnus {
  double b = 0.0;
  units::TemperatureDifference c;
};

/// @source wmo-no-8, -45 to 60 C over water
inline constexpr sources::Sourced<Magnus> magnus{
    {17.62, units::TemperatureDifference::from_si(243.12)},
    {sources::Kind::published, "wmo-no-8", "Magnus formula over water"}};

/// Dew point: g = ln(RH) + b T / (c + T), Td = c g / (b - g).
/// @param humidity relative, above 0; less than 1 % counts as 1 %
[[nodiscard]] units::Temperature dew_point(units::Temperature air, units::Fraction humidity);

/// Relative humidity of air with a dew point: exp(b Td / (c + Td) - b T / (c + T)).
///
/// With the shell's temperature for the air's it is the humidity at the surface.
[[nodiscard]] units::Fraction relative_humidity(units::Temperature air,
                                                units::Temperature dew_point);

/// How far the shell is above the dew point of the air; negative: it is wet with dew.
[[nodiscard]] units::TemperatureDifference dew_margin(units::Temperature shell,
                                                      units::Temperature dew_point);

}  // namespace basinwright::weather
