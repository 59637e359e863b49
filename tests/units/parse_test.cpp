#include <cmath>
#include <string>
#include <variant>
#include <vector>

#include "basinwright/units/parse.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

using namespace basinwright::units;

// Conversion factors: the exact definitions (foot 0.3048 m, pound 0.45359237 kg, US gallon 231
// cubic inches, imperial gallon 4.54609 L), as in NIST Handbook 44, appendix C; from memory. The
// test with GNU units holds the same tables against that program.

namespace {

template <class T>
double si(const Parsed<T>& parsed) {
  const auto* error = std::get_if<ParseError>(&parsed);
  INFO((error != nullptr ? error->reason : std::string("read")));
  REQUIRE(error == nullptr);
  return std::get<T>(parsed).si();
}

struct Row {
  std::string text;
  double expected;
};

template <class Reader>
void check_all(const std::vector<Row>& rows, Reader reader) {
  for (const Row& row : rows) {
    INFO(row.text);
    CHECK(si(reader(row.text)) == Approx(row.expected).epsilon(1e-14));
  }
}

}  // namespace

TEST_CASE("numbers are plain decimals") {
  const std::vector<Row> rows{{"0", 0},
                              {"-12.5", -12.5},
                              {"+3", 3},
                              {"1e3", 1000},
                              {".5", 0.5},
                              {"1.5E-2", 0.015},
                              {"5.", 5},
                              {"007", 7}};
  for (const Row& row : rows) {
    INFO(row.text);
    CHECK(std::get<double>(parse_number(row.text)) == row.expected);
  }
  CHECK_FALSE(std::signbit(std::get<double>(parse_number("-0"))));
}

TEST_CASE("lengths") {
  check_all(
      {{"9.2 m", 9.2},      {"9.2m", 9.2},           {"  150 mm\t", 0.15},    {"15 cm", 0.15},
       {"250 um", 250e-6},  {"250 \u00B5m", 250e-6}, {"250 \u03BCm", 250e-6}, {"6 ft", 1.8288},
       {"6'", 1.8288},      {"6\u2032", 1.8288},     {"12 in", 0.3048},       {"12\"", 0.3048},
       {"12''", 0.3048},    {"6 FT", 1.8288},        {"6 Feet", 1.8288},      {"10 mil", 254e-6},
       {"2 yd", 1.8288},    {"1 mi", 1609.344},      {"2 km", 2000},          {"9.2 metres", 9.2},
       {"9.2 Meters", 9.2}, {"9.2\u00A0m", 9.2},     {"-1.5 m", -1.5}},
      parse_length);
}

TEST_CASE("zero has no sign") {
  CHECK_FALSE(std::signbit(si(parse_length("-0 m"))));
  CHECK_FALSE(std::signbit(si(parse_area("-0.0 m2"))));
}

TEST_CASE("lengths in several parts") {
  check_all({{"30 ft 6 in", 9.2964},
             {"30' 6\"", 9.2964},
             {"30'6\"", 9.2964},
             {"30ft6in", 9.2964},
             {"30\u2032 6\u2033", 9.2964},
             {"30\u2019 6\u201D", 9.2964},
             {"9 m 20 cm", 9.2},
             {"1 yd 1 ft 1 in", 1.2446},
             {"-6 ft 6 in", -1.9812},
             {"5 ft 6.5 in", 1.6891},
             {"6 ft .5 in", 1.8415}},
            parse_length);
}

TEST_CASE("areas") {
  check_all({{"92 m2", 92},
             {"92 m^2", 92},
             {"92 m\u00B2", 92},
             {"92 sq m", 92},
             {"92sqm", 92},
             {"92 square metres", 92},
             {"100 ft2", 9.290304},
             {"100 sq ft", 9.290304},
             {"100 SQ FT", 9.290304},
             {"100 ft\u00B2", 9.290304},
             {"100 square feet", 9.290304},
             {"9 ft^2", 0.83612736},
             {"1 yd2", 0.83612736},
             {"1 in2", 6.4516e-4},
             {"10000 cm2", 1}},
            parse_area);
}

