// From the start of the fill to the handover, by hand with a calendar of May 2027 (the 10th is a
// Monday): the pool fills day and night, is left alone for its quiet time, gets an addition a
// working day, and is handed over on a working day.
#include "sequence/after_fill.hpp"

#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;

namespace {

struct Filling {
  SmallJob job;
  int visits = 0;
  double hours = 24;
  std::optional<sequence::Past> past = {};

  Filling() {
    job.waits.start_up.value = units::days(3);
    job.system.quiet_start.value = units::days(2);
  }

  // Begun on Friday the 14th at 10:00.
  [[nodiscard]] sequence::Programme told() const {
    sequence::ProgrammeQuestion q = job.question();
    q.water_visits = visits;
    q.tap = q.water / units::hours(hours);
    q.past = past;
    sequence::Programme programme;
    programme.bookings.push_back({"fill", "", dates::Moment(day("2027-05-14"), 40), {}, 0, {}, {}});
    sequence::add_after_fill(q, programme);
    sequence::put_in_order(programme);
    return programme;
  }
};

std::string end_of(const sequence::Programme& programme, const std::string& task) {
  return dates::iso(booking(programme, task).end);
}

}  // namespace

TEST_CASE("the pool is full, left alone, and handed over") {
  const sequence::Programme programme = Filling().told();
  CHECK(dates::iso(programme.fill_start) == "2027-05-14T10:00");
  CHECK(dates::iso(programme.refill_done) == "2027-05-15T10:00");
  CHECK(start_of({true, programme.bookings}, "start-up") == "2027-05-15T10:00");
  CHECK(end_of(programme, "start-up") == "2027-05-18T10:00");
  // Two days after Saturday 10:00 it is Monday 10:00; the first whole day is Tuesday.
  CHECK(dates::iso(programme.quiet_until) == "2027-05-18");
  CHECK(dates::iso(programme.first_swim) == "2027-05-19");
  CHECK(start_of({true, programme.bookings}, "handover") == "2027-05-19T07:00");
  CHECK(end_of(programme, "handover") == "2027-05-19T08:00");
  CHECK(programme.days_on_site == 1);
  CHECK(dates::iso(programme.start) == "2027-05-14T10:00");
}

TEST_CASE("a fill takes whole quarter hours, one at least") {
  Filling filling;
  filling.hours = 0.1;
  CHECK(dates::iso(filling.told().refill_done) == "2027-05-14T10:15");
  filling.hours = 0.25;
  CHECK(dates::iso(filling.told().refill_done) == "2027-05-14T10:15");
  filling.hours = 0.26;
  CHECK(dates::iso(filling.told().refill_done) == "2027-05-14T10:30");
}

TEST_CASE("additions take a working day each, and nobody swims before the last is mixed") {
  Filling filling;
  filling.visits = 1;  // On Tuesday, which is over before Wednesday anyway.
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-19");
  CHECK(end_of(filling.told(), "start-up") == "2027-05-18T10:00");
  filling.visits = 2;  // On Tuesday and Wednesday.
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-20");
  CHECK(end_of(filling.told(), "start-up") == "2027-05-20T00:00");
  filling.visits = 4;  // The last on Friday: swum in on Saturday, handed over on Monday.
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-22");
  CHECK(start_of({true, filling.told().bookings}, "handover") == "2027-05-24T07:00");
  filling.visits = 5;  // Not on Saturday and Sunday.
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-25");
}

TEST_CASE("what is done of the tail stands as it was done") {
  Filling filling;
  const auto done = [](const std::string& task, const std::string& from, const std::string& to) {
    return sequence::Done{task, "", *dates::parse_moment(from), *dates::parse_moment(to)};
  };
  filling.past.emplace();
  filling.past->now = *dates::parse_moment("2027-05-24T12:00");
  filling.past->done = {done("fill", "2027-05-14T11:00", "2027-05-16T09:00"),
                        done("start-up", "2027-05-16T09:00", "2027-05-21T09:00")};
  CHECK(dates::iso(filling.told().fill_start) == "2027-05-14T11:00");
  CHECK(dates::iso(filling.told().refill_done) == "2027-05-16T09:00");
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-21");
  filling.past->done.back().running = true;
  // Going on, it ends as planned: three days after Sunday 09:00, so that Thursday is the first day.
  CHECK(dates::iso(filling.told().first_swim) == "2027-05-20");
}
