// Typical years. Fields and missing values of EPW: the auxiliary programs manual of EnergyPlus, of
// TMY3: its users manual, both from memory.
#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

weather::HourNumber typical(const std::string& month_day_hour) {
  return hour("2000-" + month_day_hour);
}

Found codes_of(const Weather& w) {
  Found out;
  for (const std::string& found : w.found()) {
    // The rest of the year is always missing in these short files.
    if (!found.ends_with("missing-hours")) out.push_back(found);
  }
  return out;
}

/// One row with a change, told as the values of its hour.
Shown shown_with(EpwRow row) {
  // A row that measured rain, so that nought is nought.
  EpwRow wet;
  wet.hour = "2";
  wet.rain = "1.0";
  const Weather w(epw({std::move(row), wet}));
  return shown(w.hours()[0].known);
}

}  // namespace

TEST_CASE("an EPW file with its place") {
  const Weather w(epw({EpwRow{}}));
  REQUIRE(w.hours().size() == 1);
  CHECK(w.file->form == WeatherForm::epw);
  CHECK(w.file->is_typical_year());
  CHECK(w.file->quality == Quality::climatology);
  CHECK(w.file->place == "Sample Bay, XYZ");
  CHECK(w.file->latitude == 41.9);
  CHECK(w.file->longitude == 12.5);
  CHECK(w.file->ahead_of_utc->in(units::hours) == 1.0);
  CHECK(w.file->elevation->in(units::metres) == 20.0);
  check_same(shown(w.hours()[0].known), {10, 76, 6, 0, 2});
  CHECK(w.hours()[0].known.cloud->value == 0.5);
  CHECK(w.found() == Found{"9:6 missing-hours"});
  CHECK(w.problems.all()[0].message == "8,759 of the 8,760 hours of a year are missing");
}

TEST_CASE("hours 1 to 24 are the ends of hours") {
  EpwRow last;
  last.hour = "24";
  const Weather w(epw({EpwRow{}, last}));
  CHECK(w.hours()[0].at == typical("05-03T00:00"));
  CHECK(w.hours()[1].at == typical("05-03T23:00"));
  for (const std::string bad : {"0", "25", "-1", "x", ""}) {
    EpwRow row;
    row.hour = bad;
    CHECK(codes_of(Weather(epw({row}))) == Found{"9:6 not-a-date"});
  }
  EpwRow row;
  row.month = "2";
  row.day = "30";
  CHECK(codes_of(Weather(epw({row}))) == Found{"9:6 not-a-date"});
}

TEST_CASE("each missing value of EPW is unknown") {
  CHECK(shown_with({.air = "99.9"}).air == unknown);
  CHECK(shown_with({.dew_point = "99.9"}).dew_point == unknown);
  CHECK(shown_with({.humidity = "999"}).humidity == unknown);
  CHECK(shown_with({.humidity = "999."}).humidity == unknown);
  CHECK(shown_with({.wind = "999.0"}).wind == unknown);
  CHECK(shown_with({.rain = "999"}).rain == unknown);
  CHECK(shown_with({.rain = "999.000"}).rain == unknown);
  CHECK(shown_with({.rain = ""}).rain == unknown);
  CHECK(shown_with({.rain = "0.0"}).rain == 0.0);
  CHECK(shown_with({.rain = "0.0", .period = "99"}).rain == 0.0);
}

TEST_CASE("a missing value is not taken from the range check") {
  CHECK(codes_of(Weather(epw({{.air = "99.9"}}))) == Found{"9:66 no-value"});
  CHECK(codes_of(Weather(epw({{.air = "80.0"}}))) == Found{"9:66 out-of-range"});
  CHECK(codes_of(Weather(epw({{.rain = "-1"}}))).size() == 1);
}

TEST_CASE("a humidity a little over saturation is saturation, as the form allows") {
  CHECK(shown_with({.humidity = "104"}).humidity == 100.0);
  CHECK(codes_of(Weather(epw({{.humidity = "111"}}))).size() == 1);
}

