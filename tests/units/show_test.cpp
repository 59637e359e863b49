#include <cmath>
#include <random>
#include <string>
#include <variant>

#include "basinwright/units/show.hpp"
#include "support/catch.hpp"

using namespace basinwright::units;

// Converted values: worked by hand from the exact definitions of the units. Signs: the SI Brochure
// writes a blank between number and sign, also before the degree sign and the per cent sign (from
// memory).

TEST_CASE("quantities are shown in the unit of their system") {
  CHECK(show(square_metres(92.0), System::metric, 1) == "92.0 m\u00B2");
  CHECK(show(square_metres(92.0), System::us, 1) == "990.3 ft\u00B2");
  CHECK(show(square_metres(92.0), System::metric, 1, Signs::ascii) == "92.0 m2");
  CHECK(show(litres(20.0), System::metric, 1) == "20.0 L");
  CHECK(show(litres(20.0), System::us, 2) == "5.28 US gal");
  CHECK(show_bulk(cubic_metres(63.4), System::metric, 1) == "63.4 m\u00B3");
  // A gallon is finer than a tenth of a cubic metre: no pool is measured to a tenth of one.
  CHECK(show_bulk(cubic_metres(63.4), System::us, 1) == "16749 US gal");
  CHECK(show_bulk(cubic_metres(63.4), System::metric, 1, Signs::ascii) == "63.4 m3");
  CHECK(show(kilograms(25.0), System::metric, 0) == "25 kg");
  CHECK(show(kilograms(25.0), System::us, 1) == "55.1 lb");
  CHECK(show(celsius(18.0), System::metric, 1) == "18.0 \u00B0C");
  CHECK(show(celsius(18.0), System::us, 1) == "64.4 \u00B0F");
  CHECK(show(celsius(18.0), System::us, 1, Signs::ascii) == "64.4 F");
  CHECK(show(celsius(-0.01), System::metric, 1) == "0.0 \u00B0C");
  CHECK(show(kelvins(3.0), System::metric, 1) == "3.0 \u00B0C");
  CHECK(show(kelvins(3.0), System::us, 1) == "5.4 \u00B0F");
  CHECK(show_film(micrometres(250.0), System::metric, 0) == "250 \u00B5m");
  CHECK(show_film(micrometres(250.0), System::metric, 0, Signs::ascii) == "250 um");
  CHECK(show_film(micrometres(254.0), System::us, 0) == "10 mil");
  CHECK(show_in(millimetres(12.5), millimetres, 0) == "13 mm");
  CHECK(show(percent(12.0), 1) == "12.0 %");
}

TEST_CASE("rates are shown in the unit of their system") {
  CHECK(show(litres_per_minute(20.0), System::metric, 0) == "20 L/min");
  CHECK(show(litres_per_minute(20.0), System::us, 2) == "5.28 US gal/min");
  CHECK(show(square_metres_per_hour(25.0), System::metric, 0) == "25 m\u00B2/h");
  CHECK(show(square_metres_per_hour(25.0), System::us, 1) == "269.1 ft\u00B2/h");
  CHECK(show(metres_per_hour(30.0), System::us, 1) == "98.4 ft/h");
  CHECK(show(square_metres_per_litre(6.0), System::metric, 1) == "6.0 m\u00B2/L");
  CHECK(show(square_metres_per_litre(6.0), System::us, 1) == "244.5 ft\u00B2/US gal");
  CHECK(show_application(litres_per_square_metre(0.2), System::metric, 2) == "0.20 L/m\u00B2");
  CHECK(show_application(litres_per_square_metre(0.2), System::us, 4) == "0.0049 US gal/ft\u00B2");
  CHECK(show(grams_per_litre(120.0), 0) == "120 g/L");
  CHECK(show(square_metres_per_litre(6.0), System::metric, 1, Signs::ascii) == "6.0 m2/L");
}

TEST_CASE("lengths are shown in metres or in feet and inches") {
  CHECK(show(metres(9.2), System::metric, 2) == "9.20 m");
  CHECK(show(feet(30.5), System::us, 2) == "30 ft 6 in");
  CHECK(show(metres(9.2), System::us, 2) == "30 ft 2 in");
  CHECK(show(metres(9.2), System::us, 3) == "30 ft 2.2 in");
  CHECK(show(inches(11.96), System::us, 3) == "1 ft 0.0 in");
  CHECK(show(inches(11.4), System::us, 2) == "11 in");
  CHECK(show(feet(30), System::us, 0) == "30 ft 0 in");
  CHECK(show(feet(-6.5), System::us, 2) == "-6 ft 6 in");
  CHECK(show(inches(-0.4), System::us, 2) == "0 in");
  CHECK(show(metres(0), System::us, 2) == "0 in");
}

