// The programme under weather, worked out by hand: 48 h dry and 16 h of sheets after the etch,
// coats 08:00 to 11:00 on working days, 20.5 to 23.5 h apart, no rain for 12 h after nor 3 h
// before.
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;
using sequence::Held;
using weather::Quality;
using weather::Rule;

namespace {

SmallJob fine_job(int days = 40) {
  SmallJob job;
  job.record = fine_days("2027-05-09", days);
  return job;
}

bool held_by(const sequence::Booking& b, Held::By by) {
  return std::ranges::any_of(b.held_by, [by](const Held& h) { return h.by == by; });
}

}  // namespace

TEST_CASE("fine weather changes nothing but what the dates rest on") {
  SmallJob job = fine_job();
  const auto under_sky = job.programme();
  job.record = weather::Record();
  const auto by_calendar = job.programme();
  REQUIRE(under_sky.feasible);
  for (const auto* task : {"etch-walls", "dryness-test", "coat-1", "coat-2", "fill"}) {
    CHECK(start_of(under_sky, task) == start_of(by_calendar, task));
    CHECK(booking(under_sky, task).rests_on == Quality::forecast);
    CHECK(booking(by_calendar, task).rests_on == Quality::missing);
  }
  // Etch Mon 07:00 to 08:00, 48 h dry, sheets Wed 08:00 to Thu 00:00, coats Thu and Fri. The second
  // may start 20.5 to 23.5 h later, and has most in hand when the first ends with the morning.
  CHECK(start_of(under_sky, "dryness-test") == "2027-05-12T08:00");
  CHECK(start_of(under_sky, "coat-1") == "2027-05-13T09:00");
  CHECK(start_of(under_sky, "coat-2") == "2027-05-14T08:00");
  CHECK(start_of(under_sky, "fill") == "2027-05-21T10:00");
  CHECK(under_sky.weather == sequence::WeatherBasis::forecast);
  CHECK(by_calendar.weather == sequence::WeatherBasis::none);
}

TEST_CASE("rain on the afternoon of a coat moves both coats and is named") {
  SmallJob job = fine_job();
  job.put("2027-05-13T14:00", rainy(1.2));
  const auto p = job.programme();
  // Thursday rain: dry again for 48 h on Saturday, so Monday and Tuesday.
  CHECK(start_of(p, "coat-1") == "2027-05-17T09:00");
  CHECK(start_of(p, "coat-2") == "2027-05-18T08:00");
  const auto why = causes(p, "coat-1");
  REQUIRE_FALSE(why.empty());
  CHECK(why.front().rule == Rule::rain);
  CHECK(why.front().at == "2027-05-13T14:00");
  const auto& verdict = *booking(p, "coat-1").held_by.front().weather;
  CHECK(std::get<units::Length>(verdict.measured).in(units::millimetres) == Approx(1.2));
  // It rained after the sheets were read.
  REQUIRE(p.rain_after_test.has_value());
  CHECK(dates::iso(*p.rain_after_test) == "2027-05-13T14:00");
}

TEST_CASE("rain in the dry days holds the dryness test") {
  SmallJob job = fine_job();
  job.put("2027-05-11T03:00", rainy(0.4));
  const auto p = job.programme();
  // 48 h after 04:00 on Tuesday: Thursday 07:00; sheets until 23:00; coats Monday and Tuesday,
  // since Friday's second coat would fall on a Saturday.
  CHECK(start_of(p, "dryness-test") == "2027-05-13T07:00");
  const auto why = causes(p, "dryness-test");
  REQUIRE(why.size() == 1);
  CHECK(why[0].rule == Rule::dry_before);
  CHECK(why[0].at == "2027-05-11T03:00");
  CHECK(start_of(p, "coat-1") == "2027-05-17T09:00");
}

