#include <algorithm>

#include "basinwright/weather/outlook.hpp"
#include "making.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace weather_making;
using weather::Conditions;
using weather::Gate;
using weather::Outlook;
using weather::Quality;
using weather::Record;
using weather::Rule;

namespace {

// The limits of a coat as common practice has them: air 10 to 30 C and for 6 h after, shell 10 to
// 32 C, 3 K over the dew point and 85 % through first cure, no rain for 12 h after and 3 h before.
Gate coat() {
  Gate g;
  g.air_min = units::celsius(10);
  g.air_max = units::celsius(30);
  g.air_after = units::hours(6);
  g.shell_min = units::celsius(10);
  g.shell_max = units::celsius(32);
  g.dew_margin = units::kelvins(3);
  g.humidity_max = units::percent(85);
  g.first_cure = units::hours(6);
  g.no_rain = true;
  g.rain_free_after = units::hours(12);
  g.dry_before = units::hours(3);
  return g;
}

// A day of open hours around one special hour, as the verdicts of a gate.
struct Asked {
  Asked(Record record, const Gate& gate)
      : conditions(record),
        hours(hours_of("2027-05-11T00:00", 48)),
        outlook(conditions, gate, {hours, 1}) {}
  [[nodiscard]] weather::Verdict at(const std::string& moment) const {
    return outlook.verdict(static_cast<std::int32_t>(hour(moment) - hours.front()));
  }
  Conditions conditions;
  std::vector<weather::HourNumber> hours;
  Outlook outlook;
};

Record with(const std::string& moment, const weather::Hour& special) {
  Record record = fine_days("2027-05-10", 5);
  record.put(hour(moment), special);
  return record;
}

bool is(const weather::Verdict& v, Rule rule, const std::string& when) {
  return v.closed_by == rule && v.hour == hour(when);
}

}  // namespace

TEST_CASE("rain closes its hour, the hours before it and the hours after it") {
  const Asked asked(with("2027-05-11T20:00", rainy(1.2)), coat());
  CHECK(asked.at("2027-05-11T07:00").open());
  // 12 h after an hour that begins at 08:00 reaches into 20:00.
  CHECK(is(asked.at("2027-05-11T08:00"), Rule::rain, "2027-05-11T20:00"));
  CHECK(is(asked.at("2027-05-11T20:00"), Rule::rain, "2027-05-11T20:00"));
  // Dry for 3 h before the work: 21:00, 22:00 and 23:00 are not.
  CHECK(is(asked.at("2027-05-11T21:00"), Rule::dry_before, "2027-05-11T20:00"));
  CHECK(is(asked.at("2027-05-11T23:00"), Rule::dry_before, "2027-05-11T20:00"));
  CHECK(asked.at("2027-05-12T00:00").open());
  const auto verdict = asked.at("2027-05-11T08:00");
  CHECK(std::get<units::Length>(verdict.measured).in(units::millimetres) == Approx(1.2));
  CHECK(std::get<units::Length>(verdict.limit).in(units::millimetres) == Approx(0.1));
}

TEST_CASE("less rain than a gauge shows is dry, the least it shows is not") {
  CHECK(Asked(with("2027-05-11T20:00", rainy(0.09)), coat()).at("2027-05-11T08:00").open());
  CHECK_FALSE(Asked(with("2027-05-11T20:00", rainy(0.1)), coat()).at("2027-05-11T08:00").open());
}

TEST_CASE("air limits hold while painting and for six hours after") {
  weather::Hour hot = fine();
  hot.air->value = units::celsius(34);
  hot.humidity->value = 0.3;
  const Asked asked(with("2027-05-11T15:00", hot), coat());
  CHECK(asked.at("2027-05-11T08:00").open());
  CHECK(is(asked.at("2027-05-11T09:00"), Rule::air_max, "2027-05-11T15:00"));
  CHECK(asked.at("2027-05-11T16:00").open());
  const auto verdict = asked.at("2027-05-11T09:00");
  CHECK(std::get<units::Temperature>(verdict.measured).in(units::celsius) == Approx(34));
  CHECK(std::get<units::Temperature>(verdict.limit).in(units::celsius) == Approx(30));
}

