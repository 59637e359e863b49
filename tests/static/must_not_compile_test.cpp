#include <concepts>
#include <cstdint>

#include "basinwright/money/money.hpp"
#include "basinwright/units/bare.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"

// Sums that make no sense must not compile. Outside source: the rules of quantity calculus as in
// ISO 80000-1 (only quantities of one kind add up; products and quotients form new kinds) and, for
// money, the rule of this house that no binary fraction touches it.

using namespace basinwright::units;
using basinwright::money::Money;
using basinwright::money::Percentage;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Subtractable = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Multipliable = requires(A a, B b) {
  a* b;
};
template <class A, class B>
concept Divisible = requires(A a, B b) {
  a / b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a < b;
};
template <class Q, class U>
concept ReadableIn = requires(Q q, U unit) {
  q.in(unit);
};
template <class To, class From>
concept Settable = requires(To to, From from) {
  to = from;
};
template <class To, class From>
concept Growing = requires(To to, From from) {
  to += from;
};
template <class T>
concept MinorFrom = requires(T count) {
  Money::of_minor(count);
};

using AreaUnit = Unit<Area>;
using VolumeUnit = Unit<Volume>;
using LengthUnit = Unit<Length>;

// Quantities of different kinds do not add up, compare or replace one another.
static_assert(Addable<Length, Length> && Subtractable<Area, Area> && Comparable<Mass, Mass>);
static_assert(!Addable<Length, Area> && !Addable<Area, Volume> && !Addable<Mass, Volume>);
static_assert(!Subtractable<Duration, Length> && !Subtractable<Volume, Area>);
static_assert(!Comparable<Length, Area> && !Comparable<Duration, TemperatureDifference>);
static_assert(!Settable<Area, Length> && !Settable<Volume, Mass> && Settable<Area, Area>);
static_assert(!Growing<Area, Length> && Growing<Area, Area>);
static_assert(!std::equality_comparable_with<Length, Area>);

// A bare number is no quantity and a quantity is no bare number.
static_assert(!Addable<Length, double> && !Addable<double, Area> && !Comparable<Mass, double>);
static_assert(!Settable<Length, double> && !Settable<double, Length>);
static_assert(!std::convertible_to<double, Duration> && !std::convertible_to<Duration, double>);
static_assert(!std::constructible_from<Length, double>);
static_assert(Multipliable<Length, double> && Multipliable<double, Length>);
static_assert(Divisible<Length, double> && !Growing<Length, double>);

// Products and quotients are new kinds.
static_assert(std::same_as<decltype(Length{} * Length{}), Area>);
static_assert(std::same_as<decltype(Area{} * Length{}), Volume>);
static_assert(std::same_as<decltype(Volume{} / Area{}), ApplicationRate>);
static_assert(std::same_as<decltype(Area{} / Volume{}), SpreadingRate>);
static_assert(std::same_as<decltype(Area{} / SpreadingRate{}), Volume>);
static_assert(std::same_as<decltype(Volume{} / Flow{}), Duration>);
static_assert(std::same_as<decltype(Area{} / WorkRate{}), Duration>);
static_assert(std::same_as<decltype(Concentration{} * Volume{}), Mass>);
static_assert(std::same_as<decltype(Length{} / Length{}), double>);

// A quantity is read only through a unit of its own kind.
static_assert(ReadableIn<Volume, VolumeUnit> && ReadableIn<Area, AreaUnit>);
static_assert(!ReadableIn<Volume, AreaUnit> && !ReadableIn<Area, LengthUnit>);
static_assert(!ReadableIn<Length, TemperatureScale> && !ReadableIn<Length, double>);

