// A recoat window missed on purpose, where the data sheet allows it. The weather is warm on two
// days only, so that each time follows by hand from the sheet's hours.
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;

namespace {

// Warm on Monday 17 and Thursday 20 May, 71 h apart.
SmallJob two_warm_days() {
  SmallJob job;
  job.work[2].person_hours = job.work[3].person_hours = units::minutes(30);
  const auto first = hour("2027-05-09T00:00");
  for (int h = 0; h < 40 * 24; ++h) {
    weather::Hour now = fine();
    const int day = h / 24;
    const bool warm = day == 8 || day == 9 || day == 11 || day == 12;
    if (!warm) now.air->value = units::celsius(5);
    now.shell = {units::celsius(20), weather::Quality::forecast};
    // The second of each pair keeps the first one's cure warm, but is no day to paint.
    if (day == 9 || day == 12) now.wind->value = units::metres_per_second(30);
    job.record.put(first + h, now);
  }
  job.system.limits.wind_max =
      sources::Sourced<units::Speed>{units::metres_per_second(10), {sources::Kind::given, "", ""}};
  job.start = day("2027-05-11");
  job.most_days = 30;
  return job;
}

sequence::Programme planned(const SmallJob& job, bool allowed) {
  sequence::ProgrammeQuestion q = job.question();
  q.rework.person_hours = {units::hours(2)};
  q.rework.people = 2;
  q.rework.on_purpose = allowed;
  return sequence::programme(q);
}

}  // namespace

TEST_CASE("a window is missed on purpose only where the data sheet allows it") {
  const SmallJob job = two_warm_days();
  CHECK_FALSE(planned(job, false).feasible);
  const auto p = planned(job, true);
  REQUIRE(p.feasible);
  CHECK(dates::iso(booking(p, "coat-1").start) == "2027-05-17T08:00");
  // Two person-hours by two from seven, two hours to dry, then the coat, in the painting hours.
  const sequence::Booking& again = booking(p, "rework");
  CHECK(again.people == 2);
  CHECK(again.end <= dates::parse_moment("2027-05-20T08:30").value());
  CHECK(again.end.quarters() - again.start.quarters() == 4);
  const auto dried = dates::Moment::of_quarters(again.end.quarters() + 8);
  CHECK(booking(p, "coat-2").start >= dried);
  CHECK(booking(p, "coat-2").start.date() == day("2027-05-20"));
  // Within a day of the cleaning.
  CHECK(booking(p, "coat-2").start.quarters() - again.end.quarters() <= 96);
}

TEST_CASE("leave to miss a window changes nothing where every window can be kept") {
  SmallJob job;
  job.record = fine_days("2027-05-09", 40);
  const auto strict = planned(job, false);
  const auto allowed = planned(job, true);
  REQUIRE(strict.feasible);
  REQUIRE(allowed.bookings.size() == strict.bookings.size());
  for (std::size_t i = 0; i < strict.bookings.size(); ++i) {
    CHECK(allowed.bookings[i].task == strict.bookings[i].task);
    CHECK(allowed.bookings[i].start == strict.bookings[i].start);
  }
}
