// Hours made from days: what the day says must come back out of its hours.
#include <cmath>
#include <set>

#include "basinwright/weather/daily.hpp"
#include "support/catch.hpp"
#include "weather/making.hpp"

using namespace basinwright;
using weather::Day;

namespace {

std::vector<Day> days(int count, double mm = 0.0) {
  std::vector<Day> out;
  for (int d = 0; d < count; ++d) {
    Day day;
    day.date = dates::parse_date("2015-06-01").value() + std::chrono::days{d};
    day.lowest = units::celsius(10 + d);
    day.highest = units::celsius(22 + d);
    day.rain = units::millimetres(mm);
    out.push_back(day);
  }
  return out;
}

std::vector<weather::MadeHour> made(const std::vector<Day>& days) {
  return weather::hours_of(days, weather::Quality::observed);
}
double air(const weather::MadeHour& h) {
  return h.known.air->value.in(units::celsius);
}

}  // namespace

TEST_CASE("the lowest comes at six, the highest at three, half way between half way up") {
  const auto hours = made(days(3));
  REQUIRE(hours.size() == 72);
  CHECK(hours[0].at == weather_making::hour("2015-06-01T00:00"));
  CHECK(air(hours[24 + 6]) == Approx(11.0));
  CHECK(air(hours[24 + 15]) == Approx(23.0));
  // From 22 C at 15:00 to 11 C at 06:00: 15 hours, half a cosine.
  CHECK(air(hours[24]) ==
        Approx(22.0 - 11.0 * (1.0 - std::cos(std::acos(-1.0) * 9.0 / 15.0)) / 2.0));
  CHECK(air(hours[24 + 3]) ==
        Approx(22.0 - 11.0 * (1.0 - std::cos(std::acos(-1.0) * 12.0 / 15.0)) / 2.0));
  for (std::size_t h = 24; h < 48; ++h) {
    CHECK(air(hours[h]) >= 11.0 - 1e-9);
    CHECK(air(hours[h]) <= 23.0 + 1e-9);
    CHECK(hours[h].known.dew_point->value <= hours[h].known.air->value);
  }
}

TEST_CASE("the rain of a day falls whole, in one shower as long as its amount asks") {
  for (const double mm : {0.1, 0.25, 1.0, 6.3, 40.0, 150.0}) {
    for (const auto& day : days(40, mm)) {
      const auto hours = made({day});
      double sum = 0.0;
      int wet = 0;
      int begins = 0;
      for (std::size_t h = 0; h < 24; ++h) {
        const double fell = hours[h].known.rain->value.in(units::millimetres);
        sum += fell;
        wet += fell > 0.0 ? 1 : 0;
        begins += fell > 0.0 && (h == 0 || !(hours[h - 1].known.rain->value > units::Length()));
      }
      CHECK(sum == Approx(mm));
      CHECK(begins == 1);
      CHECK(wet <= 18);
      // No hour below what counts as rain.
      CHECK(mm / wet >= 0.1 - 1e-9);
      if (mm == 1.0) CHECK(wet == 2);
    }
  }
}

TEST_CASE("a day is always made alike, and not every day alike") {
  const auto one = days(30, 2.0);
  std::set<std::size_t> starts;
  for (const auto& day : one) {
    const auto a = made({day});
    const auto b = made(one);
    for (std::size_t h = 0; h < 24; ++h) {
      const auto offset = static_cast<std::size_t>((day.date - one[0].date).count()) * 24;
      CHECK(a[h].known.rain->value == b[offset + h].known.rain->value);
    }
    for (std::size_t h = 0; h < 24; ++h) {
      if (a[h].known.rain->value > units::Length()) {
        starts.insert(h);
        break;
      }
    }
  }
  CHECK(starts.size() > 10);
}

TEST_CASE("what a day does not say stays unknown") {
  auto day = days(1);
  day[0].rain.reset();
  for (const auto& h : made(day)) {
    CHECK_FALSE(h.known.rain.has_value());
    CHECK_FALSE(h.known.dew_point.has_value());
    CHECK(h.known.air.has_value());
  }
  day = days(1);
  day[0].highest.reset();
  for (const auto& h : made(day)) CHECK_FALSE(h.known.air.has_value());
}
