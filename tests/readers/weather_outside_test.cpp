// Random files written by python3's csv and json modules, and the example held against the days it
// was made from.
#include <cmath>
#include <map>

#include "render/outside.hpp"
#include "support/places.hpp"
#include "weather_reading.hpp"

using namespace weather_reading;

namespace {

double value_of(const std::string& word) {
  return word == "-" ? unknown : std::stod(word);
}

void compare(const std::string& form, int seed) {
  const outside::Folder folder;
  const std::string path = folder.write("weather", "");
  const auto oracle =
      outside::run("/usr/bin/python3 '" + places::source() + "/tests/readers/weather_oracle.py' " +
                   form + " " + std::to_string(seed) + " '" + path + "'");
  REQUIRE(oracle.status == 0);
  std::ifstream file(path, std::ios::binary);
  const Weather w(std::string(std::istreambuf_iterator<char>(file), {}));
  INFO(form << " " << seed << "\n" << reading::told(w.problems));
  const auto lines = outside::lines(oracle.output);
  REQUIRE(w.hours().size() == lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    std::istringstream words(lines[i]);
    std::string at, air, humidity, dew_point, rain, wind;
    words >> at >> air >> humidity >> dew_point >> rain >> wind;
    CHECK(std::to_string(w.hours()[i].at) == at);
    check_same(
        shown(w.hours()[i].known),
        {value_of(air), value_of(humidity), value_of(dew_point), value_of(rain), value_of(wind)});
  }
}

}  // namespace

TEST_CASE("tables written by python3 are read value by value") {
  if (!outside::has("python3", "tables written by csv")) return;
  for (int seed = 1; seed <= 6; ++seed) compare("csv", seed);
}

TEST_CASE("forecasts written by python3 are read value by value") {
  if (!outside::has("python3", "forecasts written by json")) return;
  for (int seed = 1; seed <= 6; ++seed) compare("json", seed);
}

TEST_CASE("the example keeps the rain of the days it was made from") {
  // seattle-weather.csv of vega-datasets 3.2.1, 2013-05-18 to 2013-06-21, in tenths of a
  // millimetre.
  const std::vector<int> days{0, 0, 0, 137, 137, 41, 3, 0, 15, 97, 5, 56, 0, 0, 0, 10, 0, 0,
                              0, 0, 0, 0,   0,   0,  0, 3, 0,  0,  0, 0,  0, 3, 0, 30, 3};
  const Weather w(reading::contents("examples/plain-pool.weather.csv"));
  CHECK(w.found().empty());
  REQUIRE(w.hours().size() == days.size() * 24);
  for (std::size_t day = 0; day < days.size(); ++day) {
    double rain = 0.0;
    for (std::size_t h = 0; h < 24; ++h) rain += shown(w.hours()[day * 24 + h].known).rain;
    CHECK(rain * 10.0 == Approx(days[day]).margin(1e-6));
  }
}

TEST_CASE("humidity and dew point of the example are of one air") {
  // Magnus with 17.62 and 243.12 C: WMO guide to instruments, No. 8. Both are rounded in the file.
  const auto vapour = [](double t) { return std::exp(17.62 * t / (243.12 + t)); };
  const Weather w(reading::contents("examples/plain-pool.weather.csv"));
  for (const auto& at : w.hours()) {
    const Shown s = shown(at.known);
    CHECK(s.humidity == Approx(100.0 * vapour(s.dew_point) / vapour(s.air)).margin(1.0));
    CHECK(s.dew_point < s.air);
  }
}
