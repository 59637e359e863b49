// A small job replayed, worked out by hand: 48 h dry and 16 h of sheets after the etch, coats 08:00
// to 11:00 on working days 20.5 to 23.5 h apart, no rain for 12 h after nor 3 h before, the first
// coat within 7 days of the etch, fill 7 days after the last coat, 24 h of filling.
#include "basinwright/odds/replay.hpp"
#include "sequence/small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;

namespace {

std::string iso(const std::optional<dates::Moment>& moment) {
  return moment ? dates::iso(*moment) : "none";
}

/// The job under one year's showers, with what is usual: fine weather.
struct Replayed {
  SmallJob job;
  odds::Run foresight, foreman;

  explicit Replayed(const std::vector<std::string>& showers, int forecast_hours = 72) {
    job.record = fine_days("2027-05-09", 40);
    const weather::Record fine = job.record;
    for (const std::string& at : showers) job.put(at, rainy(1.2));
    const auto question = job.question();
    const sequence::Posed year(question, job.record, 30);
    std::vector<sequence::Posed> usual;
    for (int i = 0; i < 3; ++i) usual.emplace_back(question, fine, 30);
    foresight = odds::with_foresight(year);
    foreman = odds::as_a_foreman(year, odds::climatology(usual), forecast_hours);
  }
};

}  // namespace

TEST_CASE("in fine weather foresight is worth nothing") {
  const Replayed r({});
  CHECK(iso(r.foresight.first_coat) == "2027-05-13T09:00");
  CHECK(iso(r.foresight.refill_done) == "2027-05-22T10:00");
  CHECK(iso(r.foreman.refill_done) == "2027-05-22T10:00");
  CHECK(iso(r.foreman.start) == "2027-05-10T07:00");
  CHECK(r.foreman.etched_again == 0);
}

TEST_CASE("the replay with foresight is the programme") {
  const Replayed r({"2027-05-13T14:00", "2027-05-19T03:00"});
  const auto programme = r.job.programme();
  REQUIRE(programme.feasible);
  CHECK(iso(r.foresight.refill_done) == dates::iso(programme.refill_done));
  CHECK(iso(r.foresight.first_coat) == start_of(programme, "coat-1"));
  CHECK(iso(r.foresight.start) == dates::iso(programme.start));
}

TEST_CASE("a foreman who did not foresee the rain etches again") {
  // Rain on Thursday: dry again for 48 h on Saturday, coats on Monday and Tuesday. One who knew it
  // etches a little later than Monday 07:00; the foreman's etch of Monday 08:00 is too old on
  // Monday 08:30. He etches again, lays the sheets on Monday and coats on Tuesday and Wednesday.
  const Replayed r({"2027-05-13T14:00"});
  CHECK(iso(r.foresight.first_coat) == "2027-05-17T09:00");
  CHECK(iso(r.foresight.refill_done) == "2027-05-26T10:00");
  CHECK(r.foreman.etched_again == 1);
  CHECK(iso(r.foreman.first_coat) == "2027-05-18T09:00");
  CHECK(iso(r.foreman.refill_done) == "2027-05-27T10:00");
}

TEST_CASE("a recoat window that goes by ends the year unfinished") {
  // Forty hours of forecast know all about today and nothing of tomorrow: the first coat goes on,
  // and the rain of Friday afternoon closes the only morning for the second.
  const Replayed short_sighted({"2027-05-14T14:00"}, 40);
  CHECK(iso(short_sighted.foreman.first_coat) == "2027-05-13T09:00");
  CHECK(short_sighted.foreman.window_missed);
  CHECK_FALSE(short_sighted.foreman.refill_done.has_value());
  // Three days of forecast see it coming.
  const Replayed usual({"2027-05-14T14:00"});
  CHECK_FALSE(usual.foreman.window_missed);
  CHECK(usual.foreman.refill_done.has_value());
  CHECK_THROWS_AS(Replayed({}, 30), std::invalid_argument);
}

TEST_CASE("no weather that allows painting is a year without dates") {
  std::vector<std::string> all;
  for (int d = 9; d <= 31; ++d)
    all.push_back((d < 10 ? "2027-05-0" : "2027-05-") + std::to_string(d) + "T12:00");
  for (int d = 1; d <= 9; ++d) all.push_back("2027-06-0" + std::to_string(d) + "T12:00");
  const Replayed r(all);
  CHECK_FALSE(r.foresight.refill_done.has_value());
  CHECK_FALSE(r.foreman.refill_done.has_value());
}

TEST_CASE("what is usual is what most of the other years had") {
  SmallJob job;
  const weather::Record fine = fine_days("2027-05-09", 40);
  weather::Record wet = fine;
  wet.put(hour("2027-05-13T09:00"), rainy(3.0));
  const auto question = job.question();
  std::vector<sequence::Posed> years;
  for (const weather::Record* record : std::vector<const weather::Record*>{&wet, &wet, &fine})
    years.emplace_back(question, *record, 30);
  const std::size_t paint = years[0].problem().units.calendar;
  const auto open_at = [&](const odds::Climatology& usual, int slot) {
    return usual.calendars[paint][static_cast<std::size_t>(slot)] != 0;
  };
  constexpr int thursday_nine = 3 * 96 + 9 * 4;
  CHECK_FALSE(open_at(odds::climatology(years), thursday_nine));
  CHECK_FALSE(open_at(odds::climatology(years, 2), thursday_nine));
  // One wet and one fine: open in half of them, and wet in no more than half.
  CHECK(open_at(odds::climatology(years, 0), thursday_nine));
  CHECK(odds::climatology(years, 0).wet[thursday_nine] == 0);
  CHECK(odds::climatology(years).wet[thursday_nine] == 1);
  CHECK_THROWS_AS(odds::climatology({}), std::invalid_argument);
}

TEST_CASE("painting hours are lost to the rule that closed them") {
  SmallJob job;
  job.record = fine_days("2027-05-09", 40);
  job.put("2027-05-11T14:00", rainy(1.0));
  const auto question = job.question();
  const sequence::Posed year(question, job.record, 30);
  // Monday, Tuesday and Wednesday until midnight: 9 painting hours; Tuesday's 3 have rain within 12
  // h.
  const auto slots = year.painting_slots(3 * 96);
  CHECK(slots[static_cast<std::size_t>(weather::Rule::rain)] == 12);
  CHECK(slots.back() == 24);
}
