// Jobs begun a long time ago: what is left goes on from now, or there is no day for it.
#include "begun_job.hpp"
#include "support/catch.hpp"

using namespace begun_job;
using small_job::booking;

TEST_CASE("a job left lying for a year and more goes on from now") {
  // The drain was begun on 10 May 2027. 16 June 2028 is a Friday: 403 days later, at work from
  // 07:00.
  SmallJob job;
  job.work.insert(job.work.begin(),
                  {{"set-out", "", units::hours(1), 1, 1}, {"drain", "", {}, 0, 0}});
  for (const std::string now : {"2027-09-20T07:00", "2028-06-16T07:00", "2031-05-12T07:00"}) {
    CAPTURE(now);
    auto q = asked(job, "10T12:00", {done("set-out", "10T07:00", "10T08:00")});
    q.past->now = dates::parse_moment(now).value();
    Done drain = done("drain", "10T08:00", "10T08:00");
    for (const bool running : {true, false}) {
      drain.running = running;
      q.past->done = {done("set-out", "10T07:00", "10T08:00"), drain};
      const auto programme = sequence::programme(q);
      REQUIRE(programme.feasible);
      for (const auto& b : programme.bookings) CHECK((b.done || b.start >= q.past->now));
      CHECK(dates::iso(booking(programme, "etch-walls").start) == now.substr(0, 11) + "07:00");
      CHECK_FALSE(programme.chances.empty());
    }
  }
}

TEST_CASE("a drain that runs for a year is no fault, and leaves no day for the rest") {
  SmallJob job;
  job.work.insert(job.work.begin(), {"drain", "", {}, 0, 0});
  auto q = asked(job, "10T12:00", {});
  q.water = units::cubic_metres(24.0 * 400);
  Done drain = done("drain", "10T08:00", "10T08:00");
  drain.running = true;
  q.past->done = {drain};
  q.drain_pump = units::cubic_metres_per_hour(1);
  CHECK_FALSE(sequence::programme(q).feasible);
}

TEST_CASE("a job begun thousands of years ago has no dates, and costs no memory") {
  SmallJob job;
  auto all = coated("14T08:00", "14T10:00");
  auto q = asked(job, "14T12:00", all);
  q.past->now = dates::parse_moment("4227-02-03T07:00").value();
  CHECK_FALSE(sequence::programme(q).feasible);
  for (Done& d : q.past->done) d.start = d.end = q.past->now;
  q.past->done.back().running = true;
  CHECK_FALSE(sequence::programme(q).feasible);
}

TEST_CASE("work that a log begins years after now is no fault") {
  SmallJob job;
  job.work.insert(job.work.begin(),
                  {{"set-out", "", units::hours(1), 1, 1}, {"drain", "", {}, 0, 0}});
  Done later = done("set-out", "10T07:00", "10T08:00");
  later.start = later.end = dates::parse_moment("2029-05-03T07:00").value();
  later.running = true;
  Done drain = done("drain", "10T09:00", "10T09:00");
  drain.running = true;
  CHECK_NOTHROW(sequence::programme(asked(job, "10T09:00", {drain, later})));
}
