#include <cmath>
#include <limits>
#include <stdexcept>

#include "basinwright/coverage/pot_life.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using coverage::pot_life_at;
using coverage::PotLife;
using coverage::warmest_for;

namespace {

PotLife good_for(double hours, double celsius) {
  PotLife paint;
  paint.life.value = units::hours(hours);
  paint.at.value = units::celsius(celsius);
  return paint;
}

PotLife table() {
  PotLife paint;
  paint.table = {{units::celsius(10), units::minutes(120)},
                 {units::celsius(20), units::minutes(60)},
                 {units::celsius(30), units::minutes(15)}};
  return paint;
}

double minutes_at(const PotLife& paint, double celsius) {
  const auto life = pot_life_at(paint, units::celsius(celsius));
  REQUIRE(life.has_value());
  return life->in(units::minutes);
}

double warmest(const PotLife& paint, double minutes) {
  const auto temperature = warmest_for(paint, units::minutes(minutes));
  REQUIRE(temperature.has_value());
  return temperature->in(units::celsius);
}

}  // namespace

// UFGS 09971, 3.7.1.3: 4 h at 21 C, halved for 10 C more: 2.83 h at 26, 2.00 h at 31, 1 h at 41.
TEST_CASE("a pot life halves for every ten degrees more") {
  const PotLife paint = good_for(4, 21);
  CHECK(std::abs(minutes_at(paint, 26) / 60.0 - 2.83) <= 0.005);
  CHECK(std::abs(minutes_at(paint, 31) / 60.0 - 2.00) <= 1e-9);
  CHECK(std::abs(minutes_at(paint, 41) / 60.0 - 1.00) <= 1e-9);
  CHECK(minutes_at(paint, 21) == 240.0);
}

// The same section doubles it for 10 C less; here it is never lengthened: common practice, for the
// heat of a whole kit of mixed paint does not wait for the air.
TEST_CASE("a pot life is not lengthened by the cold") {
  const PotLife paint = good_for(4, 21);
  CHECK(minutes_at(paint, 16) == 240.0);
  CHECK(minutes_at(paint, -5) == 240.0);
}

// Row E2 of tests/reference/mixing.json: 60 min at 20 C are 34.460951 at 28 C.
TEST_CASE("an hour at 20 C is 34 minutes at 28 C") {
  CHECK(std::abs(minutes_at(good_for(1, 20), 28) - 34.460951) <= 1e-6);
}

// Straight on a logarithmic scale: halfway between 120 and 60 lies their geometric mean, and so on.
TEST_CASE("a table holds at its points and by logarithms between") {
  const PotLife paint = table();
  CHECK(minutes_at(paint, 10) == 120.0);
  CHECK(minutes_at(paint, 20) == 60.0);
  CHECK(minutes_at(paint, 30) == 15.0);
  CHECK(std::abs(minutes_at(paint, 15) - std::sqrt(120.0 * 60.0)) <= 1e-9);
  CHECK(std::abs(minutes_at(paint, 25) - 30.0) <= 1e-9);
  CHECK(std::abs(minutes_at(paint, 27.5) - std::sqrt(30.0 * 15.0)) <= 1e-9);
}

TEST_CASE("a table is not read beyond its ends") {
  CHECK_FALSE(pot_life_at(table(), units::celsius(9.99)).has_value());
  CHECK_FALSE(pot_life_at(table(), units::celsius(30.01)).has_value());
  CHECK_FALSE(pot_life_at(table(), units::celsius(std::nan(""))).has_value());
}

// 39.92 F is 4.4 C and 111.92 F is 44.4 C, but in doubles each is a last bit warmer.
TEST_CASE("a last bit of a temperature is not beyond the ends of a table") {
  PotLife paint = table();
  paint.table.front().temperature = units::fahrenheit(39.92);
  paint.table.back().temperature = units::celsius(44.4);
  REQUIRE(units::fahrenheit(39.92) > units::celsius(4.4));
  REQUIRE(units::fahrenheit(111.92) > units::celsius(44.4));
  CHECK(pot_life_at(paint, units::celsius(4.4)) == units::minutes(120));
  CHECK(pot_life_at(paint, units::fahrenheit(111.92)) == units::minutes(15));
}

// The inverse of the values above.
TEST_CASE("the warmest paint for a time is the inverse") {
  CHECK(std::abs(warmest(good_for(4, 21), 120) - 31.0) <= 1e-9);
  CHECK(std::abs(warmest(good_for(4, 21), 240) - 21.0) <= 1e-9);
  CHECK_FALSE(warmest_for(good_for(4, 21), units::minutes(241)).has_value());
  CHECK(std::abs(warmest(table(), 30) - 25.0) <= 1e-9);
  CHECK(std::abs(warmest(table(), 60) - 20.0) <= 1e-9);
  CHECK(std::abs(warmest(table(), 120) - 10.0) <= 1e-9);
  CHECK(warmest(table(), 10) == 30.0);
  CHECK_FALSE(warmest_for(table(), units::minutes(121)).has_value());
}

TEST_CASE("a table with a flat piece is good to the warm end of it") {
  PotLife paint = table();
  paint.table[1].life = units::minutes(120);
  CHECK(warmest(paint, 120) == 20.0);
  CHECK(minutes_at(paint, 15) == 120.0);
}

TEST_CASE("pot lives without sense are refused") {
  const auto at = units::celsius(20);
  CHECK_THROWS_AS(pot_life_at(PotLife(), at), std::invalid_argument);
  CHECK_THROWS_AS(pot_life_at(good_for(1, 20), units::celsius(std::nan(""))),
                  std::invalid_argument);
  CHECK_THROWS_AS(warmest_for(table(), units::Duration()), std::invalid_argument);
  PotLife backwards = good_for(1, 20);
  backwards.halved_by.value = units::kelvins(-10);
  CHECK_THROWS_AS(pot_life_at(backwards, at), std::invalid_argument);
  PotLife lone = table();
  lone.table.resize(1);
  CHECK_THROWS_AS(pot_life_at(lone, at), std::invalid_argument);
  PotLife unordered = table();
  std::swap(unordered.table[0], unordered.table[1]);
  CHECK_THROWS_AS(pot_life_at(unordered, at), std::invalid_argument);
  PotLife twice = table();
  twice.table[1].temperature = twice.table[0].temperature;
  CHECK_THROWS_AS(pot_life_at(twice, at), std::invalid_argument);
  PotLife growing = table();
  growing.table[2].life = units::minutes(61);
  CHECK_THROWS_AS(warmest_for(growing, units::minutes(30)), std::invalid_argument);
  PotLife endless = table();
  endless.table[0].life = units::minutes(std::numeric_limits<double>::infinity());
  CHECK_THROWS_AS(pot_life_at(endless, at), std::invalid_argument);
}
