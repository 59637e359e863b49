// The whole thread under weather: a plan, its page and its JSON. Weather made by hand; dates by
// hand from the plain pool's own (plain_pool_test.cpp).
#include <algorithm>
#include <nlohmann/json.hpp>

#include "basinwright/render/json.hpp"
#include "basinwright/render/text.hpp"
#include "basinwright/report/pages.hpp"
#include "support/catch.hpp"
#include "support/plans.hpp"
#include "weather/making.hpp"

namespace {

using namespace basinwright;
using namespace weather_making;

struct Page {
  job::Job job;
  job::RateBook rates = test::demonstration();
  job::Plan plan;
  std::string text;
  nlohmann::json json;
};

void write(Page& page, units::System system) {
  const report::Subject subject{page.job, page.rates, page.plan, system};
  page.text = render::text(report::jobsheet(subject), {.width = 400});
  page.json = nlohmann::json::parse(render::json(report::jobsheet(subject)));
}

Page plain_pool_under(const weather::Record* record,
                      units::System units = units::System::metric,
                      const std::string& job_text = test::file_text("examples/plain-pool.json")) {
  Page page;
  page.job = test::job_of(job_text);
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  now.weather = record;
  page.plan = job::make_plan(page.job, page.rates, now);
  write(page, units);
  return page;
}

bool plan_has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

nlohmann::json task(const Page& page, const std::string& name) {
  for (const auto& t : page.json.at("programme").at("tasks")) {
    if (t.at("task") == name) return t;
  }
  throw std::runtime_error("no task " + name);
}

}  // namespace

TEST_CASE("a page under a forecast names its basis, its reasons and its figures") {
  weather::Record record = fine_days("2027-05-01", 25);
  record.put(hour("2027-05-11T14:00"), rainy(1.2));
  const Page page = plain_pool_under(&record);
  // Rain on the afternoon of the second coat: dry for 48 h on Thursday afternoon, so the next pair
  // of mornings is Monday and Tuesday.
  CHECK(task(page, "coat-1").at("start") == "2027-05-17T09:00");
  CHECK(task(page, "coat-2").at("start") == "2027-05-18T08:00");
  CHECK(page.json.at("programme").at("weather") == "forecast");
  CHECK(task(page, "coat-1").at("rests_on") == "forecast");
  CHECK(task(page, "fill").at("rests_on") == "calendar");
  const auto why = task(page, "coat-1").at("held_by");
  CHECK(std::ranges::find(why, "rain Tue 11 May 14:00, 1.2 mm") != why.end());
  CHECK(plan_has(page.text, "forecast read, until Wed 26 May 00:00; the calendar alone beyond it"));
  CHECK(plan_has(page.text, "rain Tue 11 May 14:00, 1.2 mm"));
  CHECK(plan_has(page.text, "the dates follow the calendar alone: the weather read ends"));
  CHECK_FALSE(plan_has(page.text, "No weather has been read"));
}

TEST_CASE("limits that nobody gave are listed once weather is held against them") {
  weather::Record record = fine_days("2027-05-01", 60);
  const auto listed = [](const Page& page, const std::string& key) {
    const auto& defaults = page.json.at("defaults_used");
    return std::ranges::any_of(defaults, [&](const auto& d) { return d.at("key") == key; });
  };
  const Page with = plain_pool_under(&record);
  const Page without = plain_pool_under(nullptr);
  CHECK(listed(with, "weather.shell_lag"));
  CHECK_FALSE(listed(without, "weather.shell_lag"));
  CHECK(without.json.at("programme").at("weather") == "none");
  CHECK(task(without, "coat-1").at("rests_on") == "calendar");
  CHECK(plan_has(without.text, "No weather has been read"));
}

