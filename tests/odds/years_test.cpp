// Past years under the plan's dates: the Gregorian calendar decides what a test expects.
#include "basinwright/odds/years.hpp"
#include "support/catch.hpp"
#include "weather/making.hpp"

using namespace basinwright;
using namespace weather_making;

namespace {

dates::Date date_of(const std::string& text) {
  return dates::parse_date(text).value();
}

/// Every hour's wind tells its day of the month and its month: 100 m + d.
weather::Record dated(const std::string& from, const std::string& to) {
  weather::Record record;
  for (dates::Date d = date_of(from); d <= date_of(to); d += std::chrono::days{1}) {
    const std::chrono::year_month_day civil{d};
    weather::Hour h = fine();
    h.wind->value = units::metres_per_second(100.0 * static_cast<unsigned>(civil.month()) +
                                             static_cast<unsigned>(civil.day()));
    for (int i = 0; i < 24; ++i) record.put(weather::hour_of(dates::Moment(d, 0)) + i, h);
  }
  return record;
}

double tag(const weather::Record& record, const std::string& at) {
  const auto& wind = record.at(hour(at)).wind;
  return wind ? wind->value.in(units::metres_per_second) : 0.0;
}

}  // namespace

TEST_CASE("each year lies under the same month and day") {
  const auto years = odds::years_of(dated("2011-12-01", "2013-12-31"), {date_of("2027-05-03"), 60});
  REQUIRE(years.years.size() == 2);
  CHECK(years.years[0].year == 2012);
  CHECK(tag(years.years[0].record, "2027-05-03T00:00") == 503.0);
  CHECK(tag(years.years[1].record, "2027-07-01T23:00") == 701.0);
  REQUIRE(years.left_out.size() == 1);
  CHECK(years.left_out[0].year == 2011);
  CHECK(years.left_out[0].missing == 1.0);
}

TEST_CASE("29 February is repeated or left out") {
  const auto leap_plan =
      odds::years_of(dated("2013-01-01", "2013-12-31"), {date_of("2028-02-20"), 20});
  REQUIRE(leap_plan.years.size() == 1);
  CHECK(tag(leap_plan.years[0].record, "2028-02-29T12:00") == 228.0);
  CHECK(tag(leap_plan.years[0].record, "2028-03-01T12:00") == 301.0);
  const auto leap_year =
      odds::years_of(dated("2012-01-01", "2012-12-31"), {date_of("2027-02-20"), 20});
  CHECK(tag(leap_year.years[0].record, "2027-02-28T12:00") == 228.0);
  CHECK(tag(leap_year.years[0].record, "2027-03-01T12:00") == 301.0);
}

TEST_CASE("a window past 31 December goes on in the year after, and the last year lacks it") {
  const auto years = odds::years_of(dated("2012-01-01", "2013-12-31"), {date_of("2027-12-01"), 60});
  REQUIRE(years.years.size() == 1);
  CHECK(years.years[0].year == 2012);
  CHECK(tag(years.years[0].record, "2028-01-15T06:00") == 115.0);
  REQUIRE(years.left_out.size() == 1);
  CHECK(years.left_out[0].missing == Approx(29.0 / 60.0));
}

TEST_CASE("more than two hours of a hundred without rain or air are too many") {
  const auto with_holes = [](int hours) {
    weather::Record record = dated("2012-04-01", "2012-08-31");
    weather::Record holes;
    for (auto h = record.from(); h < record.until(); ++h) {
      weather::Hour known = record.at(h);
      if (h >= hour("2012-05-10T00:00") && h < hour("2012-05-10T00:00") + hours) known.rain.reset();
      holes.put(h, known);
    }
    return odds::years_of(holes, {date_of("2027-05-03"), 50});
  };
  CHECK(with_holes(24).years.size() == 1);  // 2 % of 1200
  CHECK(with_holes(25).years.empty());
}
