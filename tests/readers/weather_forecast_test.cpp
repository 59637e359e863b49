// Hourly forecasts in columns. Conversions: 0 F = -17.78 C (9/5 and 32), international inch and
// mile (NIST Handbook 44, App. C), knot of 1852 m in an hour.
#include "weather_reading.hpp"

using namespace weather_reading;
using nlohmann::json;

namespace {

json forecast() {
  return json::parse(R"({
    "latitude": 41.9, "longitude": 12.5, "elevation": 20.0, "utc_offset_seconds": 7200,
    "timezone": "local", "generationtime_ms": 0.1,
    "hourly_units": {"time": "iso8601", "temperature_2m": "\u00b0C", "relative_humidity_2m": "%",
      "dew_point_2m": "\u00b0C", "precipitation": "mm", "wind_speed_10m": "km/h",
      "visibility": "m"},
    "hourly": {
      "time": ["2027-05-03T08:00", "2027-05-03T09:00", "2027-05-03T10:00"],
      "temperature_2m": [14.5, 15.0, 16],
      "relative_humidity_2m": [60, 58, 55],
      "dew_point_2m": [6.9, 6.8, 7.0],
      "precipitation": [9.9, 0.4, 0.0],
      "wind_speed_10m": [36.0, 18, 0],
      "visibility": [1, null, "far"]}})");
}

/// "code pointer" of every problem of a changed forecast.
Found problems_of(const json& file) {
  const Weather w(file.dump(1));
  Found out;
  for (const Diagnostic& d : w.problems.sorted()) {
    out.push_back(d.code + " " + d.pointer);
    CHECK(d.at.line > 1);
  }
  CHECK(w.file.has_value() == !w.problems.has_errors());
  return out;
}

double first(const json& file, double Shown::*value) {
  const Weather w(file.dump());
  return shown(w.hours()[0].known).*value;
}

}  // namespace

TEST_CASE("a forecast is read with its facts") {
  const Weather w(forecast().dump(2));
  CHECK(w.found().empty());
  REQUIRE(w.hours().size() == 3);
  CHECK(w.file->form == WeatherForm::columns);
  CHECK(w.file->quality == Quality::forecast);
  CHECK(w.file->ahead_of_utc->in(units::hours) == Approx(2.0));
  CHECK(w.file->latitude == 41.9);
  CHECK(w.file->longitude == 12.5);
  CHECK(w.file->elevation->in(units::metres) == 20.0);
  CHECK(w.hours()[0].at == hour("2027-05-03T08:00"));
}

TEST_CASE("the rain at a stamp fell in the hour before it") {
  // Form's own description, from memory: precipitation is the sum of the preceding hour.
  const Weather w(forecast().dump());
  check_same(shown(w.hours()[0].known), {14.5, 60, 6.9, 0.4, 10});
  check_same(shown(w.hours()[1].known), {15, 58, 6.8, 0, 5});
  // Of the last hour nobody knows, so it stays closed; the first stamp's rain is before the file.
  check_same(shown(w.hours()[2].known), {16, 55, 7, unknown, 0});
}

TEST_CASE("rain across a jump of the clock") {
  json file = forecast();
  file["hourly"]["time"] = {"2027-10-31T02:00", "2027-10-31T02:00", "2027-10-31T03:00"};
  file["hourly"]["precipitation"] = {5.0, 1.0, 2.0};
  const Weather w(file.dump());
  CHECK(w.problems.all()[0].code == "repeated-hour");
  CHECK(w.problems.all()[0].pointer == "/hourly/time/1");
  REQUIRE(w.hours().size() == 2);
  // 1.0 fell from the first 02:00 to the second, 2.0 from the second to 03:00.
  CHECK(shown(w.hours()[0].known).rain == Approx(3.0));
  file["hourly"]["time"] = {"2027-03-28T01:00", "2027-03-28T03:00", "2027-03-28T04:00"};
  const Weather spring(file.dump());
  CHECK(spring.problems.all()[0].code == "missing-hours");
  // It cannot be told from a gap, so the rain at 03:00 is nobody's.
  CHECK(shown(spring.hours()[0].known).rain == unknown);
}

TEST_CASE("units are read, never assumed") {
  json file = forecast();
  file["hourly_units"]["temperature_2m"] = "\u00b0F";
  file["hourly"]["temperature_2m"] = {50.0, 59, 60};
  CHECK(first(file, &Shown::air) == Approx(10.0));
  file["hourly_units"]["precipitation"] = "inch";
  CHECK(first(file, &Shown::rain) == Approx(10.16));
  file["hourly_units"]["wind_speed_10m"] = "mp/h";
  file["hourly"]["wind_speed_10m"] = {10, 10, 10};
  CHECK(first(file, &Shown::wind) == Approx(4.4704));
  file["hourly_units"]["wind_speed_10m"] = "kn";
  CHECK(first(file, &Shown::wind) == Approx(5.14444).epsilon(1e-5));
  file["hourly_units"]["wind_speed_10m"] = "m/s";
  CHECK(first(file, &Shown::wind) == Approx(10.0));
  file["hourly_units"]["wind_speed_10m"] = "furlong";
  file["hourly_units"]["temperature_2m"] = "K";
  file["hourly_units"].erase("precipitation");
  file["hourly_units"]["dew_point_2m"] = 1;
  CHECK(problems_of(file) == Found{"missing-key /hourly_units/precipitation",
                                   "wrong-type /hourly_units/dew_point_2m",
                                   "wrong-unit /hourly_units/temperature_2m",
                                   "wrong-unit /hourly_units/wind_speed_10m"});
}

