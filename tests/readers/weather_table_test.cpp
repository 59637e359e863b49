// The CSV table. Rows are written by hand; the expected values are those of the rows.
#include "weather_reading.hpp"

using namespace weather_reading;

namespace {
const std::string table_header = "time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct\n";
}

TEST_CASE("a table is read value by value") {
  const Weather w(table_header +
                  "2027-05-03T08:00,14.5,60,6.9,0,2.5,40\n"
                  "2027-05-03T09:00,-0.5,100,-0.5,12.75,0,0\n");
  CHECK(w.found().empty());
  REQUIRE(w.hours().size() == 2);
  CHECK(w.file->form == WeatherForm::table);
  CHECK(w.file->quality == Quality::forecast);
  CHECK(w.hours()[0].at == hour("2027-05-03T08:00"));
  check_same(shown(w.hours()[0].known), {14.5, 60, 6.9, 0, 2.5});
  check_same(shown(w.hours()[1].known), {-0.5, 100, -0.5, 12.75, 0});
  CHECK(w.hours()[0].known.cloud->value == Approx(0.4));
  CHECK_FALSE(w.hours()[0].known.shell);
}

TEST_CASE("columns in any order, quoted or not, with a byte order mark and CRLF") {
  const Weather w(
      "\xEF\xBB\xBF\"rain_mm\",wind_ms,\"time\",air_temp_c,dew_point_c,rh_pct\r\n"
      "\"1.2\",3,\"2027-05-03 08:00:00\", 15 ,9,67\r\n\r\n");
  CHECK(w.found().empty());
  REQUIRE(w.hours().size() == 1);
  check_same(shown(w.hours()[0].known), {15, 67, 9, 1.2, 3});
}

TEST_CASE("the quality of each row, forecast where nothing is said") {
  const Weather w(
      "time,air_temp_c,rh_pct,rain_mm,shell_temp_c,quality\n"
      "2027-05-03T08:00,14,60,0,12.5,observed\n"
      "2027-05-03T09:00,15,60,0,,forecast\n"
      "2027-05-03T10:00,15,60,0,,\n"
      "2027-05-03T11:00,15,60,0,,climatology\n"
      "2027-05-03T12:00,15,60,0,,missing\n");
  CHECK(w.found().empty());
  CHECK(w.file->quality == Quality::observed);
  const auto& hours = w.hours();
  REQUIRE(hours.size() == 5);
  CHECK(hours[0].known.air->quality == Quality::observed);
  CHECK(hours[0].known.shell->value.in(units::celsius) == Approx(12.5));
  CHECK(hours[1].known.air->quality == Quality::forecast);
  CHECK(hours[2].known.rain->quality == Quality::forecast);
  CHECK(hours[3].known.rain->quality == Quality::climatology);
  CHECK_FALSE(hours[4].known.air);
  CHECK(
      Weather("time,air_temp_c,rh_pct,rain_mm,quality\n2027-05-03T08:00,1,60,0,guess\n").found() ==
      Found{"2:25 not-a-choice"});
}

TEST_CASE("a value that is not there is unknown, not nought") {
  const Weather w(table_header +
                  "2027-05-03T08:00,14.5,60,6.9,,2.5,40\n"
                  "2027-05-03T09:00,,60,6.9,\"\",2.5,40\n");
  CHECK(w.found() == Found{"2:30 no-value", "3:18 no-value"});
  CHECK_FALSE(w.problems.has_errors());
  check_same(shown(w.hours()[0].known), {14.5, 60, 6.9, unknown, 2.5});
  check_same(shown(w.hours()[1].known), {unknown, 60, 6.9, unknown, 2.5});
  CHECK(w.problems.all()[1].message.find("any of 2 hours") != std::string::npos);
}

