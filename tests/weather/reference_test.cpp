// The rows of tests/reference/weather_*.json, from outside libraries and published charts.
#include <algorithm>
#include <cmath>
#include <fstream>

#include "support/catch.hpp"
#include "support/places.hpp"
#include "weather_rows.hpp"

using namespace basinwright;
using nlohmann::json;

namespace {

json file(const std::string& name) {
  std::ifstream stream(places::source() + "/tests/reference/" + name);
  return json::parse(stream);
}

}  // namespace

TEST_CASE("every weather row agrees within its tolerance") {
  for (const char* name : {"weather_dew_point.json", "weather_sun.json"}) {
    const json rows = file(name);
    const auto compute = weather_rows::by_subject().at(rows.at("subject").get<std::string>());
    REQUIRE(rows.at("rows").size() >= 60);
    for (const json& row : rows.at("rows")) {
      INFO(row.at("name"));
      const json got = compute(row.at("input"));
      const json& tolerance =
          row.contains("tolerance") ? row.at("tolerance") : rows.at("tolerance");
      for (const auto& [key, wanted] : row.at("expected").items()) {
        INFO(key);
        REQUIRE(got.at(key).is_null() == wanted.is_null());
        if (wanted.is_null()) continue;
        const double room =
            tolerance.is_number() ? tolerance.get<double>() : tolerance.at(key).get<double>();
        CHECK(std::abs(got.at(key).get<double>() - wanted.get<double>()) <= room);
      }
    }
  }
}

TEST_CASE("polar day and night, and the poles") {
  const auto midsummer = *dates::parse_date("2027-06-21");
  const auto midwinter = *dates::parse_date("2027-12-21");
  // At 69.65 degrees north the sun does not set in June nor rise in December (any almanac).
  const weather::Position north{69.65, 18.96};
  CHECK(weather::sun(north, midsummer, units::hours(2)).up_all_day);
  CHECK_FALSE(weather::sun(north, midsummer, units::hours(2)).down_all_day);
  CHECK(weather::sun(north, midwinter, units::hours(1)).down_all_day);
  const weather::Position south{-69.65, 18.96};
  CHECK(weather::sun(south, midwinter, units::hours(1)).up_all_day);
  CHECK(weather::sun(south, midsummer, units::hours(1)).down_all_day);
  // A pole has neither rise nor set at a solstice, and no infinity either.
  CHECK(weather::sun({90, 0}, midsummer, units::Duration()).up_all_day);
  CHECK(weather::sun({-90, 0}, midsummer, units::Duration()).down_all_day);
  CHECK(std::isfinite(weather::sun({90, 0}, midsummer, units::Duration()).noon.si()));
}

TEST_CASE("a clock an hour ahead shows every event an hour later") {
  const auto day = *dates::parse_date("2027-05-10");
  const auto winter = weather::sun({40, -3}, day, units::hours(1));
  const auto summer = weather::sun({40, -3}, day, units::hours(2));
  CHECK((*summer.sunrise - *winter.sunrise).in(units::minutes) == Approx(60).margin(0.1));
  CHECK((*summer.first_light - *winter.first_light).in(units::minutes) == Approx(60).margin(0.1));
}