TEST_CASE("times as seconds in UTC") {
  json file = forecast();
  file["hourly_units"]["time"] = "unixtime";
  // 2027-05-03T06:00Z by python3's datetime.
  file["hourly"]["time"] = {1809324000, 1809327600, 1809331200};
  CHECK(Weather(file.dump()).hours()[0].at == hour("2027-05-03T08:00"));
  file["hourly"]["time"] = {1809324000, 1809325800, 1e300};
  CHECK(problems_of(file) == Found{"not-a-full-hour /hourly/time/1", "not-a-date /hourly/time/2"});
  file["hourly"]["time"] = {"2027-05-03T08:00", -1, nullptr};
  CHECK(problems_of(file).size() == 3);
}

TEST_CASE("null is unknown, and counted") {
  json file = forecast();
  file["hourly"]["temperature_2m"][1] = nullptr;
  file["hourly"]["precipitation"] = {0, nullptr, nullptr};
  file["hourly"]["wind_speed_10m"][0] = nullptr;
  file["hourly"]["relative_humidity_2m"][0] = nullptr;
  const Weather w(file.dump());
  CHECK(w.problems.size() == 2);
  CHECK(w.file.has_value());
  check_same(shown(w.hours()[0].known), {14.5, unknown, 6.9, unknown, unknown});
  check_same(shown(w.hours()[1].known), {unknown, 58, 6.8, unknown, 5});
}

TEST_CASE("every mistake of a forecast in its place") {
  json file = forecast();
  file["hourly"]["temperature_2m"] = {14.5, "15", 600};
  file["hourly"]["precipitation"] = {0.0, true, -1, 0};
  file["hourly"]["time"][1] = "yesterday";
  file["utc_offset_seconds"] = 99999;
  file["latitude"] = "north";
  CHECK(problems_of(file) == Found{"wrong-number-of-values /hourly/precipitation",
                                   "wrong-type /hourly/precipitation/1",
                                   "out-of-range /hourly/precipitation/2",
                                   "wrong-type /hourly/temperature_2m/1",
                                   "out-of-range /hourly/temperature_2m/2",
                                   "not-a-date /hourly/time/1",
                                   "not-a-number /latitude",
                                   "out-of-range /utc_offset_seconds"});
}

TEST_CASE("what is no forecast says what is missing") {
  CHECK(Weather("{}").found() == Found{"1:1 missing-key", "1:1 missing-key"});
  CHECK(Weather("[1]").found() == Found{"1:1 wrong-type"});
  CHECK(Weather(R"({"hourly": [], "hourly_units": {}})").found() == Found{"1:12 wrong-type"});
  CHECK(Weather(R"({"hourly": {"time": []}, "hourly_units": {}})").found() ==
        Found{"1:21 empty-list"});
  CHECK(Weather("{\"hourly\": {").problems.has_errors());
  CHECK(Weather(R"({"error": true, "reason": "x"})").problems.has_errors());
}

TEST_CASE("a clock far from the sun is doubted") {
  json file = forecast();
  // 151 E is ten hours ahead of the sun in Greenwich.
  file["longitude"] = 151.0;
  file["utc_offset_seconds"] = 0;
  CHECK(problems_of(file) == Found{"offset-unlikely /utc_offset_seconds"});
  // Urumqi keeps the time of Beijing, Vigo that of Berlin: odd, but so it is.
  file["longitude"] = 87.6;
  file["utc_offset_seconds"] = 28800;
  CHECK(problems_of(file).empty());
  file["longitude"] = -8.7;
  file["utc_offset_seconds"] = 7200;
  CHECK(problems_of(file).empty());
}

TEST_CASE("former spellings of the lists") {
  std::string text = forecast().dump();
  for (const auto& [now, former] : {std::pair("relative_humidity_2m", "relativehumidity_2m"),
                                    std::pair("dew_point_2m", "dewpoint_2m"),
                                    std::pair("wind_speed_10m", "windspeed_10m")}) {
    for (std::size_t at = 0; (at = text.find(now)) != std::string::npos;)
      text.replace(at, std::string(now).size(), former);
  }
  const Weather w(text);
  CHECK(w.found().empty());
  check_same(shown(w.hours()[0].known), {14.5, 60, 6.9, 0.4, 10});
}

TEST_CASE("forty years fit into a list, more do not") {
  std::string list = "1";
  for (int i = 0; i < 400'000; ++i) list += ",1";
  const Weather w("{\"hourly\": {\"visibility\": [" + list + "]}}");
  REQUIRE(w.problems.size() == 1);
  CHECK(w.problems.all()[0].code == "too-large");
}
