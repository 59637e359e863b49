// Each value of the rate book that weather is held against changes what it should and nothing else,
// and is no longer listed as a default. The example pool under its example weather; what may move
// was written from what each value means (common practice).
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "basinwright/readers/weather_file.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"

namespace {

using namespace basinwright;
using nlohmann::json;
using WeatherNames = std::set<std::string>;

json weather_sheet(const json& book) {
  json given = json::parse(test::file_text("examples/plain-pool.json"));
  given["coating"]["system"] = book.at("coating_systems").items().begin().key();
  const job::Job job = test::job_of(given.dump());
  const job::RateBook rates = test::rates_of(book.dump());
  diagnostics::Problems problems;
  const auto file = readers::read_weather(
      {"weather.csv", test::file_text("examples/plain-pool.weather.csv")}, problems);
  const weather::Record record = readers::merge({file.value()}, 0, 0);
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  now.weather = &record;
  const job::Plan plan = job::make_plan(job, rates, now);
  return json::parse(render::json(report::jobsheet({job, rates, plan})));
}

json demonstration() {
  return json::parse(readers::demonstration_rates().bytes);
}

json with_weather(const std::string& pointer, const json& value) {
  json book = demonstration();
  book[json::json_pointer(pointer)] = value;
  return book;
}

bool listed(const json& sheet, const std::string& key) {
  return std::ranges::any_of(sheet.at("defaults_used"),
                             [&](const json& d) { return d.at("key") == key; });
}

std::string of_system(const std::string& key) {
  return "/coating_systems/" + demonstration().at("coating_systems").items().begin().key() + key;
}

struct Change {
  std::string pointer;
  json value;
  std::string key;    ///< As the list of defaults has it; empty: no default stands behind it.
  bool moves = true;  ///< The dates or what is said of the weather.
};

// Dates move, and with them orders, hire and the days that are paid; figures of the pool do not.
const WeatherNames dated_weather{"mixing",
                                 "programme",
                                 "purchases",
                                 "orders",
                                 "hire",
                                 "labour",
                                 "consumables",
                                 "price",
                                 "refill",
                                 "cautions",
                                 "defaults_used",
                                 "notices"};

}  // namespace

TEST_CASE("each value that weather is held against changes the dates and nothing else") {
  const json before = weather_sheet(demonstration());
  const std::vector<Change> changes{
      {of_system("/limits/wind_max"), "2 m/s", ""},
      {of_system("/limits/wind_max"), "60 m/s", "", false},
      {of_system("/limits/humidity_max"), "55 %", ""},
      {"/weather/least_rain", "5 mm", "weather.least_rain"},
      {"/weather/shell_lag", "60 h", "weather.shell_lag"},
      {"/weather/frost", "22 C", "weather.frost"},
      {"/weather/frost", "-1 C", "weather.frost", false},
      {"/weather/heavy_rain", "26 mm", "weather.heavy_rain", false},
      {"/weather/heavy_rain_within", "400 h", "weather.heavy_rain_within"}};
  for (const Change& change : changes) {
    INFO(change.pointer << " = " << change.value);
    const json after = weather_sheet(with_weather(change.pointer, change.value));
    bool moved = false;
    for (const auto& [name, part] : before.items()) {
      const bool differs = !after.contains(name) || after.at(name) != part;
      if (differs) CHECK(dated_weather.contains(name));
      moved = moved || (differs && name != "defaults_used");
    }
    CHECK(moved == change.moves);
    if (!change.key.empty()) {
      CHECK(listed(before, change.key));
      CHECK_FALSE(listed(after, change.key));
    }
  }
}

// Two kinds of Part B: above the border the standard kind, below it that for cool weather.
TEST_CASE("the border between the kinds of Part B is that of the sheet") {
  json book = with_weather(of_system("/hardeners"), {"standard", "cool weather"});
  CHECK(listed(weather_sheet(book), "coating.cool_hardener_to"));
  const auto kind = [&](const char* border) {
    json changed = book;
    changed[json::json_pointer(of_system("/cool_hardener_to"))] = border;
    const json sheet = weather_sheet(changed);
    CHECK_FALSE(listed(sheet, "coating.cool_hardener_to"));
    return sheet.at("programme").at("hardener");
  };
  CHECK(kind("2 C") == "standard");
  CHECK(kind("40 C") == "cool");
}
