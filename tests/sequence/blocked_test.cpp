// Why there are no dates under weather, and what would give some. All weather is made so that the
// answer can be seen, and reaches past the days looked at, since beyond a record the calendar alone
// decides.
#include <algorithm>

#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;
using sequence::Blocked;
using sequence::Constraint;
using sequence::WayOut;

namespace {

constexpr int days_of_record = 40;

/// A record in which each hour is made from its day's number (0 = Sunday 9 May) and its hour.
template <class Make>
weather::Record made(Make make) {
  weather::Record record;
  const auto first = hour("2027-05-09T00:00");
  for (int day = 0; day < days_of_record; ++day) {
    for (int h = 0; h < 24; ++h) record.put(first + day * 24 + h, make(day, h));
  }
  return record;
}

weather::Hour at_celsius(double celsius) {
  weather::Hour h = fine();
  h.air->value = units::celsius(celsius);
  h.humidity->value = 0.3;
  return h;
}

Blocked blocked(SmallJob job) {
  job.most_days = 28;
  const auto p = job.programme();
  REQUIRE_FALSE(p.feasible);
  REQUIRE(p.blocked_by.has_value());
  // Whoever asks for a line is told the same, without the ways out.
  auto question = job.question();
  question.reasons = false;
  const auto line = sequence::programme(question);
  REQUIRE(line.blocked_by.has_value());
  CHECK(line.blocked_by->task == p.blocked_by->task);
  CHECK(line.blocked_by->section == p.blocked_by->section);
  CHECK(line.blocked_by->why == p.blocked_by->why);
  if (p.blocked_by->why == Blocked::Why::weather)
    CHECK(line.blocked_by->together == p.blocked_by->together);
  CHECK(line.blocked_by->ways_out.empty());
  return *p.blocked_by;
}

bool offers(const Blocked& blocked, WayOut::How how) {
  return std::ranges::any_of(blocked.ways_out, [how](const WayOut& w) { return w.how == how; });
}

}  // namespace

TEST_CASE("an air that is too hot every afternoon is the reason") {
  SmallJob job;
  job.work[2].person_hours = job.work[3].person_hours = units::minutes(30);
  job.record = made([](int day, int h) {
    weather::Hour now = at_celsius(h == 14 ? (day == 23 ? 30.5 : 31) : 20);
    // The shell is measured, so that it follows nothing.
    now.shell = {units::celsius(20), weather::Quality::forecast};
    return now;
  });
  const Blocked b = blocked(job);
  CHECK(b.why == Blocked::Why::weather);
  CHECK(b.task == "coat-1");
  // Six hours after 08:00 reach 14:00; at other hours, or without the air rule, there is room.
  CHECK(b.together == std::vector{Constraint::painting_hours, Constraint::air});
  CHECK(b.alone == b.together);
  // Day 23 is Tuesday 1 June.
  REQUIRE(b.nearest.size() == 1);
  CHECK(dates::iso(b.nearest[0].at) == "2027-06-01T08:00");
  CHECK(std::get<units::Temperature>(b.nearest[0].verdict.measured).in(units::celsius) ==
        Approx(30.5));
  // From 07:00 to 08:00 two half hours 23.5 h apart find room: 07:30, then 07:00.
  REQUIRE(b.ways_out.size() == 1);
  CHECK(b.ways_out[0].how == WayOut::How::hour_earlier);
}

TEST_CASE("two gates that each leave nothing are reported by the last of them") {
  // Deletion filter: with air and shell both always closed no single one frees the job; leaving out
  // air first changes nothing, so air is left out, and then shell alone is the reason.
  SmallJob job;
  job.record = made([](int, int) { return at_celsius(5); });
  const Blocked b = blocked(job);
  CHECK(b.together == std::vector{Constraint::shell});
  CHECK(b.alone.empty());
}

TEST_CASE("a Saturday would do") {
  // Cool enough from Friday to Sunday only: the second coat falls on the Saturday.
  SmallJob job;
  job.record = made([](int day, int h) {
    const int weekday = (day + 6) % 7;  // 0 = Monday
    weather::Hour now = at_celsius(weekday < 4 && h >= 8 && h < 17 ? 33 : 20);
    now.shell = {units::celsius(20), weather::Quality::forecast};
    return now;
  });
  const Blocked b = blocked(job);
  CHECK(b.why == Blocked::Why::weather);
  CHECK(b.task == "coat-2");
  // Air and the recoat window exclude one another, with the working days.
  CHECK(b.together ==
        std::vector{Constraint::painting_hours, Constraint::air, Constraint::recoat_window});
  REQUIRE(offers(b, WayOut::How::saturday_work));
  CHECK_FALSE(offers(b, WayOut::How::one_more_painter));
  // Friday 14 May and Saturday 15 May; seven days of cure; the fill of 24 h from Saturday 22 May.
  CHECK(dates::iso(b.ways_out.front().refill_done) == "2027-05-23T10:00");
}

TEST_CASE("another painter would do where the morning is short") {
  // Dew until 09:00 each day leaves two hours; the coat takes two and a quarter.
  SmallJob job;
  job.work[2].person_hours = job.work[3].person_hours = units::hours(2.25);
  job.record = made([](int, int h) {
    weather::Hour now = at_celsius(20);
    now.shell = {units::celsius(20), weather::Quality::forecast};
    if (h < 9) now.humidity->value = 0.84;
    return now;
  });
  const Blocked b = blocked(job);
  CHECK(b.why == Blocked::Why::weather);
  CHECK(b.together == std::vector{Constraint::painting_hours, Constraint::dew_margin});
  CHECK(offers(b, WayOut::How::one_more_painter));
  CHECK_FALSE(offers(b, WayOut::How::saturday_work));
}

TEST_CASE("a coat longer than any morning is named before the weather") {
  SmallJob job;
  job.record = made([](int, int) { return at_celsius(5); });
  job.work[2].person_hours = units::hours(5);
  const Blocked b = blocked(job);
  CHECK(b.why == Blocked::Why::longer_than_any_window);
  CHECK(b.task == "coat-1");
  CHECK(b.together.empty());
}

TEST_CASE("working days that exclude the window are named without weather") {
  SmallJob job;
  job.calendar.working = {true, false, true, false, true, false, false};
  const Blocked b = blocked(job);
  CHECK(b.why != Blocked::Why::weather);
  REQUIRE(offers(b, WayOut::How::saturday_work));
  CHECK(b.together == std::vector{Constraint::painting_hours, Constraint::recoat_window});
}

TEST_CASE("rain that is nowhere known closes everything, and rain is the reason") {
  SmallJob job;
  job.record = made([](int, int) {
    weather::Hour h = fine();
    h.rain.reset();
    return h;
  });
  const Blocked b = blocked(job);
  CHECK(b.why == Blocked::Why::weather);
  CHECK(b.together == std::vector{Constraint::rain});
  CHECK(b.nearest.empty());
}
