#include "basinwright/dates/date.hpp"

#include <cstdio>
#include <string>
#include <vector>

#include "support/catch.hpp"

namespace dates = basinwright::dates;
using dates::Date;

namespace {

Date day_at(std::string_view text) {
  const auto date = dates::parse_date(text);
  REQUIRE(date.has_value());
  return *date;
}

}  // namespace

TEST_CASE("leap years follow the Gregorian rule") {
  // Inter gravissimas (1582): every fourth year, but of the centuries only those divisible by 400.
  CHECK(dates::parse_date("2024-02-29").has_value());
  CHECK(dates::parse_date("2000-02-29").has_value());
  CHECK_FALSE(dates::parse_date("1900-02-29").has_value());
  CHECK_FALSE(dates::parse_date("2100-02-29").has_value());
  CHECK_FALSE(dates::parse_date("2023-02-29").has_value());
  CHECK((day_at("2024-03-01") - day_at("2024-02-28")).count() == 2);
  CHECK((day_at("2023-03-01") - day_at("2023-02-28")).count() == 1);
  CHECK((day_at("2024-01-01") - day_at("2023-12-31")).count() == 1);
}

TEST_CASE("known days of the calendar fall on their weekdays") {
  // POSIX: 1970-01-01, the Epoch, was a Thursday.
  CHECK(dates::weekday(day_at("1970-01-01")) == 3);
  CHECK(day_at("1970-01-01").time_since_epoch().count() == 0);
  // Published almanacs: 1 January 1900 was a Monday, 1 January 2000 a Saturday; Apollo 11 landed
  // on Sunday 20 July 1969.
  CHECK(dates::weekday(day_at("1900-01-01")) == 0);
  CHECK(dates::weekday(day_at("2000-01-01")) == 5);
  CHECK(dates::weekday(day_at("1969-07-20")) == 6);
  // ISO 8601: week 1 of 2009 began on Monday 29 December 2008.
  CHECK(dates::weekday(day_at("2008-12-29")) == 0);
  // The Gregorian cycle: 400 years are 146,097 days, a whole number of weeks.
  CHECK((day_at("2400-05-04") - day_at("2000-05-04")).count() == 146097);
  CHECK(dates::weekday(day_at("2400-05-04")) == dates::weekday(day_at("2000-05-04")));
}

TEST_CASE("a day is written as ISO 8601 and in short English") {
  CHECK(dates::iso(day_at("2026-05-04")) == "2026-05-04");
  CHECK(dates::iso(day_at("1900-01-01")) == "1900-01-01");
  CHECK(dates::iso(day_at("9990-12-31")) == "9990-12-31");
  // Whatever is counted on from a day that was read still has a year of four digits.
  for (const char* text : {"1899-12-31", "9991-01-01", "9999-12-31"})
    CHECK_FALSE(dates::parse_date(text));
  // 4 May 2026 is a Monday (common almanac).
  CHECK(dates::short_day(day_at("2026-05-04")) == "Mon 4 May");
  CHECK(dates::short_day(day_at("2023-12-31")) == "Sun 31 Dec");
  CHECK(dates::short_weekday(day_at("2023-06-07")) == "Wed");
  CHECK(dates::month(day_at("2023-12-31")) == 12);
  CHECK(dates::month(day_at("2023-01-01")) == 1);
  CHECK(dates::year(day_at("2023-12-31")) == 2023);
}

TEST_CASE("text that is no ISO 8601 day is refused") {
  const std::vector<std::string> wrong = {"",
                                          "2023",
                                          "2023-1-01",
                                          "2023-01-1",
                                          "2023-13-01",
                                          "2023-00-10",
                                          "2023-04-31",
                                          "2023-04-00",
                                          "1899-12-31",
                                          "10000-01-01",
                                          "2023/04/01",
                                          "2023-04-01 ",
                                          " 2023-04-1",
                                          "+023-04-01",
                                          "2023-+4-01",
                                          "2023-04-0x",
                                          "20230401",
                                          "2023-04-01T00:00"};
  for (const std::string& text : wrong) {
    INFO(text);
    CHECK_FALSE(dates::parse_date(text).has_value());
  }
}