TEST_CASE("durations are shown in hours, whole days from two on as days") {
  CHECK(show(hours(20), 0) == "20 h");
  CHECK(show(hours(24), 0) == "24 h");
  CHECK(show(hours(36), 0) == "36 h");
  CHECK(show(days(7), 0) == "7 d");
  CHECK(show(hours(50), 0) == "50 h");
  CHECK(show(minutes(90), 1) == "1.5 h");
}

TEST_CASE("changing units leaves no noise behind that rounding could trip over") {
  for (int i = 0; i < 2000; ++i) {
    const double half = i + 0.5;  // exact in binary, so the text must be the next whole number
    CHECK(show_in(feet(half), feet, 0) == std::to_string(i + 1) + " ft");
    CHECK(show_in(us_gallons(half), us_gallons, 0) == std::to_string(i + 1) + " US gal");
    CHECK(show(fahrenheit(half), System::us, 0, Signs::ascii) == std::to_string(i + 1) + " F");
  }
}

namespace {

/// Reads what was shown and holds it against the value; half a last place may be lost.
template <class Q, class Reader>
void round_trip(const std::string& shown, Q value, double last_place, Reader reader) {
  INFO(shown);
  const auto parsed = reader(shown);
  REQUIRE(std::holds_alternative<Q>(parsed));
  const double off = std::abs(std::get<Q>(parsed).si() - value.si());
  CHECK(off <= last_place / 2 + 1e-12 * std::abs(value.si()));
}

}  // namespace

TEST_CASE("what is shown reads back") {
  std::mt19937 random(99);
  for (int i = 0; i < 400; ++i) {
    const double x = (static_cast<double>(random() % 2000001) - 1e6) / 997.0;
    for (const Signs signs : {Signs::utf8, Signs::ascii}) {
      for (const System s : {System::metric, System::us}) {
        const bool us = s == System::us;
        round_trip(show(metres(x), s, 3, signs), metres(x), us ? 0.00254 : 0.001, parse_length);
        round_trip(show(square_metres(x), s, 1, signs), square_metres(x), 0.1, parse_area);
        round_trip(show(litres(x), s, 2, signs), litres(x), us ? 4e-5 : 1e-5, parse_volume);
        round_trip(show_bulk(cubic_metres(x), s, 1, signs), cubic_metres(x), 0.1, parse_volume);
        round_trip(show(kilograms(x), s, 2, signs), kilograms(x), 0.01, parse_mass);
        const Temperature point = celsius(std::abs(x));
        round_trip(show(point, s, 1, signs), point, 0.1, parse_temperature);
        round_trip(show(kelvins(x), s, 1, signs), kelvins(x), 0.1, parse_temperature_difference);
        const Flow flow = litres_per_minute(x);
        round_trip(show(flow, s, 1, signs), flow, 0.4 * 1e-3 / 60, parse_flow);
        const WorkRate work = square_metres_per_hour(x);
        round_trip(show(work, s, 1, signs), work, 0.1 / 3600, parse_work_rate);
        const EdgeRate edge = metres_per_hour(x);
        round_trip(show(edge, s, 1, signs), edge, 0.1 / 3600, parse_edge_rate);
        const SpreadingRate spread = square_metres_per_litre(x);
        round_trip(show(spread, s, 2, signs), spread, 10.0, parse_spreading_rate);
        const ApplicationRate rate = litres_per_square_metre(x);
        round_trip(show_application(rate, s, 4, signs), rate, 0.0041, parse_application_rate);
      }
      round_trip(show(grams_per_litre(x), 2, signs), grams_per_litre(x), 0.01, parse_concentration);
    }
    round_trip(show(hours(x), 1), hours(x), 360.0, parse_duration);
    const auto share = parse_fraction(show(percent(x), 2));
    CHECK(std::abs(std::get<Fraction>(share).in_percent() - x) <= 0.005 + 1e-12 * std::abs(x));
  }
}
