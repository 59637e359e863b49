// Times to the minute. Expected values are counted by hand from the definition: a day has 1440
// minutes, 1970-01-01 is day 0 (ISO 8601 for the form).
#include "basinwright/dates/minute.hpp"

#include "support/catch.hpp"

using namespace basinwright::dates;

TEST_CASE("a minute is read and written as ISO 8601 without seconds") {
  CHECK(parse_minute("1970-01-01T00:01").value().minutes() == 1);
  CHECK(parse_minute("1970-01-02T00:00").value().minutes() == 1440);
  CHECK(parse_minute("1969-12-31T23:59").value().minutes() == -1);
  CHECK(iso(parse_minute("2027-05-31T08:05").value()) == "2027-05-31T08:05");
  CHECK(iso(Minute(-1)) == "1969-12-31T23:59");
  for (const char* wrong : {"2027-05-31",
                            "2027-05-31T8:05",
                            "2027-05-31T24:00",
                            "2027-05-31T08:60",
                            "2027-02-30T08:00",
                            "2027-05-31 08:05",
                            "2027-05-31T08:05:00",
                            "2027-05-31T-8:05",
                            "2027-05-31T+8:05",
                            ""}) {
    INFO(wrong);
    CHECK_FALSE(parse_minute(wrong));
  }
}

TEST_CASE("a minute lies between its two quarter hours") {
  const Minute five = parse_minute("2027-05-31T08:05").value();
  CHECK(iso(five.down()) == "2027-05-31T08:00");
  CHECK(iso(five.up()) == "2027-05-31T08:15");
  const Minute sharp = parse_minute("2027-05-31T08:15").value();
  CHECK(sharp.down() == sharp.up());
  CHECK(iso(Minute(-1).down()) == "1969-12-31T23:45");
  CHECK(iso(Minute(-1).up()) == "1970-01-01T00:00");
}
