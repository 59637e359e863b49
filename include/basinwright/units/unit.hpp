// Named units: makers and readers of quantities. Factors are exact unless a comment says otherwise.
#pragma once

#include <string_view>

#include "basinwright/units/quantity.hpp"

namespace basinwright::units {

/// A unit of the quantity `Q`: `metres(2.4)` makes one, `q.in(metres)` reads it.
template <class Q>
struct Unit {
  double factor;            ///< SI units in one of these.
  std::string_view symbol;  ///< As printed after a number.
  constexpr Q operator()(double value) const { return Q::from_si(value * factor); }
};

// Length: international foot of 1959, NIST Handbook 44 App. C.
inline constexpr Unit<Length> metres{1.0, "m"};
inline constexpr Unit<Length> centimetres{0.01, "cm"};
inline constexpr Unit<Length> millimetres{0.001, "mm"};
inline constexpr Unit<Length> micrometres{1e-6, "um"};
inline constexpr Unit<Length> feet{0.3048, "ft"};
inline constexpr Unit<Length> inches{0.0254, "in"};
inline constexpr Unit<Length> yards{0.9144, "yd"};
inline constexpr Unit<Length> mils{25.4e-6, "mil"};

inline constexpr Unit<Area> square_metres{1.0, "m2"};
inline constexpr Unit<Area> square_feet{0.09290304, "ft2"};

// Volume: US gallon of 231 cubic inches; imperial gallon of 4.54609 L.
inline constexpr Unit<Volume> cubic_metres{1.0, "m3"};
inline constexpr Unit<Volume> litres{0.001, "L"};
inline constexpr Unit<Volume> millilitres{1e-6, "mL"};
inline constexpr Unit<Volume> us_gallons{3.785411784e-3, "US gal"};
inline constexpr Unit<Volume> us_quarts{0.946352946e-3, "US qt"};
inline constexpr Unit<Volume> us_pints{0.473176473e-3, "US pt"};
inline constexpr Unit<Volume> us_fluid_ounces{29.5735295625e-6, "US fl oz"};
inline constexpr Unit<Volume> imperial_gallons{4.54609e-3, "imp gal"};
inline constexpr Unit<Volume> imperial_fluid_ounces{28.4130625e-6, "imp fl oz"};
inline constexpr Unit<Volume> cubic_feet{28.316846592e-3, "ft3"};
inline constexpr Unit<Volume> cubic_yards{764.554857984e-3, "yd3"};

inline constexpr Unit<Mass> kilograms{1.0, "kg"};
inline constexpr Unit<Mass> grams{0.001, "g"};
inline constexpr Unit<Mass> pounds{0.45359237, "lb"};
inline constexpr Unit<Mass> ounces{28.349523125e-3, "oz"};

inline constexpr Unit<Duration> seconds{1.0, "s"};
inline constexpr Unit<Duration> minutes{60.0, "min"};
inline constexpr Unit<Duration> hours{3600.0, "h"};
inline constexpr Unit<Duration> days{86400.0, "d"};

inline constexpr Unit<TemperatureDifference> kelvins{1.0, "K"};
inline constexpr Unit<TemperatureDifference> fahrenheit_degrees{1.0 / 1.8, "F deg"};

inline constexpr Unit<SpreadingRate> square_metres_per_litre{1000.0, "m2/L"};
inline constexpr Unit<SpreadingRate> square_feet_per_us_gallon{0.09290304 / 3.785411784e-3,
                                                               "ft2/US gal"};
inline constexpr Unit<ApplicationRate> litres_per_square_metre{0.001, "L/m2"};
inline constexpr Unit<ApplicationRate> us_gallons_per_square_foot{3.785411784e-3 / 0.09290304,
                                                                  "US gal/ft2"};
inline constexpr Unit<ArealMass> kilograms_per_square_metre{1.0, "kg/m2"};
inline constexpr Unit<Concentration> kilograms_per_cubic_metre{1.0, "kg/m3"};
inline constexpr Unit<Concentration> grams_per_litre{1.0, "g/L"};
inline constexpr Unit<Concentration> milligrams_per_litre{0.001, "mg/L"};
inline constexpr Unit<Flow> cubic_metres_per_hour{1.0 / 3600.0, "m3/h"};
inline constexpr Unit<Flow> litres_per_minute{0.001 / 60.0, "L/min"};
inline constexpr Unit<Flow> us_gallons_per_minute{3.785411784e-3 / 60.0, "US gal/min"};
inline constexpr Unit<WorkRate> square_metres_per_hour{1.0 / 3600.0, "m2/h"};
inline constexpr Unit<WorkRate> square_feet_per_hour{0.09290304 / 3600.0, "ft2/h"};
inline constexpr Unit<EdgeRate> metres_per_hour{1.0 / 3600.0, "m/h"};
// Speed of wind; the mile and the nautical mile are international, NIST Handbook 44 App. C.
inline constexpr Unit<Speed> metres_per_second{1.0, "m/s"};
inline constexpr Unit<Speed> kilometres_per_hour{1.0 / 3.6, "km/h"};
inline constexpr Unit<Speed> miles_per_hour{0.44704, "mph"};
inline constexpr Unit<Speed> knots{1852.0 / 3600.0, "kn"};

}  // namespace basinwright::units