// Temperatures are points.
static_assert(!Addable<Temperature, Temperature>);
static_assert(std::same_as<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(Addable<Temperature, TemperatureDifference>);
static_assert(Subtractable<Temperature, TemperatureDifference>);
static_assert(!Addable<Temperature, double> && !Multipliable<Temperature, double>);
static_assert(!Comparable<Temperature, TemperatureDifference> && !Comparable<Temperature, double>);
static_assert(!Subtractable<TemperatureDifference, Temperature>);
static_assert(!ReadableIn<Temperature, Unit<TemperatureDifference>>);
static_assert(!ReadableIn<TemperatureDifference, TemperatureScale>);

// Shares and parts per million are neither numbers nor one another.
static_assert(!Addable<Fraction, double> && !Multipliable<Fraction, double>);
static_assert(!Addable<Fraction, Fraction> && !Addable<Fraction, PartsPerMillion>);
static_assert(!Settable<Fraction, double> && !Settable<Fraction, PartsPerMillion>);
static_assert(!Comparable<Fraction, double> && !Comparable<Fraction, PartsPerMillion>);
static_assert(!Multipliable<Area, Fraction> && Comparable<Fraction, Fraction>);
static_assert(!Settable<double, Fraction> && !Settable<double, PartsPerMillion>);

// Money takes whole counts only and never meets a binary fraction.
static_assert(Addable<Money, Money> && Subtractable<Money, Money> && Growing<Money, Money>);
static_assert(Multipliable<Money, std::int64_t> && Multipliable<Money, int>);
static_assert(!Addable<Money, double> && !Addable<Money, int> && !Subtractable<double, Money>);
static_assert(!Multipliable<Money, Money> && !Multipliable<Money, double>);
static_assert(!Multipliable<Money, float> && !Multipliable<double, Money>);
static_assert(!Divisible<Money, Money> && !Divisible<Money, int> && !Divisible<Money, double>);
static_assert(!Multipliable<Money, Percentage> && !Addable<Money, Percentage>);
static_assert(!Settable<Money, std::int64_t> && !Settable<double, Money>);
static_assert(!std::constructible_from<Money, std::int64_t>);
static_assert(MinorFrom<std::int64_t> && !MinorFrom<double> && !MinorFrom<float>);
static_assert(!Comparable<Money, int> && !Comparable<Money, double> && Comparable<Money, Money>);
static_assert(!Multipliable<Money, Fraction> && !Multipliable<Money, Area>);

}  // namespace

TEST_CASE("quantities of one kind add up and others do not") {
  CHECK_FALSE(Addable<Length, Area>);
  CHECK_FALSE(Comparable<Length, Area>);
  CHECK((metres(1.0) + feet(1.0)).si() == Approx(1.3048));
  CHECK((metres(2.0) * metres(3.0)).in(square_metres) == 6.0);
}

TEST_CASE("bare numbers only scale quantities") {
  CHECK_FALSE(Addable<Length, double>);
  CHECK_FALSE(Settable<Length, double>);
  CHECK((2.0 * metres(3.0)).in(metres) == 6.0);
  CHECK(metres(3.0) / metres(1.5) == 2.0);
}

TEST_CASE("products and quotients form the quantities of the trade") {
  // 90 m2 at 6 m2/L takes 15 L; 60 m3 at 20 L/min takes 50 h: worked by hand.
  CHECK((square_metres(90.0) / square_metres_per_litre(6.0)).in(litres) == Approx(15.0));
  CHECK((cubic_metres(60.0) / litres_per_minute(20.0)).in(hours) == Approx(50.0));
}

TEST_CASE("a quantity is read only in its own units") {
  CHECK_FALSE(ReadableIn<Volume, AreaUnit>);
  CHECK_FALSE(ReadableIn<Area, LengthUnit>);
  CHECK(cubic_metres(1.0).in(litres) == Approx(1000.0));
}

TEST_CASE("temperatures are points and their differences are not") {
  CHECK_FALSE(Addable<Temperature, Temperature>);
  CHECK_FALSE(Multipliable<Temperature, double>);
  CHECK((celsius(18.0) - celsius(15.0)).in(kelvins) == Approx(3.0));
  CHECK((celsius(15.0) + kelvins(3.0)).in(celsius) == Approx(18.0));
  CHECK((fahrenheit(212.0) - fahrenheit(32.0)).in(kelvins) == Approx(100.0));
}

TEST_CASE("shares do not mix with numbers or parts per million") {
  CHECK_FALSE(Addable<Fraction, double>);
  CHECK_FALSE(Comparable<Fraction, PartsPerMillion>);
  CHECK(percent(12.0) == fraction(0.12));
  CHECK(parts_per_million(3.0).count() == 3.0);
}

TEST_CASE("money meets no binary fraction") {
  CHECK_FALSE(Addable<Money, double>);
  CHECK_FALSE(Multipliable<Money, double>);
  CHECK_FALSE(Multipliable<Money, Money>);
  CHECK_FALSE(MinorFrom<double>);
  CHECK((Money::of_minor(1005) * 3).minor() == 3015);
}

TEST_CASE("bare numbers take the unit of the system they stand in") {
  // The job file's contract: metric m, m2, L, kg, C; us ft, ft2, US gal, lb, F.
  CHECK(bare_length(2.0, System::metric) == metres(2.0));
  CHECK(bare_length(2.0, System::us) == feet(2.0));
  CHECK(bare_area(2.0, System::us) == square_feet(2.0));
  CHECK(bare_volume(2.0, System::us) == us_gallons(2.0));
  CHECK(bare_mass(2.0, System::us) == pounds(2.0));
  CHECK(bare_temperature(64.0, System::us) == fahrenheit(64.0));
  CHECK(bare_temperature(18.0, System::metric) == celsius(18.0));
}