TEST_CASE("volumes") {
  check_all({{"20 L", 0.02},
             {"20 l", 0.02},
             {"20 litres", 0.02},
             {"63.4 m3", 63.4},
             {"63.4 m\u00B3", 63.4},
             {"63.4 m^3", 63.4},
             {"500 mL", 5e-4},
             {"500 ml", 5e-4},
             {"1.5 kL", 1.5},
             {"5 US gal", 18.92705892e-3},
             {"5 us gallons", 18.92705892e-3},
             {"5 U.S. gal", 18.92705892e-3},
             {"5 gal (US)", 18.92705892e-3},
             {"2 imp gal", 9.09218e-3},
             {"2 imperial gallons", 9.09218e-3},
             {"2 UK gal", 9.09218e-3},
             {"1 US qt", 0.946352946e-3},
             {"1 US pt", 0.473176473e-3},
             {"1 US fl oz", 29.5735295625e-6},
             {"1 imp fl oz", 28.4130625e-6},
             {"1 imp pt", 0.56826125e-3},
             {"1 ft3", 28.316846592e-3},
             {"1 cu ft", 28.316846592e-3},
             {"1 yd3", 0.764554857984},
             {"1 US gal 2 US qt", 5.678117676e-3}},
            parse_volume);
}

TEST_CASE("masses") {
  check_all({{"25 kg", 25},
             {"25 KG", 25},
             {"500 g", 0.5},
             {"10 lb", 4.5359237},
             {"10 lbs", 4.5359237},
             {"16 oz", 0.45359237},
             {"16 OZ", 0.45359237},
             {"1 lb 8 oz", 0.680388555},
             {"2 t", 2000},
             {"2 tonnes", 2000},
             {"5 mg", 5e-6}},
            parse_mass);
}

TEST_CASE("durations") {
  check_all({{"24 h", 86400},
             {"7 d", 604800},
             {"1 h 30 min", 5400},
             {"90 min", 5400},
             {"2 weeks", 1209600},
             {"1 day 12 hours", 129600},
             {"45 s", 45},
             {"24 Hours", 86400}},
            parse_duration);
}

TEST_CASE("temperatures are points") {
  // NIST SP 811, B.8 (from memory): t/C = (t/F - 32)/1.8 and T/K = t/C + 273.15.
  check_all({{"18 C", 291.15},
             {"18\u00B0C", 291.15},
             {"18 \u00B0C", 291.15},
             {"18 \u00BAC", 291.15},
             {"18 deg C", 291.15},
             {"18 degrees Celsius", 291.15},
             {"18 c", 291.15},
             {"212 F", 373.15},
             {"32\u00B0F", 273.15},
             {"-40 F", 233.15},
             {"-40 C", 233.15},
             {"64 F", 273.15 + 32 / 1.8},
             {"0 C", 273.15},
             {"-273.15 C", 0},
             {"291.15 K", 291.15}},
            parse_temperature);
}

TEST_CASE("temperature differences") {
  check_all({{"3 K", 3}, {"3 C", 3}, {"3\u00B0C", 3}, {"5.4 F", 3}, {"5.4 F deg", 3}, {"-9 F", -5}},
            parse_temperature_difference);
}

TEST_CASE("rates are two units with a bar") {
  check_all({{"20 L/min", 20e-3 / 60},
             {"20 l / min", 20e-3 / 60},
             {"20 litres per minute", 20e-3 / 60},
             {"5 US gal/min", 18.92705892e-3 / 60},
             {"3.6 m3/h", 1e-3},
             {"3.6 m\u00B3/hr", 1e-3}},
            parse_flow);
  check_all({{"25 m2/h", 25.0 / 3600},
             {"25 m\u00B2/h", 25.0 / 3600},
             {"100 ft2/h", 9.290304 / 3600},
             {"100 sq ft per hour", 9.290304 / 3600},
             {"240 m2/d", 240.0 / 86400}},
            parse_work_rate);
  check_all({{"36 m/h", 0.01}, {"100 ft/h", 30.48 / 3600}}, parse_edge_rate);
  check_all({{"8 m/s", 8.0}, {"36 km/h", 10.0}, {"10 mi/h", 4.4704}}, parse_speed);
  check_all({{"22.5 m2/L", 22500},
             {"22.5 m\u00B2/l", 22500},
             {"100 ft2/US gal", 9.290304 / 3.785411784e-3}},
            parse_spreading_rate);
  check_all({{"0.2 L/m2", 0.2e-3},
             {"200 mL/m\u00B2", 0.2e-3},
             {"1 US gal/ft2", 3.785411784e-3 / 0.09290304}},
            parse_application_rate);
  check_all({{"120 g/L", 120},
             {"1500 mg/L", 1.5},
             {"1.2 kg/L", 1200},
             {"998 kg/m3", 998},
             {"1 lb/US gal", 0.45359237 / 3.785411784e-3}},
            parse_concentration);
}

TEST_CASE("shares are percentages") {
  for (const std::string text : {"12 %", "12%", "12 percent", "12 per cent", "12 pct"}) {
    INFO(text);
    CHECK(std::get<Fraction>(parse_fraction(text)).share() == 0.12);
  }
  CHECK(std::get<Fraction>(parse_fraction("-5 %")).share() == -0.05);
}
