// The CSV table of days. Rows are written by hand; the hours are held against the rows, and how
// days become hours is the weather's own (tests/weather/daily_test.cpp).
#include <algorithm>

#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

const std::string header = "date,temp_max_c,temp_min_c,rain_mm\n";

double rain_of(const Weather& w, const std::string& day) {
  double sum = 0.0;
  for (const auto& h : w.hours()) {
    if (h.at >= hour(day + "T00:00") && h.at < hour(day + "T00:00") + 24)
      sum += h.known.rain->value.in(units::millimetres);
  }
  return sum;
}

}  // namespace

TEST_CASE("each day becomes its 24 hours, with its extremes and its rain") {
  const Weather w(header + "2015-06-01,22.5,11,0\n2015-06-02,19,9.5,6.4\n2015-06-04,25,12,0\n");
  CHECK(w.found().empty());
  CHECK(w.file->form == WeatherForm::days);
  CHECK(w.file->quality == Quality::forecast);
  // A day that is not there has no hours.
  REQUIRE(w.hours().size() == 72);
  CHECK(w.hours()[0].at == hour("2015-06-01T00:00"));
  CHECK(w.hours()[47].at == hour("2015-06-02T23:00"));
  CHECK(w.hours()[48].at == hour("2015-06-04T00:00"));
  CHECK(shown(w.hours()[15].known).air == Approx(22.5));
  CHECK(shown(w.hours()[6].known).air == Approx(11.0));
  CHECK(rain_of(w, "2015-06-01") == 0.0);
  CHECK(rain_of(w, "2015-06-02") == Approx(6.4));
}

TEST_CASE("columns of days in any order, quoted, with a mark and CRLF, and those nobody reads") {
  const Weather w(
      "\xEF\xBB\xBF\"rain_mm\",station,date,dew_point_c,temp_min_c,wind_ms,temp_max_c\r\n"
      "0.5,\"A, 1\",2015-06-01,8,10,3.5,20\r\n\r\n");
  CHECK(w.found() == Found{"1:11 unknown-column"});
  REQUIRE(w.hours().size() == 24);
  CHECK(shown(w.hours()[12].known).dew_point == Approx(8.0));
  CHECK(shown(w.hours()[12].known).wind == Approx(3.5));
  CHECK(rain_of(w, "2015-06-01") == Approx(0.5));
}

TEST_CASE("a value of a day that is not there leaves its hours unknown, never dry or mild") {
  const Weather w(header + "2015-06-01,22,11,\n2015-06-02,,11,0\n");
  REQUIRE(w.file);
  const auto& hours = w.hours();
  CHECK(std::ranges::none_of(hours, [](const auto& h) {
    return h.at < hour("2015-06-02T00:00") && h.known.rain.has_value();
  }));
  CHECK(std::ranges::none_of(hours, [](const auto& h) {
    return h.at >= hour("2015-06-02T12:00") && h.known.air.has_value();
  }));
}

TEST_CASE("a wrong table of days is told in its places") {
  const auto found = [](const std::string& text) { return Weather(text).found(); };
  CHECK(found("date,temp_max_c,temp_min_c\n2015-06-01,9,2\n") == Found{"1:1 missing-column"});
  CHECK(found("date,rain_mm,temp_max_c,temp_min_c,rain_mm\n2015-06-01,0,9,2,0\n") ==
        Found{"1:36 repeated-column"});
  CHECK(found(header) == Found{"1:1 empty-list"});
  CHECK(found(header + "2015-02-29,9,2,0\n") == Found{"1:1 empty-list", "2:1 not-a-date"});
  CHECK(found(header + "2015-06-01,9,2,0\n2015-06-01,9,2,0\n") == Found{"3:1 not-in-order"});
  CHECK(found(header + "2015-06-01,9,x,0\n") == Found{"2:14 not-a-number"});
  // The highest below the lowest, more rain than ever fell in a day or less than none.
  CHECK(found(header + "2015-06-02,2,9,0\n2015-06-03,9,2,0\n") == Found{"2:1 out-of-range"});
  CHECK(found(header + "2015-06-02,9,2,-1\n2015-06-03,9,2,0\n") == Found{"2:16 out-of-range"});
  CHECK(found(header + "1949-12-31,9,2,0\n2015-06-03,9,2,0\n") == Found{"2:1 out-of-range"});
}

TEST_CASE("a past year has dates of its own, so a typical one is refused") {
  const auto read = [](const std::string& text) {
    Problems problems;
    const auto file = readers::read_past_weather({"w", text}, problems);
    return std::pair(file.has_value(), problems.all().size());
  };
  CHECK(read(epw({EpwRow{}})) == std::pair(false, std::size_t{1}));
  CHECK(read(header + "2015-06-01,9,2,0\n") == std::pair(true, std::size_t{0}));
  CHECK(read("time,air_temp_c,rh_pct,rain_mm\n2015-06-01T08:00,14,60,0\n") ==
        std::pair(true, std::size_t{0}));
}
