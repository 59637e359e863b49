// Recoat windows of 20 to 24 h over the nights in which the clock jumps, by the European rule: back
// on Sunday 2027-10-31, ahead on Sunday 2027-03-28. Elapsed hours counted on a calendar by hand.
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;

namespace {

constexpr int eight = 8 * 4;

// Coats of an hour on a Saturday and the Sunday after, both inside [08:00, latest + 1 h]. With the
// clock an hour back a Sunday start at 08:00 or later is at most 24 h after a Saturday start only
// from 09:00 on, so a latest start of 09:00 or 09:30 leaves exactly one pair.
sequence::Programme coats_until(int latest, double reserve_minutes) {
  SmallJob job;
  job.start = day("2027-10-25");  // Monday: etch; Wednesday: sheets
  job.calendar.working = {true, false, true, false, false, true, true};
  job.calendar.clock_changes = {{*dates::parse_moment("2027-10-31T03:00"), -60}};
  job.calendar.painting = {eight, latest + 4};
  job.waits.recoat_reserve.value = units::minutes(reserve_minutes);
  for (sequence::Work& work : job.work) work.person_hours = units::hours(1);
  return job.programme();
}

}  // namespace

TEST_CASE("eight to eight in autumn is 25 hours and refused") {
  // Sunday to Monday is the first pair 24 h apart.
  const auto p = coats_until(eight, 0);
  CHECK(start_of(p, "coat-1") == "2027-10-31T08:00");
  CHECK(start_of(p, "coat-2") == "2027-11-01T08:00");
}

TEST_CASE("nine to eight in autumn is 24 hours and needs the whole window") {
  const auto p = coats_until(eight + 4, 0);
  CHECK(start_of(p, "coat-1") == "2027-10-30T09:00");
  CHECK(start_of(p, "coat-2") == "2027-10-31T08:00");
  // With half an hour kept, that night offers no pair.
  CHECK(start_of(coats_until(eight + 4, 30), "coat-1") > "2027-10-31");
}

TEST_CASE("half past nine to eight in autumn is 23.5 hours and fits the usual reserve") {
  const auto p = coats_until(eight + 6, 30);
  CHECK(start_of(p, "coat-1") == "2027-10-30T09:30");
  CHECK(start_of(p, "coat-2") == "2027-10-31T08:00");
}

TEST_CASE("eight to eight in spring is 23 hours and fits") {
  SmallJob job;
  job.start = day("2027-03-22");
  job.calendar.working = {true, false, true, false, false, true, true};
  job.calendar.clock_changes = {{*dates::parse_moment("2027-03-28T02:00"), 60}};
  job.calendar.painting = {eight, eight + 8};
  const auto p = job.programme();
  CHECK(start_of(p, "coat-1") == "2027-03-27T08:00");
  CHECK(start_of(p, "coat-2") == "2027-03-28T08:00");
}

TEST_CASE("hours after a coat are counted as they pass") {
  // Painting from midnight to 02:00 on Sunday and Monday: only Sunday 01:00 to Monday 00:00 is
  // within 24 h. Twelve hours after Sunday 02:00 the clock, put back, shows 13:00.
  SmallJob job;
  job.start = day("2027-10-25");
  job.calendar.working = {true, false, true, false, false, false, true};
  job.calendar.clock_changes = {{*dates::parse_moment("2027-10-31T03:00"), -60}};
  job.calendar.painting = {0, 8};
  job.calendar.hours = {0, 9 * 4};
  job.record = weather_making::fine_days("2027-10-24", 40);
  job.waits.recoat_reserve.value = units::Duration();
  for (sequence::Work& work : job.work) work.person_hours = units::hours(1);
  job.put("2027-10-31T13:00", weather_making::rainy(1));
  CHECK(start_of(job.programme(), "coat-1") == "2027-10-31T01:00");
  job.put("2027-10-31T12:00", weather_making::rainy(1));
  CHECK(start_of(job.programme(), "coat-1") != "2027-10-31T01:00");
}