TEST_CASE("a depth gathered over many hours is the rain of none of them") {
  CHECK(shown_with({.rain = "6.0", .period = "6"}).rain == unknown);
  CHECK(shown_with({.rain = "6.0", .period = "1"}).rain == Approx(6.0));
}

TEST_CASE("a file whose every depth is nought over no time did not measure rain") {
  EpwRow next;
  next.hour = "2";
  next.period = "0";
  EpwRow first;
  first.period = "0";
  const Weather w(epw({first, next}));
  CHECK(codes_of(w) == Found{"1:1 no-value"});
  CHECK_FALSE(w.hours()[0].known.rain);
  next.rain = "0.2";
  CHECK(Weather(epw({first, next})).hours()[0].known.rain);
}

TEST_CASE("rows and headings of EPW that are not whole") {
  std::string text = epw({EpwRow{}});
  text.erase(text.rfind(','));
  CHECK(codes_of(Weather(text)) == Found{"9:1 wrong-number-of-values"});
  CHECK(codes_of(Weather("LOCATION,a,b\n")) ==
        Found{"1:1 wrong-number-of-values", "1:1 empty-list"});
  std::string place = epw({EpwRow{}});
  place.replace(place.find("41.9"), 4, "91.9");
  place.replace(place.find("12.5"), 4, "east");
  CHECK(codes_of(Weather(place)) == Found{"1:39 out-of-range", "1:44 not-a-number"});
}

TEST_CASE("an hour of a typical year stands once") {
  CHECK(codes_of(Weather(epw({EpwRow{}, EpwRow{}}))) == Found{"10:6 not-in-order"});
}

TEST_CASE("a TMY3 file by the names of its columns") {
  const Weather w(tmy3_heading() +
                  "05/03/1988,01:00,5,10.0,6.0,76,2.0,0,1\n"
                  "05/03/1988,02:00,-9900,-9900,-9900.0,-9900,-9900,-9900,-9900\n"
                  "05/03/1988,24:00,5,10.0,6.0,76,2.0,1.5,1\n"
                  "05/04/1991,01:00,5,10.0,6.0,76,2.0,6.0,6\n");
  CHECK(w.file->form == WeatherForm::tmy3);
  CHECK(w.file->place == "SAMPLE, BAY, ST");
  CHECK(w.file->ahead_of_utc->in(units::hours) == 1.0);
  CHECK(w.file->elevation->in(units::metres) == 20.0);
  REQUIRE(w.hours().size() == 4);
  CHECK(w.hours()[0].at == typical("05-03T00:00"));
  CHECK(w.hours()[2].at == typical("05-03T23:00"));
  check_same(shown(w.hours()[0].known), {10, 76, 6, 0, 2});
  check_same(shown(w.hours()[1].known), {unknown, unknown, unknown, unknown, unknown});
  CHECK_FALSE(w.hours()[1].known.cloud);
  CHECK(shown(w.hours()[2].known).rain == Approx(1.5));
  CHECK(shown(w.hours()[3].known).rain == unknown);
  CHECK(codes_of(w) == Found{"4:24 no-value", "4:38 no-value", "4:50 no-value"});
}

TEST_CASE("a TMY3 file without a column, or with a wrong time") {
  std::string text = tmy3_heading();
  text.replace(text.find("Lprecip depth (mm)"), 18, "Lprecip depth (in)");
  CHECK(codes_of(Weather(text + "05/03/1988,01:00,5,10.0,6.0,76,2.0,0,1\n")) ==
        Found{"2:1 missing-column"});
  CHECK(codes_of(Weather(tmy3_heading() + "05/03/1988,01:30,5,10.0,6.0,76,2.0,0,1\n")) ==
        Found{"3:1 not-a-date"});
  CHECK(codes_of(Weather(tmy3_heading() + "3.5.1988,01:00,5,10.0,6.0,76,2.0,0,1\n")) ==
        Found{"3:1 not-a-date"});
}
