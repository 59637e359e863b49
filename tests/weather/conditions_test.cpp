#include <cmath>

#include "basinwright/weather/conditions.hpp"
#include "making.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace weather_making;
using weather::Conditions;
using weather::Quality;
using weather::Record;

TEST_CASE("dew point and humidity follow from each other") {
  Record record = fine_days("2027-05-10", 1);
  weather::Hour by_dew = fine();
  by_dew.humidity.reset();
  by_dew.dew_point = {units::celsius(12), Quality::observed};
  record.put(hour("2027-05-11T00:00"), by_dew);
  const Conditions c(record);
  // WMO pair: 20 C and 50 % give 9.255 C; a library of moist air says 59.97 % for 20 and 12 C.
  CHECK(c.at(hour("2027-05-10T08:00")).dew_point->value.in(units::celsius) ==
        Approx(9.255).margin(5e-4));
  const auto& derived = c.at(hour("2027-05-11T00:00"));
  CHECK(derived.humidity->value.in_percent() == Approx(59.97).margin(0.2));
  CHECK(derived.humidity->quality == Quality::forecast);  // the worse of air and dew point
}

TEST_CASE("climatology inside the covered span is not known") {
  Record record = fine_days("2027-05-10", 1);
  weather::Hour partly = fine();
  partly.rain.reset();
  record.put(hour("2027-05-11T00:00"), partly);
  weather::Hour usual = fine(Quality::climatology);
  record.put(hour("2027-05-11T00:00"), usual);
  record.put(hour("2027-05-11T01:00"), usual);
  const Conditions c(record);
  CHECK_FALSE(c.at(hour("2027-05-11T00:00")).rain.has_value());
  CHECK(c.at(hour("2027-05-11T01:00")).rain.has_value());
  CHECK_FALSE(c.at(hour("2027-05-11T01:00")).covered);
  CHECK_FALSE(c.at(hour("2028-01-01T00:00")).air.has_value());
}

// What is unknown within the covered span closes, so whatever a record says of an hour covers it.
TEST_CASE("one known quantity covers an hour, whichever it is") {
  const auto covered = [](const weather::Hour& known) {
    Record record;
    record.put(hour("2027-05-10T08:00"), known);
    CHECK(record.until() - record.from() == 1);
    return record.covered_until() - record.covered_from();
  };
  CHECK(covered({}) == 0);
  CHECK(covered(fine(Quality::climatology)) == 0);
  weather::Hour one;
  one.air = {units::celsius(20), Quality::forecast};
  CHECK(covered(one) == 1);
  one = {};
  one.dew_point = {units::celsius(9), Quality::forecast};
  CHECK(covered(one) == 1);
  one = {};
  one.shell = {units::celsius(18), Quality::observed};
  CHECK(covered(one) == 1);
  one = {};
  one.humidity = {0.5, Quality::forecast};
  CHECK(covered(one) == 1);
  one = {};
  one.rain = {units::millimetres(1), Quality::forecast};
  CHECK(covered(one) == 1);
  one = {};
  one.wind = {units::metres_per_second(2), Quality::forecast};
  CHECK(covered(one) == 1);
}

TEST_CASE("the shell follows a step of the air by the exponential law") {
  // A day at 10 C, then 20 C: after n hours 20 - 10 exp(-n / 15), any text on first-order lags.
  Record record;
  const auto first = hour("2027-05-10T00:00");
  for (int h = 0; h < 72; ++h) {
    weather::Hour now = fine();
    now.air->value = units::celsius(h < 24 ? 10 : 20);
    record.put(first + h, now);
  }
  const Conditions c(record);
  CHECK(c.at(first + 23).shell->value.in(units::celsius) == Approx(10).margin(1e-9));
  for (const int n : {1, 15, 30, 48}) {
    INFO(n);
    CHECK(c.at(first + 23 + n).shell->value.in(units::celsius) ==
          Approx(20 - 10 * std::exp(-n / 15.0)).margin(1e-9));
  }
  CHECK(c.at(first).shell_estimated);
  CHECK(c.at(first).shell->quality == Quality::forecast);
}

TEST_CASE("a measured shell is taken as it is and carried on from") {
  Record record = fine_days("2027-05-10", 2);
  weather::Hour measured;
  measured.shell = {units::celsius(14), Quality::observed};
  record.put(hour("2027-05-10T09:00"), measured);
  const Conditions c(record);
  const auto& at_nine = c.at(hour("2027-05-10T09:00"));
  CHECK(at_nine.shell->value.in(units::celsius) == Approx(14).margin(1e-9));
  CHECK_FALSE(at_nine.shell_estimated);
  CHECK(at_nine.shell->quality == Quality::observed);
  CHECK(c.at(hour("2027-05-10T10:00")).shell->value.in(units::celsius) ==
        Approx(20 - 6 * std::exp(-1 / 15.0)).margin(1e-9));
}

TEST_CASE("an hour without air has no shell, and a day without air begins anew") {
  Record record = fine_days("2027-05-10", 1);
  const auto gap = hour("2027-05-11T00:00");
  weather::Hour cold = fine();
  cold.air->value = units::celsius(5);
  for (int h = 30; h < 60; ++h) record.put(gap + h, cold);
  const Conditions c(record);
  CHECK_FALSE(c.at(gap + 3).shell.has_value());
  CHECK(c.at(gap + 3).covered);
  CHECK(c.at(gap + 30).shell->value.in(units::celsius) == Approx(5).margin(1e-9));
}

TEST_CASE("the mean of a day needs most of its hours") {
  Record record;
  const auto first = hour("2027-05-10T00:00");
  for (int h = 0; h < 24; ++h) {
    weather::Hour now = fine();
    now.air->value = units::celsius(h);
    if (h != 2) record.put(first + h, now);
  }
  for (int h = 24; h < 43; ++h) record.put(first + h, fine());
  const Conditions c(record);
  // 0 to 23 without 2: (276 - 2) / 23.
  CHECK(c.day_mean(*dates::parse_date("2027-05-10"))->value.in(units::celsius) ==
        Approx(274.0 / 23).margin(1e-9));
  CHECK_FALSE(c.day_mean(*dates::parse_date("2027-05-11")).has_value());
}
