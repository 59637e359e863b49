// Painting from first light. Civil dawn at 33.45 N, 112.07 W on 21 June 2027 is 04:50 by a clock
// seven hours behind, from tests/reference/weather_sun.json (an astronomical library).
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;

namespace {

SmallJob summer() {
  SmallJob job;
  job.start = day("2027-06-21");
  // Hot from 12:00 on: six hours after a coat must end before.
  const auto first = weather_making::hour("2027-06-20T00:00");
  for (int h = 0; h < 40 * 24; ++h) {
    weather::Hour now = weather_making::fine();
    now.humidity->value = 0.2;
    now.shell = {units::celsius(25), weather::Quality::forecast};
    now.air->value = units::celsius(h % 24 >= 12 && h % 24 < 20 ? 36 : 27);
    job.record.put(first + h, now);
  }
  // Each morning has little more than an hour; an hour's coat fits twice within the window.
  job.work[2].person_hours = job.work[3].person_hours = units::minutes(30);
  job.most_days = 30;
  return job;
}

sequence::Programme programme(const SmallJob& job, std::optional<units::Duration> offset) {
  auto q = job.question();
  q.weather.position = weather::Position{33.45, -112.07};
  q.weather.clock_offset = offset;
  return sequence::programme(q);
}

}  // namespace

TEST_CASE("in a hot summer painting begins at first light") {
  SmallJob job = summer();
  const auto by_the_clock = programme(job, units::hours(-7));
  REQUIRE_FALSE(by_the_clock.feasible);
  // It is offered before it is asked for.
  const auto& ways = by_the_clock.blocked_by->ways_out;
  const auto it =
      std::ranges::find(ways, sequence::WayOut::How::first_light, &sequence::WayOut::how);
  REQUIRE(it != ways.end());
  job.calendar.from_first_light[5] = true;
  const auto early = programme(job, units::hours(-7));
  REQUIRE(early.feasible);
  CHECK(early.refill_done == it->refill_done);
  // Not before the first quarter after 04:50, and done by 06:00.
  const auto& coat = booking(early, "coat-1");
  CHECK(coat.start.quarter() >= 5 * 4);
  CHECK(coat.end.quarter() <= 6 * 4);
}

TEST_CASE("first light is not guessed without the offset of the clock") {
  SmallJob job = summer();
  job.calendar.from_first_light[5] = true;
  const auto p = programme(job, std::nullopt);
  CHECK_FALSE(p.feasible);
  const auto& ways = p.blocked_by->ways_out;
  CHECK(std::ranges::find(ways, sequence::WayOut::How::first_light, &sequence::WayOut::how) ==
        ways.end());
}

TEST_CASE("painting that ordinarily begins before first light stays as it is") {
  SmallJob job = summer();
  job.record = weather::Record();
  job.calendar.painting = {4 * 4, 11 * 4};
  job.calendar.hours = {4 * 4, 16 * 4};
  job.calendar.from_first_light[5] = true;
  const auto p = programme(job, units::hours(-7));
  REQUIRE(p.feasible);
  CHECK(booking(p, "coat-2").start.quarter() == 4 * 4);
}