TEST_CASE("a file of shell readings alone is fine beside another one") {
  const Weather w("time,shell_temp_c,quality\n2027-05-03T08:00,12.5,observed\n");
  CHECK(w.found().empty());
  CHECK(w.hours()[0].known.shell->quality == Quality::observed);
}

TEST_CASE("what a gate needs and no column has is said") {
  const Weather w("time,wind_ms,air_temp_c\n2027-05-03T08:00,2,14\n");
  CHECK(w.found() == Found{"1:1 missing-column", "1:1 missing-column"});
  CHECK(w.file.has_value());
}

TEST_CASE("all mistakes of a table in one go, each in its place") {
  const Weather w(
      "time,air_temp_c,rh_pct,rain_mm,wind_ms,win_ms\n"
      "2027-05-03T08:00,14.5,101,0,1,1\n"
      "2027-05-03T09:00,1e999,60,-0.1,1,1\n"
      "2027-02-30T10:00,nan,0x10,inf,1,1\n"
      "2027-05-03T11:00,+14,60,0,121,1\n"
      "2027-05-03T12:00,14.5,60,0,1\n"
      "2027-05-03T13:15,14.5,60,0,1,1\n"
      "2027-05-03T14:00Z,14 C,60,0,1,1\n"
      "1899-05-03T14:00,60.5,60,501,1,1\n"
      "2150-01-01T00:00,-91,60,0,1,1\n");
  CHECK_FALSE(w.file);
  CHECK(w.found() == Found{"1:40 unknown-column",
                           "2:23 out-of-range",
                           "3:18 not-a-number",
                           "3:27 out-of-range",
                           "4:1 not-a-date",
                           "4:18 not-a-number",
                           "4:22 not-a-number",
                           "4:27 not-a-number",
                           "5:18 not-a-number",
                           "5:27 out-of-range",
                           "6:1 wrong-number-of-values",
                           "7:1 not-a-full-hour",
                           "8:1 not-a-date",
                           "8:19 not-a-number",
                           "9:1 not-a-date",
                           "9:18 out-of-range",
                           "9:26 out-of-range",
                           "10:1 out-of-range",
                           "10:18 out-of-range"});
}

TEST_CASE("problems without number are told ten times and counted") {
  std::string text = table_header;
  for (int i = 0; i < 300; ++i) text += "x,14,60,6.9,0,2.5,40\n";
  const Weather w(text);
  REQUIRE(w.problems.size() == 11);
  CHECK(w.problems.all()[10].message == "And 290 more of this kind");
  CHECK(w.problems.all()[10].at.line == 12);
  CHECK(w.problems.all()[10].severity == Severity::error);
  for (int i = 0; i < 30'000; ++i) text += "x,14,60,6.9,0,2.5,40\n";
  CHECK(Weather(text).problems.all()[10].message.find("not read to its end") != std::string::npos);
}

TEST_CASE("files of no form are refused with a reason") {
  CHECK(Weather("").found() == Found{"1:1 not-a-weather-file"});
  CHECK(Weather("\xEF\xBB\xBF \n").found() == Found{"1:1 not-a-weather-file"});
  CHECK(Weather("hello\n").found() == Found{"1:1 not-a-weather-file"});
  CHECK(Weather("time;air_temp_c\n").problems.all()[0].hint.find("commas") != std::string::npos);
  CHECK(Weather("quality\nobserved\n").found() == Found{"1:1 not-a-weather-file"});
  CHECK(Weather(table_header).found() == Found{"1:1 empty-list"});
  CHECK(Weather(table_header + std::string("2027-05-03T08:00,1\0,", 20)).found() ==
        Found{"2:19 not-text"});
  CHECK(Weather(table_header + "2027-05-03T08:00,1\xFF").found() == Found{"2:19 not-text"});
  CHECK(Weather("\xFF\xFEt\0i\0").found() == Found{"1:1 not-text"});
  CHECK(Weather(std::string((64U << 20U) + 1, ' ')).found() == Found{"1:1 too-large"});
}
