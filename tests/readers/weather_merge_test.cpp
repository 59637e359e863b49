// Several files into one record. What beats what: the contract; the leap day: the header.
#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

WeatherFile merge_table(const std::string& rows) {
  const Weather w("time,air_temp_c,rh_pct,rain_mm,quality\n" + rows);
  INFO(reading::told(w.problems));
  return w.file.value();
}

/// A typical year whose air temperature tells month and hour, and whose rain tells the day.
WeatherFile whole_year(bool has_leap_day) {
  const std::array<int, 12> days{
      31, has_leap_day ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  std::string text = epw_heading();
  for (std::size_t m = 0; m < days.size(); ++m) {
    for (int d = 1; d <= days[m]; ++d) {
      for (int h = 1; h <= 24; ++h) {
        EpwRow row;
        row.month = std::to_string(m + 1);
        row.day = std::to_string(d);
        row.hour = std::to_string(h);
        row.air = std::to_string(m + 1) + "." + std::to_string(h + 9);
        row.dew_point = "0.0";
        row.rain = std::to_string(d);
        text += row.text();
      }
    }
  }
  const Weather w(text);
  CHECK(w.found().empty());
  CHECK(w.hours().size() == (has_leap_day ? 8784U : 8760U));
  return w.file.value();
}

double rain(const weather::Record& record, const std::string& when) {
  return shown(record.at(hour(when))).rain;
}
double air(const weather::Record& record, const std::string& when) {
  return shown(record.at(hour(when))).air;
}

}  // namespace

TEST_CASE("observed beats forecast beats climatology, in whatever order they come") {
  const WeatherFile observed = merge_table("2027-05-03T08:00,1,60,,observed\n");
  const WeatherFile forecast =
      merge_table("2027-05-03T08:00,2,60,2,forecast\n2027-05-03T09:00,2,60,2,forecast\n");
  const WeatherFile typical = whole_year(false);
  std::vector<WeatherFile> files{observed, forecast, typical};
  for (int turn = 0; turn < 6; ++turn) {
    std::ranges::next_permutation(files, {}, &WeatherFile::quality);
    const auto record = readers::merge(files, hour("2027-05-03T00:00"), hour("2027-05-04T00:00"));
    CHECK(air(record, "2027-05-03T08:00") == Approx(1.0));
    CHECK(rain(record, "2027-05-03T08:00") == Approx(2.0));
    CHECK(air(record, "2027-05-03T09:00") == Approx(2.0));
    CHECK(air(record, "2027-05-03T10:00") == Approx(5.20));
    CHECK(record.at(hour("2027-05-03T10:00")).air->quality == Quality::climatology);
    CHECK(record.from() == hour("2027-05-03T00:00"));
    CHECK(record.until() == hour("2027-05-04T00:00"));
    CHECK(record.covered_from() == hour("2027-05-03T08:00"));
    CHECK(record.covered_until() == hour("2027-05-03T10:00"));
  }
}

TEST_CASE("of two forecasts the later file counts") {
  const WeatherFile old = merge_table("2027-05-03T08:00,1,60,0,forecast\n");
  const WeatherFile young = merge_table("2027-05-03T08:00,2,,3,forecast\n");
  const auto record = readers::merge({old, young}, 0, 0);
  check_same(shown(record.at(hour("2027-05-03T08:00"))), {2, 60, unknown, 3, unknown});
}

TEST_CASE("a typical year lies over any year, hour by hour") {
  const auto record =
      readers::merge({whole_year(false)}, hour("2027-12-30T05:00"), hour("2029-01-02T00:00"));
  CHECK(record.from() == hour("2027-12-30T05:00"));
  CHECK(record.until() == hour("2029-01-02T00:00"));
  CHECK(record.covered_from() == record.covered_until());
  // Hour 1 of the file is 00:00 to 01:00: the tenths count from 10.
  CHECK(air(record, "2028-01-01T00:00") == Approx(1.10));
  CHECK(air(record, "2028-06-15T23:00") == Approx(6.33));
  CHECK(rain(record, "2028-06-15T23:00") == Approx(15.0));
  CHECK(rain(record, "2027-12-31T12:00") == Approx(31.0));
  // 2028 has a 29 February, the file has none: its 28th again.
  CHECK(rain(record, "2028-02-28T12:00") == Approx(28.0));
  CHECK(rain(record, "2028-02-29T12:00") == Approx(28.0));
  CHECK(air(record, "2028-02-29T12:00") == Approx(2.22));
  CHECK(rain(record, "2028-03-01T00:00") == Approx(1.0));
}

