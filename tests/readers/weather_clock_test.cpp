// Gaps, repeats and disorder. In 2027 the clocks of central Europe go forward on 28 March at 02:00
// and back on 31 October at 03:00 (directive 2000/84/EC: the last Sundays).
#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

Weather at_times(const std::vector<std::string>& times) {
  std::string text = "time,air_temp_c,rh_pct,rain_mm\n";
  for (std::size_t i = 0; i < times.size(); ++i)
    text += times[i] + "," + std::to_string(i) + ",60,0." + std::to_string(i + 1) + "\n";
  return Weather(text);
}

}  // namespace

TEST_CASE("the jump in spring is one missing hour, a warning") {
  const Weather w = at_times({"2027-03-28T01:00", "2027-03-28T03:00", "2027-03-28T04:00"});
  CHECK(w.found() == Found{"3:1 missing-hours"});
  CHECK(w.hours().size() == 3);
  CHECK(w.problems.all()[0].message == "One hour is missing before this one");
}

TEST_CASE("the hour that passes twice in autumn is one hour with the rain of both") {
  const Weather w =
      at_times({"2027-10-31T01:00", "2027-10-31T02:00", "2027-10-31T02:00", "2027-10-31T03:00"});
  CHECK(w.found() == Found{"4:1 repeated-hour"});
  REQUIRE(w.hours().size() == 3);
  check_same(shown(w.hours()[1].known), {2, 60, unknown, 0.2 + 0.3, unknown});
}

TEST_CASE("rain of an hour that passes twice is unknown when half of it is") {
  const Weather w(
      "time,air_temp_c,rh_pct,rain_mm\n2027-10-31T02:00,9,60,0\n2027-10-31T02:00,9,60,\n");
  CHECK(w.found() == Found{"3:1 repeated-hour", "3:23 no-value"});
  CHECK_FALSE(w.hours()[0].known.rain);
}

TEST_CASE("an hour three times, or another one twice soon after, is no jump of the clock") {
  CHECK(at_times({"2027-10-31T02:00", "2027-10-31T02:00", "2027-10-31T02:00"}).found() ==
        Found{"3:1 repeated-hour", "4:1 not-in-order"});
  CHECK(at_times({"2027-10-31T02:00", "2027-10-31T02:00", "2027-10-31T03:00", "2027-10-31T03:00"})
            .found() == Found{"3:1 repeated-hour", "5:1 not-in-order"});
}

TEST_CASE("longer gaps are counted") {
  const Weather w = at_times({"2027-05-03T08:00", "2027-05-05T08:00"});
  CHECK(w.found() == Found{"3:1 missing-hours"});
  CHECK(w.problems.all()[0].message == "47 hours are missing before this one");
}

TEST_CASE("times that run backwards are refused, each against the one before it") {
  const Weather one = at_times({"2027-05-03T08:00", "2028-05-03T09:00", "2027-05-03T10:00"});
  CHECK(one.found() == Found{"3:1 missing-hours", "4:1 not-in-order"});
  CHECK_FALSE(one.file);
  CHECK(at_times({"2027-05-03T10:00", "2027-05-03T09:00", "2027-05-03T08:00"}).found() ==
        Found{"3:1 not-in-order", "4:1 not-in-order"});
}

TEST_CASE("times may be written in the usual ways and in no other") {
  for (const std::string good :
       {"2027-05-03T08:00", "2027-05-03 08:00", "2027-05-03T08:00:00", "\"2027-05-03T08:00\""}) {
    INFO(good);
    const Weather w = at_times({good});
    CHECK(w.found().empty());
    CHECK(w.hours()[0].at == hour("2027-05-03T08:00"));
  }
  for (const std::string bad : {"",
                                "2027-05-03",
                                "2027-05-03T",
                                "2027-05-03T8:00",
                                "2027-05-03T24:00",
                                "2027-05-03T08:60",
                                "2027-05-03T08:00+02:00",
                                "2027-05-03T08.00",
                                "3/5/2027 08:00",
                                "2027-05-32T08:00",
                                "2027-05-03T-8:00",
                                "2027-05-03T08:00:0x",
                                "2027-05-03t08:00"}) {
    INFO(bad);
    CHECK(at_times({bad}).found() == Found{"2:1 not-a-date"});
  }
  CHECK(at_times({"2027-05-03T08:30"}).found() == Found{"2:1 not-a-full-hour"});
  CHECK(at_times({"2027-05-03T08:00:30"}).found() == Found{"2:1 not-a-full-hour"});
}