TEST_CASE("figures follow the unit system of the page") {
  weather::Record record = fine_days("2027-05-01", 60);
  weather::Hour hot = fine();
  hot.air->value = units::celsius(34);
  hot.humidity->value = 0.3;
  record.put(hour("2027-05-10T12:00"), hot);
  CHECK(
      plan_has(plain_pool_under(&record).text, "air Mon 10 May 12:00, 34.0 °C (at most 30.0 °C)"));
  CHECK(plan_has(plain_pool_under(&record, units::System::us).text,
                 "air Mon 10 May 12:00, 93.2 °F (at most 86.0 °F)"));
}

TEST_CASE("a job that no weather lets through says why and what would do") {
  // Words and keys alone: what leads to a programme without dates is tested in sequence.
  weather::Record record = fine_days("2027-05-01", 60);
  Page page = plain_pool_under(&record);
  using sequence::Constraint;
  weather::Verdict hot;
  hot.closed_by = weather::Rule::air_max;
  hot.hour = hour("2027-06-01T14:00");
  hot.measured = units::celsius(30.04);
  hot.limit = units::celsius(30);
  sequence::Programme& p = page.plan.programme;
  p.feasible = false;
  p.bookings.clear();
  p.blocked_by = sequence::Blocked{"coat-2", "", sequence::Blocked::Why::weather};
  p.blocked_by->together = {Constraint::painting_hours, Constraint::air};
  p.blocked_by->alone = {Constraint::air};
  p.blocked_by->nearest = {{*dates::parse_moment("2027-06-01T08:00"), hot}};
  p.blocked_by->ways_out = {
      {sequence::WayOut::How::saturday_work, *dates::parse_moment("2027-03-14T10:00")}};
  write(page, units::System::metric);
  const auto& blocked = page.json.at("programme").at("blocked_by");
  CHECK(blocked.at("task") == "coat-2");
  CHECK(blocked.at("together") == nlohmann::json({"painting-hours", "air"}));
  CHECK(blocked.at("alone") == nlohmann::json({"air"}));
  CHECK(blocked.at("ways_out").at(0).at("how") == "saturday-work");
  CHECK(blocked.at("ways_out").at(0).at("refill_done") == "2027-03-14T10:00");
  // The figure and the limit never read the same.
  CHECK(blocked.at("nearest").at(0).at("closed_by") ==
        "air Tue 1 Jun 14:00, 30.04 °C (at most 30.00 °C)");
  CHECK(plan_has(page.text, "But with Saturday work: full Sun 14 Mar 2027"));
  CHECK(plan_has(page.text, "air temperature (said, not offered)"));
}

TEST_CASE("rain after the dryness test and the kind of hardener are said") {
  weather::Record record = fine_days("2027-05-01", 60);
  Page page = plain_pool_under(&record);
  CHECK(page.json.at("programme").at("hardener").is_null());
  sequence::Programme& p = page.plan.programme;
  p.rain_after_test = dates::parse_moment("2027-05-09T14:00");
  p.hardener = sequence::Hardener{
      sequence::Hardener::Kind::straddles, units::celsius(16), units::celsius(19.5)};
  write(page, units::System::metric);
  CHECK(
      plan_has(page.text, "Rain on Sun 9 May 14:00 after the dryness test: lay the sheets again"));
  CHECK(page.json.at("programme").at("rain_after_dryness_test") == "2027-05-09T14:00");
  CHECK(page.json.at("programme").at("hardener") == "straddles");
  CHECK(plan_has(page.text, "air 16.0 °C to 19.5 °C while painting and in first cure"));
}

TEST_CASE("heavy rain before the drain is a caution with its figure") {
  weather::Record record = fine_days("2027-05-01", 60);
  record.put(hour("2027-05-02T18:00"), rainy(31));
  const Page page = plain_pool_under(&record);
  const auto& cautions = page.json.at("cautions");
  const auto it = std::ranges::find_if(
      cautions, [](const auto& c) { return c.at("code") == "rain-before-drain"; });
  REQUIRE(it != cautions.end());
  CHECK(plan_has(it->at("text").template get<std::string>(), "31 mm"));
}