TEST_CASE("moments stand on the quarter-hour grid") {
  const auto moment = dates::parse_moment("2026-05-04T07:45");
  REQUIRE(moment.has_value());
  CHECK(moment->date() == day_at("2026-05-04"));
  CHECK(moment->quarter() == 31);
  CHECK(moment->hour() == 7);
  CHECK(moment->minute() == 45);
  CHECK(dates::iso(*moment) == "2026-05-04T07:45");
  CHECK(dates::clock(*moment) == "07:45");
  CHECK(*dates::parse_moment("2026-05-04") == dates::Moment(day_at("2026-05-04"), 0));
  CHECK(*dates::parse_moment("2026-05-04T00:00") == *dates::parse_moment("2026-05-04"));
  CHECK(*dates::parse_moment("2026-05-04T23:45") < *dates::parse_moment("2026-05-05"));
  CHECK(dates::Moment(day_at("2026-05-04"), 96) == *dates::parse_moment("2026-05-05"));
  for (const char* text : {"2026-05-04T07:10",
                           "2026-05-04T24:00",
                           "2026-05-04T7:00",
                           "2026-05-04T07:60",
                           "2026-05-04 07:00",
                           "2026-05-04T07:00Z",
                           "2026-05-04T",
                           "2026-02-30T07:00",
                           "2026-05-04T07:0"}) {
    INFO(text);
    CHECK_FALSE(dates::parse_moment(text).has_value());
  }
}

TEST_CASE("moments before 1970 keep their day and quarter") {
  // 1969-12-31T23:45 is one quarter before the Epoch.
  const auto moment = dates::Moment::of_quarters(-1);
  CHECK(dates::iso(moment) == "1969-12-31T23:45");
  CHECK(moment.quarter() == 95);
  CHECK(dates::parse_moment("1969-12-31T23:45")->quarters() == -1);
  CHECK(dates::iso(dates::Moment::of_quarters(-96)) == "1969-12-31T00:00");
}

TEST_CASE("clock times are read as quarters from midnight") {
  CHECK(dates::parse_clock("00:00") == 0);
  CHECK(dates::parse_clock("07:15") == 29);
  CHECK(dates::parse_clock("23:45") == 95);
  CHECK(dates::parse_clock("24:00") == 96);
  for (const char* text :
       {"24:15", "25:00", "7:00", "07:20", "07:60", "0700", "", "07:00 ", "-7:00"}) {
    INFO(text);
    CHECK_FALSE(dates::parse_clock(text).has_value());
  }
}

TEST_CASE("days agree with the datetime of Debians python3") {
  // The reference library is CPython's datetime: weekday() and isoformat() over 1900 to 2399.
  const std::string command =
      "/usr/bin/python3 -c \"import datetime as d\n"
      "t = d.date(1900, 1, 1)\n"
      "while t.year < 2400:\n"
      "    print(t.isoformat(), (t - d.date(1970, 1, 1)).days, t.weekday())\n"
      "    t += d.timedelta(days=97)\" 2>/dev/null";
  std::FILE* pipe = popen(command.c_str(), "r");
  int compared = 0;
  if (pipe != nullptr) {
    char text[16];
    long long since_epoch = 0;
    unsigned weekday = 0;
    while (std::fscanf(pipe, "%15s %lld %u", text, &since_epoch, &weekday) == 3) {
      const Date date = day_at(text);
      CHECK(date.time_since_epoch().count() == since_epoch);
      CHECK(dates::weekday(date) == weekday);
      CHECK(dates::iso(date) == text);
      ++compared;
    }
    pclose(pipe);
  }
  if (compared == 0) WARN("SKIPPED: no /usr/bin/python3 to compare the calendar with");
  // 182,621 days (five centuries of Gregorian years) in steps of 97, the first included.
  if (compared != 0) CHECK(compared == 1883);
}