TEST_CASE("the limits themselves are inside, whatever the binary digits say") {
  weather::Hour edge = fine();
  edge.air->value = units::celsius(30);
  edge.humidity->value = 0.3;
  CHECK(Asked(with("2027-05-11T10:00", edge), coat()).at("2027-05-11T10:00").open());
  // A shell of 8.7 C over a dew point of 5.7 C stands 3.00 C above it.
  Gate only_dew;
  only_dew.dew_margin = units::kelvins(3);
  weather::Hour cool = fine();
  cool.shell = {units::celsius(8.7), Quality::observed};
  cool.dew_point = {units::celsius(5.7), Quality::observed};
  CHECK(Asked(with("2027-05-11T10:00", cool), only_dew).at("2027-05-11T10:00").open());
  cool.dew_point->value = units::celsius(5.71);
  CHECK(is(Asked(with("2027-05-11T10:00", cool), only_dew).at("2027-05-11T10:00"),
           Rule::dew_margin,
           "2027-05-11T10:00"));
}

TEST_CASE("gate vectors of coating practice") {
  // Air, humidity, shell, and whether the shell is 3 K over the dew point (Magnus, WMO pair).
  struct Row {
    double air, humidity, shell;
    bool open;
  };
  for (const Row& row : {Row{22, 0.60, 15, false},
                         Row{22, 0.60, 18, true},
                         Row{25, 0.80, 24, false},
                         Row{25, 0.80, 25, true},
                         Row{18, 0.85, 18, false},
                         Row{30, 0.85, 34, true}}) {
    weather::Hour h = fine();
    h.air->value = units::celsius(row.air);
    h.humidity->value = row.humidity;
    h.shell = {units::celsius(row.shell), Quality::observed};
    Gate gate;
    gate.dew_margin = units::kelvins(3);
    INFO(row.air << " " << row.humidity << " " << row.shell);
    CHECK(Asked(with("2027-05-11T10:00", h), gate).at("2027-05-11T10:00").open() == row.open);
  }
}

TEST_CASE("the first failing rule is named in the stated order") {
  weather::Hour bad = rainy(5);
  bad.air->value = units::celsius(4);
  bad.humidity->value = 1.0;
  const Asked asked(with("2027-05-11T10:00", bad), coat());
  CHECK(asked.at("2027-05-11T10:00").closed_by == Rule::air_min);
  const auto all =
      asked.outlook.failures(static_cast<std::int32_t>(hour("2027-05-11T10:00") - asked.hours[0]));
  REQUIRE(all.size() == 3);
  CHECK(all[1].closed_by == Rule::humidity);
  CHECK(all[2].closed_by == Rule::rain);
}

TEST_CASE("what is unknown inside the covered span closes, past it the calendar decides") {
  weather::Hour blind = fine();
  blind.rain.reset();
  Record record = fine_days("2027-05-10", 1);
  record.put(hour("2027-05-11T00:00"), blind);
  for (int h = 1; h < 24; ++h) record.put(hour("2027-05-11T00:00") + h, fine());
  const Asked asked(record, coat());
  const auto verdict = asked.at("2027-05-11T00:00");
  CHECK(verdict.closed_by == Rule::rain);
  CHECK(verdict.unknown);
  CHECK(asked.at("2027-05-11T04:00").rests_on == Quality::forecast);
  // 12 h after 12:00 leaves the span, which ends at midnight.
  CHECK(asked.at("2027-05-11T12:00").open());
  CHECK(asked.at("2027-05-11T12:00").rests_on == Quality::missing);
  CHECK(asked.at("2027-05-12T08:00").rests_on == Quality::missing);
}

TEST_CASE("past the span climatology closes and opens, and is named") {
  Record record = fine_days("2027-05-10", 1, Quality::observed);
  for (int h = 0; h < 72; ++h) {
    weather::Hour usual = fine(Quality::climatology);
    if (h == 40) usual.rain->value = units::millimetres(3);
    record.put(hour("2027-05-11T00:00") + h, usual);
  }
  const Asked asked(record, coat());
  CHECK(asked.at("2027-05-11T08:00").open());
  CHECK(asked.at("2027-05-11T08:00").rests_on == Quality::climatology);
  CHECK(is(asked.at("2027-05-12T08:00"), Rule::rain, "2027-05-12T16:00"));
}

TEST_CASE("wind is asked only where a limit stands") {
  weather::Hour windy = fine();
  windy.wind->value = units::metres_per_second(12);
  CHECK(Asked(with("2027-05-11T10:00", windy), coat()).at("2027-05-11T10:00").open());
  Gate gate = coat();
  gate.wind_max = units::metres_per_second(8);
  CHECK(is(Asked(with("2027-05-11T10:00", windy), gate).at("2027-05-11T10:00"),
           Rule::wind,
           "2027-05-11T10:00"));
}
