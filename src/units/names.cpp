#include "names.hpp"

#include <array>

#include "basinwright/units/unit.hpp"

namespace basinwright::units {
namespace {

// Symbols whose capitals carry meaning in the SI (m against M, mg against Mg) begin with `=`.
constexpr std::array lengths{
    UnitName{metres.symbol, metres.factor, "=m|metre|metres|meter|meters"},
    UnitName{millimetres.symbol,
             millimetres.factor,
             "=mm|millimetre|millimetres|millimeter|millimeters"},
    UnitName{
        centimetres.symbol, centimetres.factor, "cm|centimetre|centimetres|centimeter|centimeters"},
    UnitName{feet.symbol, feet.factor, "ft|foot|feet|'|\u2032|\u2019"},
    UnitName{inches.symbol, inches.factor, "in|inch|inches|\"|''|\u2033|\u201D"},
    UnitName{yards.symbol, yards.factor, "yd|yds|yard|yards"},
    UnitName{mils.symbol, mils.factor, "mil|mils|thou"},
    UnitName{micrometres.symbol,
             micrometres.factor,
             "=um|=\u00B5m|=\u03BCm|micron|microns|micrometre|micrometres|micrometer|micrometers"},
    UnitName{"km", 1000.0, "km|kilometre|kilometres|kilometer|kilometers"},
    UnitName{"mi", 1609.344, "mi|mile|miles"}};

constexpr std::array areas{
    UnitName{square_metres.symbol,
             square_metres.factor,
             "=m2|sq m|square metre|square metres|square meter|square meters"},
    UnitName{square_feet.symbol, square_feet.factor, "ft2|sq ft|square foot|square feet|sf"},
    UnitName{"cm2", 1e-4, "cm2|sq cm|square centimetre|square centimetres"},
    UnitName{"yd2", 0.83612736, "yd2|sq yd|square yard|square yards"},
    UnitName{"in2", 0.00064516, "in2|sq in|square inch|square inches"}};

constexpr std::array volumes{
    UnitName{litres.symbol, litres.factor, "l|litre|litres|liter|liters"},
    UnitName{cubic_metres.symbol,
             cubic_metres.factor,
             "=m3|cu m|cubic metre|cubic metres|cubic meter|cubic meters"},
    UnitName{millilitres.symbol,
             millilitres.factor,
             "=mL|=ml|millilitre|millilitres|milliliter|milliliters"},
    UnitName{us_gallons.symbol,
             us_gallons.factor,
             "US gal|US gals|US gallon|US gallons|U.S. gal|U.S. gallon|U.S. gallons|gal US|gal "
             "(US)"},
    UnitName{imperial_gallons.symbol,
             imperial_gallons.factor,
             "imp gal|imp gals|imp gallon|imp gallons|imp. gal|imperial gal|imperial gallon|"
             "imperial gallons|UK gal|UK gallon|UK gallons"},
    UnitName{us_quarts.symbol, us_quarts.factor, "US qt|US quart|US quarts"},
    UnitName{us_pints.symbol, us_pints.factor, "US pt|US pint|US pints"},
    UnitName{
        us_fluid_ounces.symbol, us_fluid_ounces.factor, "US fl oz|US fluid ounce|US fluid ounces"},
    UnitName{"imp qt", 1.1365225e-3, "imp qt|imperial quart|imperial quarts|UK qt"},
    UnitName{"imp pt", 0.56826125e-3, "imp pt|imperial pint|imperial pints|UK pt"},
    UnitName{imperial_fluid_ounces.symbol,
             imperial_fluid_ounces.factor,
             "imp fl oz|imperial fluid ounce|imperial fluid ounces|UK fl oz"},
    UnitName{cubic_feet.symbol, cubic_feet.factor, "ft3|cu ft|cubic foot|cubic feet"},
    UnitName{cubic_yards.symbol, cubic_yards.factor, "yd3|cu yd|cubic yard|cubic yards"},
    UnitName{"kL", 1.0, "=kL|=kl|kilolitre|kilolitres|kiloliter|kiloliters"},
    UnitName{"gal", 0.0, "gal|gals|gallon|gallons", "US gal or imp gal"},
    UnitName{"qt", 0.0, "qt|quart|quarts", "US qt or imp qt"},
    UnitName{"pt", 0.0, "pt|pint|pints", "US pt or imp pt"},
    UnitName{"fl oz", 0.0, "fl oz|fluid ounce|fluid ounces", "US fl oz or imp fl oz"}};

constexpr std::array masses{
    UnitName{kilograms.symbol, kilograms.factor, "kg|kilogram|kilograms|kilo|kilos"},
    UnitName{grams.symbol, grams.factor, "=g|gram|grams|gramme|grammes"},
    UnitName{pounds.symbol, pounds.factor, "lb|lbs|pound|pounds"},
    UnitName{ounces.symbol, ounces.factor, "oz|ounce|ounces"},
    UnitName{"t", 1000.0, "=t|tonne|tonnes"},
    UnitName{"mg", 1e-6, "=mg|milligram|milligrams"},
    UnitName{"ton", 0.0, "ton|tons", "t or lb"}};

constexpr std::array durations{
    UnitName{hours.symbol, hours.factor, "h|hr|hrs|hour|hours"},
    UnitName{minutes.symbol, minutes.factor, "min|mins|minute|minutes"},
    UnitName{days.symbol, days.factor, "d|day|days"},
    UnitName{"wk", 604800.0, "wk|wks|week|weeks"},
    UnitName{seconds.symbol, seconds.factor, "=s|sec|secs|second|seconds"}};

constexpr std::array degree_names{
    UnitName{"C",
             1.0,
             "C|\u00B0 C|\u00BA C|\u2103|C\u00B0|deg C|C deg|degree C|degrees C|celsius|"
             "degrees celsius"},
    UnitName{"F",
             1.0 / 1.8,
             "F|\u00B0 F|\u00BA F|\u2109|F\u00B0|deg F|F deg|degree F|degrees F|fahrenheit|"
             "degrees fahrenheit"},
    UnitName{"K", 1.0, "=K|kelvin|kelvins"},
    UnitName{"deg", 0.0, "deg|degree|degrees|\u00B0|\u00BA", "C or F"}};

constexpr std::array shares{UnitName{"%", 1.0, "%|per cent|pct"}};

}  // namespace

std::span<const UnitName> names_of(Kind kind) {
  switch (kind) {
    case Kind::length:
      return lengths;
    case Kind::area:
      return areas;
    case Kind::volume:
      return volumes;
    case Kind::mass:
      return masses;
    case Kind::duration:
      return durations;
    case Kind::degree:
      return degree_names;
    case Kind::share:
      return shares;
    case Kind::none:
      break;
  }
  return {};
}

}  // namespace basinwright::units