TEST_CASE("dew holds a coat to later in the morning") {
  SmallJob job = fine_job();
  for (sequence::Work& work : job.work) work.person_hours = units::hours(1);
  weather::Hour damp = fine();
  damp.humidity->value = 0.84;
  job.put("2027-05-14T08:00", damp);
  const auto p = job.programme();
  // Thursday 10:00 to 11:00, and Friday from 09:00 is 23 h later; without the dew 08:00.
  CHECK(start_of(p, "coat-2") == "2027-05-14T09:00");
  const auto why = causes(p, "coat-2");
  REQUIRE(why.size() == 1);
  CHECK(why[0].rule == Rule::dew_margin);
  CHECK(why[0].at == "2027-05-14T08:00");
}

TEST_CASE("an hour nobody knows holds like rain") {
  SmallJob job;
  weather::Record& r = job.record;
  const auto first = hour("2027-05-09T00:00");
  for (int h = 0; h < 40 * 24; ++h) {
    weather::Hour now = fine();
    if (first + h == hour("2027-05-13T16:00")) now.rain.reset();
    r.put(first + h, now);
  }
  const auto p = job.programme();
  CHECK(start_of(p, "coat-1") == "2027-05-17T09:00");
  const auto why = causes(p, "coat-1");
  REQUIRE_FALSE(why.empty());
  CHECK(why.front().unknown);
  CHECK(why.front().at == "2027-05-13T16:00");
}

TEST_CASE("past the end of the forecast the calendar alone decides, and it is said") {
  SmallJob job = fine_job(5);  // Sunday 9 May to Thursday 13 May
  const auto p = job.programme();
  CHECK(start_of(p, "coat-1") == "2027-05-13T09:00");
  CHECK(booking(p, "dryness-test").rests_on == Quality::forecast);
  // Twelve hours after 10:30 on Thursday are still inside; Friday is not.
  CHECK(booking(p, "coat-1").rests_on == Quality::forecast);
  CHECK(booking(p, "coat-2").rests_on == Quality::missing);
  CHECK(booking(p, "fill").rests_on == Quality::missing);
}

TEST_CASE("frost holds the etch, rain does not") {
  SmallJob job = fine_job();
  for (int h = 0; h < 24; ++h) {
    weather::Hour frozen = fine();
    frozen.air->value = units::celsius(-1);
    frozen.rain->value = units::millimetres(1);
    job.record.put(hour("2027-05-10T00:00") + h, frozen);
  }
  for (int h = 0; h < 12; ++h) job.record.put(hour("2027-05-11T00:00") + h, rainy(2));
  const auto p = job.programme();
  CHECK(start_of(p, "etch-walls") == "2027-05-11T07:00");
  const auto why = causes(p, "etch-walls");
  REQUIRE(why.size() == 1);
  CHECK(why[0].rule == Rule::air_min);
}

TEST_CASE("tools and filler wait for dry hours, washes do not") {
  SmallJob job = fine_job();
  job.work.insert(job.work.begin(),
                  {{"degrease", "", units::hours(2), 1, 1}, {"abrade", "", units::hours(3), 1, 1}});
  job.put("2027-05-10T07:00", rainy(3));
  job.put("2027-05-10T09:00", rainy(3));
  job.put("2027-05-10T11:00", rainy(3));
  const auto p = job.programme();
  CHECK(start_of(p, "degrease") == "2027-05-10T07:00");
  CHECK(start_of(p, "abrade") == "2027-05-10T10:00");
  CHECK(dates::iso(booking(p, "abrade").end) == "2027-05-10T14:00");
  const auto why = causes(p, "abrade");
  REQUIRE(why.size() == 1);
  CHECK(why[0].at == "2027-05-10T09:00");
}

TEST_CASE("cure by the air that was read, month means beyond it") {
  SmallJob job = fine_job(60);
  job.system.cure_cold.value = units::days(14);
  CHECK(job.programme().cure.in(units::days) == Approx(7).margin(0.01));  // 20 C: warm
  CHECK(job.programme().cure_by_weather);
  job.record = weather::Record();
  const auto first = hour("2027-05-09T00:00");
  for (int h = 0; h < 60 * 24; ++h) {
    weather::Hour cool = fine();
    cool.air->value = units::celsius(10);
    cool.humidity->value = 0.4;
    job.record.put(first + h, cool);
  }
  CHECK(job.programme().cure.in(units::days) == Approx(14).margin(0.01));
  // Half the cure in the forecast at 20 C, the rest at the month's 10 C: 3.5 d, then 7 d.
  job.record = fine_days("2027-05-09", 5 + 1 + 3);  // to Monday 17 May, 24:00
  auto q = job.question();
  q.temperatures[4] = q.temperatures[5] = units::celsius(10);
  const auto p = sequence::programme(q);
  // From Friday 10:00: 86 h count full, the remaining 82 h take twice as long.
  CHECK(p.cure.in(units::hours) == Approx(86 + 2 * 82).margin(0.26));
  CHECK(p.cure_by_temperature);
}