TEST_CASE("a leap day of the file is used in leap years and left out in others") {
  const WeatherFile year = whole_year(true);
  const auto leap = readers::merge({year}, hour("2028-02-28T00:00"), hour("2028-03-02T00:00"));
  CHECK(rain(leap, "2028-02-29T12:00") == Approx(29.0));
  const auto plain = readers::merge({year}, hour("2027-02-28T00:00"), hour("2027-03-02T00:00"));
  CHECK(rain(plain, "2027-02-28T23:00") == Approx(28.0));
  CHECK(rain(plain, "2027-03-01T00:00") == Approx(1.0));
}

TEST_CASE("hours that a typical year lacks stay unknown") {
  EpwRow late;
  late.hour = "3";
  const Weather w(epw({EpwRow{}, late}));
  const auto record =
      readers::merge({w.file.value()}, hour("2027-05-03T00:00"), hour("2027-05-04T00:00"));
  CHECK(record.at(hour("2027-05-03T00:00")).air);
  CHECK_FALSE(record.at(hour("2027-05-03T01:00")).air);
  CHECK(record.at(hour("2027-05-03T02:00")).air);
}

TEST_CASE("spans beyond all plans are cut, not thrown at") {
  const WeatherFile first = merge_table("1950-01-01T00:00,1,60,0,observed\n");
  const WeatherFile last = merge_table("2149-12-31T23:00,1,60,0,forecast\n");
  const weather::HourNumber far = hour("9990-01-01T00:00");
  CHECK_NOTHROW(readers::merge({last, first, whole_year(false)}, far, far + 600 * 24));
  CHECK(readers::merge({whole_year(false)}, far, far + 600 * 24).empty());
  CHECK(readers::merge({}, 0, 100).empty());
}

// The year's own standard time is an hour ahead of UTC (epw_heading). A site that keeps the same
// standard time and moves its clock on 28 March sees from then on the hour of the year before it:
// 08:00 summer time is 07:00 standard time.
TEST_CASE("a typical year is moved to the clock on the wall") {
  const WeatherFile typical = whole_year(false);
  REQUIRE(typical.ahead_of_utc.has_value());
  readers::SiteClock clock;
  clock.ahead_of_utc = *typical.ahead_of_utc;
  clock.since = basinwright::dates::parse_date("2027-03-01").value();
  clock.changes = {{basinwright::dates::parse_moment("2027-03-28T02:00").value(), 60}};
  const auto record =
      readers::merge({typical}, hour("2027-03-01T00:00"), hour("2027-05-01T00:00"), clock);
  CHECK(air(record, "2027-03-27T08:00") == Approx(3.18));
  CHECK(air(record, "2027-03-28T01:00") == Approx(3.11));
  CHECK(air(record, "2027-03-29T08:00") == Approx(3.17));
  CHECK(rain(record, "2027-03-29T00:00") == Approx(28.0));             // 23:00 of the day before
  clock.since = basinwright::dates::parse_date("2027-04-01").value();  // said of the summer
  *clock.ahead_of_utc += basinwright::units::hours(1);
  const auto same =
      readers::merge({typical}, hour("2027-03-01T00:00"), hour("2027-05-01T00:00"), clock);
  CHECK(air(same, "2027-03-27T08:00") == Approx(3.18));
  CHECK(air(same, "2027-03-29T08:00") == Approx(3.17));
}

// Two forecasts with an hour between them that neither has: it stays unknown and lies inside the
// span, so that nothing may be taken for dry there.
TEST_CASE("the gap between two files stays unknown") {
  const auto record = readers::merge({merge_table("2027-05-03T08:00,2,60,0,forecast\n"),
                                      merge_table("2027-05-03T10:00,2,60,0,forecast\n"),
                                      whole_year(false)},
                                     hour("2027-05-03T08:00"),
                                     hour("2027-05-03T11:00"));
  const auto without = readers::merge({merge_table("2027-05-03T08:00,2,60,0,forecast\n"),
                                       merge_table("2027-05-03T10:00,2,60,0,forecast\n")},
                                      0,
                                      0);
  CHECK_FALSE(without.at(hour("2027-05-03T09:00")).rain.has_value());
  CHECK(without.covered_until() - without.covered_from() == 3);
  const weather::Conditions conditions(record);
  const weather::State& gap = conditions.at(hour("2027-05-03T09:00"));
  CHECK(gap.covered);
  CHECK_FALSE(gap.rain.has_value());
  CHECK_FALSE(gap.air.has_value());
}
