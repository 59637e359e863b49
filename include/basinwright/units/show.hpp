// Quantities as people read them: rounded once, with the unit of their system.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/units/parse.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::units {

/// How unit signs are spelled: m² and °C, or m2 and C.
enum class Signs { utf8, ascii };

/// `value` with exactly `decimals` decimals: the shortest decimal that means `value` is rounded
/// half away from zero (1.005 gives 1.01), and zero has no sign.
/// @throws std::invalid_argument unless `value` is finite and `decimals` is 0 to 30
[[nodiscard]] std::string fixed(double value, int decimals);

/// A number and a unit symbol of unit.hpp: "92.0 m²". Noise beyond 15 significant digits, which
/// changing units leaves behind, is dropped before rounding.
[[nodiscard]] std::string with_unit(double value,
                                    std::string_view symbol,
                                    int decimals,
                                    Signs signs = Signs::utf8);

/// A quantity in a chosen unit: `show_in(volume, cubic_metres, 1)` gives "63.4 m³".
template <class Q>
[[nodiscard]] std::string show_in(Q quantity,
                                  const Unit<Q>& unit,
                                  int decimals,
                                  Signs signs = Signs::utf8) {
  return with_unit(quantity.in(unit), unit.symbol, decimals, signs);
}

/// A length as "9.20 m" or, in feet and inches, "30 ft 2 in". Inches show two decimals fewer than
/// metres would, for an inch is about as fine as two decimals of a metre.
[[nodiscard]] std::string show(Length, System, int decimals, Signs = Signs::utf8);
/// A film thickness or crack width: "250 µm" or "10 mil".
[[nodiscard]] std::string show_film(Length, System, int decimals, Signs = Signs::utf8);
/// "92.0 m²" or "990.3 ft²".
[[nodiscard]] std::string show(Area, System, int decimals, Signs = Signs::utf8);
/// "20.0 L" or "5.3 US gal".
[[nodiscard]] std::string show(Volume, System, int decimals, Signs = Signs::utf8);
/// Large volumes: "63.4 m³" or "16749 US gal", as exact as so many decimals of a cubic metre.
[[nodiscard]] std::string show_bulk(Volume, System, int decimals, Signs = Signs::utf8);
/// "25.0 kg" or "55.1 lb".
[[nodiscard]] std::string show(Mass, System, int decimals, Signs = Signs::utf8);
/// "18.0 °C" or "64.4 °F".
[[nodiscard]] std::string show(Temperature, System, int decimals, Signs = Signs::utf8);
/// A difference of temperatures: "3.0 °C" or "5.4 °F".
[[nodiscard]] std::string show(TemperatureDifference, System, int decimals, Signs = Signs::utf8);
/// "20.0 L/min" or "5.3 US gal/min".
[[nodiscard]] std::string show(Flow, System, int decimals, Signs = Signs::utf8);
/// "25.0 m²/h" or "269.1 ft²/h".
[[nodiscard]] std::string show(WorkRate, System, int decimals, Signs = Signs::utf8);
/// "30.0 m/h" or "98.4 ft/h".
[[nodiscard]] std::string show(EdgeRate, System, int decimals, Signs = Signs::utf8);
/// "6.0 m²/L" or "244.5 ft²/US gal".
[[nodiscard]] std::string show(SpreadingRate, System, int decimals, Signs = Signs::utf8);
/// "0.20 L/m²" or "0.005 US gal/ft²".
[[nodiscard]] std::string show_application(ApplicationRate,
                                           System,
                                           int decimals,
                                           Signs = Signs::utf8);
/// "120 g/L" in both systems.
[[nodiscard]] std::string show(Concentration, int decimals, Signs = Signs::utf8);
/// "20 h"; whole days from two on as "7 d".
[[nodiscard]] std::string show(Duration, int decimals);
/// "12.0 %".
[[nodiscard]] std::string show(Fraction, int decimals);

}  // namespace basinwright::units