TEST_CASE("the kind of hardener follows the air of painting and first cure") {
  SmallJob job = fine_job();
  CHECK_FALSE(job.programme().hardener.has_value());  // the sheet has no kinds
  job.system.hardeners = {"standard", "cool weather"};
  CHECK(job.programme().hardener->kind == sequence::Hardener::Kind::standard);
  const auto set_air = [&](double celsius) {
    for (int h = 0; h < 40 * 24; ++h) {
      weather::Hour now = fine();
      now.humidity->value = 0.4;
      now.air->value = units::celsius(celsius);
      job.record.put(hour("2027-05-09T00:00") + h, now);
    }
  };
  set_air(15);
  CHECK(job.programme().hardener->kind == sequence::Hardener::Kind::cool);
  weather::Hour warm = fine();
  job.put("2027-05-14T15:00", warm);  // in the sixth hour after the second coat ends
  const auto p = job.programme();
  CHECK(p.hardener->kind == sequence::Hardener::Kind::straddles);
  CHECK(p.hardener->low.in(units::celsius) == Approx(15));
  CHECK(p.hardener->high.in(units::celsius) == Approx(20));
  // The sheet's own bound is warm enough for the standard kind.
  job.system.cool_hardener_to.value = units::celsius(15);
  CHECK(job.programme().hardener->kind == sequence::Hardener::Kind::standard);
}

TEST_CASE("heavy rain before the drain is said and moves nothing") {
  SmallJob job = fine_job();
  job.work.insert(job.work.begin(), sequence::Work{"drain", "", units::Duration(), 0, 1});
  const auto dry = job.programme();
  CHECK_FALSE(dry.rain_before_drain.has_value());
  job.put("2027-05-09T20:00", rainy(30));
  const auto p = job.programme();
  REQUIRE(p.rain_before_drain.has_value());
  CHECK(p.rain_before_drain->in(units::millimetres) == Approx(30));
  CHECK(start_of(p, "drain") == start_of(dry, "drain"));
}

TEST_CASE("observed hours alone are a replay") {
  SmallJob job;
  job.record = fine_days("2027-05-09", 60, Quality::observed);
  const auto p = job.programme();
  CHECK(p.weather == sequence::WeatherBasis::replayed);
  CHECK(booking(p, "coat-1").rests_on == Quality::observed);
  CHECK(held_by(booking(p, "coat-2"), Held::By::recoat_window));
}

// The example of a wet week: etch and sheets fit into the dry days before it, but the coats have to
// wait. The pool is not drained for that: the last etch that leads to the same coats is the one.
TEST_CASE("the pool is drained no sooner than the coats ask for") {
  SmallJob job = fine_job();
  job.work.insert(job.work.begin(), sequence::Work{"drain", "", units::Duration(), 0, 1});
  for (const char* wet : {"2027-05-13T14:00", "2027-05-17T14:00", "2027-05-18T14:00"}) {
    job.put(wet, rainy(2));
  }
  const auto p = job.programme();
  REQUIRE(p.feasible);
  // Rain on Tuesday the 18th at 14:00: dry for 48 h on Thursday at 15:00, so Monday the 24th;
  // sheets on Friday at the latest, 48 h after an etch on Wednesday, which is drained for on that
  // day.
  CHECK(start_of(p, "coat-1") == "2027-05-24T09:00");
  CHECK(start_of(p, "drain").substr(0, 10) == "2027-05-19");
  CHECK(held_by(booking(p, "drain"), Held::By::less_empty));
}
