// What is shown, and what waits, of a programme that the search has found.
#include "sequence/closest.hpp"

#include "schedule/hand_problem.hpp"
#include "small_job.hpp"
#include "support/catch.hpp"
#include "weather/making.hpp"

using namespace basinwright;
using namespace small_job;
using namespace weather_making;

// By hand: wash 07 to 09 and etch 09 to 11 leave an hour and more in the working day, and the first
// coat comes on the next morning either way.
TEST_CASE("work that was to begin an hour later keeps its hours") {
  const schedule::Problem problem = schedule::hand::plain();
  const schedule::Answer best = schedule::hand::answer(problem);
  REQUIRE(best.bookings.size() == 4);
  CHECK(best.bookings[0].start == 7);
  const auto kept = sequence::closest(problem, best, {8, 10, {}, {}});
  CHECK(schedule::verify(problem, kept).empty());
  CHECK(kept.objective == best.objective);
  CHECK(kept.bookings[0].start == 8);
  CHECK(kept.bookings[0].end == 10);
  CHECK(kept.bookings[1].start == 10);
  CHECK(kept.bookings[1].end == 12);
}

TEST_CASE("the handover lasts as long as it was given, an hour where it was not") {
  SmallJob job;
  auto question = job.question();
  question.weather.record = nullptr;
  const auto lasts = [&] {
    const auto p = sequence::programme(question);
    const auto& handover = booking(p, "handover");
    return handover.end.quarters() - handover.start.quarters();
  };
  CHECK(lasts() == 4);
  question.work.push_back({"handover", "", units::minutes(15), 2, 1});
  CHECK(lasts() == 1);
  question.work.back().person_hours = units::hours(2);
  CHECK(lasts() == 8);
}

// The first coat ended on Friday the 14th at 10:00 and was begun at 08:00: 24 h later its window is
// lost, and the coat is abraded first. Electric tools wait for a dry shell.
TEST_CASE("abrading a lost window waits for dry hours") {
  SmallJob job;
  job.record = fine_days("2027-05-09", 40);
  job.calendar.working.fill(true);
  const auto moment = [](const std::string& text) {
    return dates::parse_moment("2027-05-" + text).value();
  };
  const auto abraded_at = [&] {
    auto question = job.question();
    const auto done = [&](const std::string& task, const std::string& from, const std::string& to) {
      return sequence::Done{task, "", moment(from), moment(to)};
    };
    question.past = sequence::Past{moment("15T09:00"),
                                   {done("etch-walls", "10T08:00", "10T09:00"),
                                    done("dryness-test", "13T07:00", "13T23:00"),
                                    done("coat-1", "14T08:00", "14T10:00")}};
    question.rework.person_hours = {units::hours(2)};
    question.rework.clean_again = units::hours(1);
    return start_of(sequence::programme(question), "rework");
  };
  // As late that day as the work takes, since the coat follows in the morning; rain in those hours
  // brings it forward, to end before the rain begins.
  CHECK(abraded_at() == "2027-05-15T14:00");
  job.put("2027-05-15T14:00", rainy(3));
  job.put("2027-05-15T15:00", rainy(3));
  CHECK(abraded_at() == "2027-05-15T12:00");
}
