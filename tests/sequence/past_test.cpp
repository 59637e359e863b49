// A job that has begun: what is frozen and split, what is lost, what may be begun, and how near to
// the old programme the rest stays. Every time follows by hand from the sheet's usual window (20 to
// 24 h), seven days after the etch, 2 to 24 h after abrading, and painting from 08:00 to 11:00.
#include "basinwright/sequence/posed.hpp"
#include "begun_job.hpp"
#include "schedule/hand_problem.hpp"
#include "sequence/closest.hpp"
#include "sequence/instance.hpp"
#include "sequence/lost.hpp"
#include "sequence/windows.hpp"
#include "small_job.hpp"
#include "support/catch.hpp"

using namespace basinwright;
using namespace small_job;

namespace {

using sequence::Done;
using namespace begun_job;

std::vector<std::string> tasks(const std::vector<sequence::Work>& work) {
  std::vector<std::string> out;
  for (const auto& w : work) {
    out.push_back(w.task + (w.section.empty() ? "" : "/" + w.section) + " " +
                  std::to_string(static_cast<int>(std::lround(w.person_hours.in(units::minutes)))));
  }
  return out;
}
std::vector<std::string> facts(const std::vector<Done>& all) {
  std::vector<std::string> out;
  for (const Done& d : all) {
    out.push_back(d.task + (d.section.empty() ? "" : "/" + d.section) + " " +
                  dates::iso(d.start).substr(8) + " " + dates::clock(d.end) +
                  (d.assumed ? " assumed" : ""));
  }
  return out;
}
using Lines = std::vector<std::string>;

std::string text(const std::optional<dates::Moment>& m) {
  return m ? dates::iso(*m).substr(8) : "none";
}

}  // namespace

TEST_CASE("work broken off is split, an etch broken off is done again whole") {
  SmallJob job;
  job.work.insert(job.work.begin(), {"abrade", "", units::hours(4), 1, 1});
  const auto quarter =
      sequence::frozen(asked(job, "10T12:00", {done("abrade", "10T07:00", "10T08:00", 0.25)}));
  CHECK(tasks(quarter.work) == Lines{"abrade 60",
                                     "abrade 180",
                                     "etch-walls 60",
                                     "dryness-test 60",
                                     "coat-1 120",
                                     "coat-2 120"});
  CHECK(facts(quarter.past->done) == Lines{"abrade 10T07:00 08:00"});
  const auto acid = sequence::frozen(asked(
      job,
      "10T12:00",
      {done("abrade", "10T07:00", "10T08:00"), done("etch-walls", "10T08:00", "10T08:30", 0.5)}));
  CHECK(tasks(acid.work).at(1) == "etch-walls 60");
  CHECK(facts(acid.past->done) == Lines{"abrade 10T07:00 08:00"});
}

TEST_CASE("what nobody recorded before later work counts as done, and is marked") {
  const SmallJob job;
  const auto q = sequence::frozen(asked(job, "14T12:00", {done("coat-1", "14T08:00", "14T10:00")}));
  CHECK(facts(q.past->done) == Lines{"coat-1/1 14T08:00 10:00",
                                     "etch-walls 14T08:00 08:00 assumed",
                                     "dryness-test 14T08:00 08:00 assumed"});
}

TEST_CASE("a section painted in part becomes two, with its hours and its coats below") {
  const SmallJob job;
  auto q = asked(job, "14T12:00", coated("14T08:00", "14T08:30"));
  q.past->done.back().share = 0.25;
  const auto first = sequence::frozen(q);
  CHECK(first.sections == Lines{"painted part", "rest"});
  CHECK(tasks(first.work) == Lines{"etch-walls 60",
                                   "dryness-test 60",
                                   "coat-1/1 30",
                                   "coat-1/2 90",
                                   "coat-2/1 30",
                                   "coat-2/2 90"});
  CHECK(facts(first.past->done).back() == "coat-1/painted part 14T08:00 08:30");
  // 2 h of abrading for the whole: half an hour and an hour and a half.
  REQUIRE(first.rework.person_hours.size() == 2);
  CHECK(first.rework.person_hours[0].in(units::minutes) == Approx(30));
  CHECK(first.rework.person_hours[1].in(units::minutes) == Approx(90));

  // The coat below went over the same half in half of its time.
  auto two = coated("14T08:00", "14T10:00");
  two.push_back(done("coat-2", "15T08:00", "15T09:00", 0.5));
  const auto second = sequence::frozen(asked(job, "15T12:00", two));
  Lines coats = facts(second.past->done);
  coats.erase(coats.begin(), coats.begin() + 2);
  CHECK(coats == Lines{"coat-1/painted part 14T08:00 09:00",
                       "coat-1/rest 14T09:00 10:00",
                       "coat-2/painted part 15T08:00 09:00"});
}

TEST_CASE("a window is lost when no open start is left in it, a minute before it is not") {
  SmallJob job;
  job.calendar.working.fill(true);
  const auto lost = [&](const std::string& now, const std::vector<Done>& all) {
    return sequence::what_is_lost(sequence::frozen(asked(job, now, all)), nullptr).lost;
  };
  // Begun 08:00, so by 08:00 on Saturday; painting hours begin then.
  const auto all = coated("14T08:00", "14T10:00");
  CHECK(lost("15T08:00", all).sections.empty());
  CHECK(lost("15T08:15", all).sections == Lines{"1"});
  // Ended 09:00 after one hour: the second coat takes two, so its end is the bound, begun by 07:00.
  CHECK(lost("14T18:00", coated("14T08:00", "14T09:00")).sections == Lines{"1"});
  // Abraded on Saturday until noon: by noon on Sunday.
  auto again = all;
  again.push_back(done("rework", "15T10:00", "15T12:00"));
  CHECK(lost("16T09:00", again).sections.empty());
  CHECK(lost("16T09:15", again).sections == Lines{"1"});
  // The etch ended on the 10th at 09:00 and holds until the 17th.
  CHECK_FALSE(lost("17T09:00", etched()).etch);
  CHECK(lost("17T09:15", etched()).etch);
}

// A start of 08:20 counts as 08:30: a quarter is taken off its window, no more, so that the 24
// hours end at 08:20 at the latest and 08:15 is still a start.
TEST_CASE("a start that was rounded up loses a quarter of its window and no more") {
  SmallJob job;
  job.calendar.working.fill(true);
  job.waits.recoat_reserve.value = units::hours(0);
  const auto second_coat = [&](bool rounded, const std::string& now) {
    auto q = asked(job, now, coated("14T08:30", "14T10:30"));
    q.past->rounded = rounded;
    const auto p = sequence::programme(q);
    REQUIRE(p.feasible);
    return dates::iso(booking(p, "coat-2").start).substr(8);
  };
  CHECK(second_coat(false, "15T08:30") == "15T08:30");
  CHECK(second_coat(true, "15T08:15") == "15T08:15");
  // Too late without abrading first.
  CHECK(second_coat(true, "15T08:30") > "15T08:45");
}

TEST_CASE("what comes after the coats is what is neither missing nor done") {
  SmallJob job;
  job.work.push_back({"unmask", "", units::hours(2), 2, 1});
  const auto without = job.question();
  const auto after = sequence::Posed(without, {}, 30).after_coats();
  CHECK(after.unmask == 4);  // 2 h by two people: four quarters
  CHECK(after.refit == 0);   // there is none
  CHECK_FALSE(after.filled);
  const auto begun = sequence::frozen(asked(job,
                                            "16T12:00",
                                            {done("coat-1", "14T08:00", "14T10:00"),
                                             done("coat-2", "15T08:00", "15T10:00"),
                                             done("unmask", "16T08:00", "16T09:00")}));
  CHECK(sequence::Posed(begun, {}, 30).after_coats().unmask == 0);
}

// Work ends at 10:00, when the second coat is on; the crew is back on the next working day.
TEST_CASE("the masking comes off when the crew is there again") {
  SmallJob job;
  job.work.push_back({"unmask", "", units::hours(2), 2, 1});
  job.calendar.hours.to = 40;
  auto question = job.question();
  question.weather.record = nullptr;
  const auto p = sequence::programme(question);
  REQUIRE(p.feasible);
  const auto& coat = booking(p, "coat-2");
  const auto& unmask = booking(p, "unmask");
  CHECK(dates::clock(coat.end) == "10:00");
  CHECK(unmask.start.date() > coat.end.date());
  CHECK(dates::clock(unmask.start) == "07:00");
  CHECK(dates::clock(unmask.end) == "08:00");
}

TEST_CASE("the next coat follows the coats of its own section") {
  schedule::Problem problem = schedule::hand::plain();
  problem.units.sections = {"deep", "shallow"};
  problem.units.slots = {{2, 2}, {2, 2}};
  // The deep part has its first coat at 08 to 10 of the second day: 20 to 24 h later its next.
  problem.facts = schedule::Facts{40, {{0, 7, 9}, {1, 9, 11}}, {{0, 0, 32, 34}}};
  const auto deep = sequence::next_starts(problem, 0);
  REQUIRE(deep.has_value());
  CHECK(deep->coat == 1);
  CHECK(deep->from == 52);
  CHECK(deep->until == 56);
  CHECK_FALSE(sequence::next_starts(problem, 1).has_value());
}

// By hand. Two people vacuum 3/4 person-hours in two quarters, so one of them alone in four, while
// the other rolls the first section. With nobody to spare both sections are vacuumed first.
TEST_CASE("spare hands vacuum the second section, without them all is vacuumed first") {
  SmallJob job;
  const auto vacuumed = [&](units::Duration each, int painters) {
    job.work = {{"etch-walls", "", units::hours(1), 1, 1},
                {"dryness-test", "", units::hours(1), 1, 1},
                {"vacuum", "1", each, 2, 2},
                {"vacuum", "2", each, 2, 2},
                {"coat-1", "1", units::hours(1), painters, 2},
                {"coat-1", "2", units::hours(1), painters, 2}};
    auto question = job.question();
    question.weather.record = nullptr;
    question.sections = {"1", "2"};
    const auto p = sequence::programme(question);
    REQUIRE(p.feasible);
    Lines told;
    for (const auto& b : p.bookings) {
      if (b.task != "vacuum") continue;
      told.push_back(b.section + " by " + std::to_string(b.people) + " " + dates::clock(b.start) +
                     "-" + dates::clock(b.end));
    }
    return told;
  };
  CHECK(vacuumed(units::hours(0.75), 1) == Lines{"1 by 2 07:30-08:00", "2 by 1 08:00-09:00"});
  CHECK(vacuumed(units::hours(2), 2) == Lines{"1 by 2 07:00-09:00"});
}

TEST_CASE("abrading that is recorded after the last coat changes no programme") {
  const SmallJob job;
  auto all = coated("14T08:00", "14T10:00");
  all.push_back(done("coat-2", "15T08:00", "15T10:00"));
  const auto before = sequence::programme(asked(job, "17T12:00", all));
  all.push_back(done("rework", "17T08:00", "17T09:00"));
  const auto after = sequence::programme(asked(job, "17T12:00", all));
  REQUIRE(before.feasible);
  REQUIRE(after.feasible);
  CHECK(after.refill_done == before.refill_done);
}

TEST_CASE("a shell cleaned again dries for two days before its first coat") {
  SmallJob job;
  job.calendar.working.fill(true);
  auto all = etched();
  all.push_back(done("clean-again", "18T07:00", "18T08:15"));
  const auto p = sequence::programme(asked(job, "18T12:00", all));
  REQUIRE(p.feasible);
  // Two days later to the quarter, in that morning's hours.
  CHECK(booking(p, "coat-1").start >= moment("20T08:15"));
  CHECK(booking(p, "coat-1").start.date() == day("2027-05-20"));
}

TEST_CASE("a rinse that was due at once and is not recorded is planned at once") {
  SmallJob job;
  job.work.insert(job.work.begin() + 1, {"neutralise", "", units::hours(1), 1, 1});
  const auto p =
      sequence::programme(asked(job, "10T10:00", {done("etch-walls", "10T08:00", "10T09:00")}));
  REQUIRE(p.feasible);
  CHECK(dates::iso(booking(p, "neutralise").start) == "2027-05-10T10:00");
}

TEST_CASE("of equals the old starts are kept, and nothing worse is taken for them") {
  const SmallJob job;
  auto q = asked(job, "10T12:00", {done("etch-walls", "10T08:00", "10T09:00")});
  q.past->look_ahead = false;
  const auto free = sequence::frozen(q);
  const sequence::Instance in(free, {60, nullptr, {}, {}});
  const auto solved = schedule::solve(in.problem());
  const auto& best = std::get<schedule::Answer>(solved);
  REQUIRE(best.bookings.size() == 3);
  const auto slot = [&](const std::string& at) { return in.timeline().slot(moment(at)); };
  const auto start = [](const schedule::Answer& a, std::size_t i) { return a.bookings[i].start; };
  const auto near = [&](sequence::OldStarts old) {
    const auto answer = sequence::closest(in.problem(), best, old);
    CHECK(schedule::verify(in.problem(), answer).empty());
    CHECK(answer.objective == best.objective);
    return answer;
  };
  // Where it stands already, and where nothing is known, nothing moves.
  CHECK(start(near({{}, {}, {}}), 0) == start(best, 0));
  // 48 h dry is Wednesday 09:00; the test may be laid an hour later as well.
  CHECK(start(best, 0) == slot("12T09:00"));
  CHECK(start(near({slot("12T10:00"), {}, {}}), 0) == slot("12T10:00"));
  // Before it is dry, or so late that the coat would move, it may not.
  CHECK(start(near({slot("11T09:00"), {}, {}}), 0) == start(best, 0));
  CHECK(start(near({slot("28T09:00"), {}, {}}), 0) == start(best, 0));
}

TEST_CASE("what may be begun next, until when, and on which other day") {
  SmallJob job;
  const auto chance = [&](const std::string& now, const std::vector<Done>& all) {
    const auto p = sequence::programme(asked(job, now, all));
    REQUIRE(p.chances.size() == 1);
    return p.chances.front();
  };
  // Thursday half past eight: the second coat by 08:30 on Friday.
  auto all = coated("13T08:30", "13T10:30");
  all[1].end = moment("12T23:00");
  all[1].start = moment("12T07:00");
  auto c = chance("13T18:00", all);
  CHECK(c.task == "coat-2");
  CHECK(text(c.opens) == "14T08:00");
  CHECK(text(c.last) == "14T08:30");
  CHECK(text(c.latest) == "14T08:30");
  CHECK(text(c.again) == "none");
  // With a window of 72 h there is a Monday too... but not of Saturday and Sunday.
  job.system.recoat_max.value = units::hours(100);
  CHECK(text(chance("13T18:00", all).again) == "17T08:00");
  job.system.recoat_max.value = units::hours(24);
  // Lost on Monday: abrade; abraded until 16:00, the coat waits two hours and has a day.
  CHECK(chance("17T06:00", all).task == "rework");
  all.push_back(done("rework", "17T13:00", "17T15:00"));
  c = chance("17T15:30", all);
  CHECK(c.task == "coat-2");
  CHECK(text(c.opens) == "18T08:00");
  CHECK(text(c.latest) == "18T15:00");
  CHECK(text(c.last) == "18T09:00");
  REQUIRE(c.gate);
  CHECK(c.gate->by == sequence::Held::By::wait);
  CHECK(c.gate->task == "rework");
  // Nothing painted eight days after the etch: clean again.
  CHECK(chance("18T12:00", etched()).task == "clean-again");
  // While it cures nothing may be done, and that is the reason.
  SmallJob curing;
  curing.work.push_back({"refit", "", units::hours(1), 1, 1});
  auto painted = coated("13T08:00", "13T10:00");
  painted.push_back(done("coat-2", "14T08:00", "14T10:00"));
  const auto p = sequence::programme(asked(curing, "17T06:00", painted));
  REQUIRE(p.chances.size() == 1);
  CHECK(p.chances.front().task == "refit");
  REQUIRE(p.chances.front().gate);
  CHECK(p.chances.front().gate->task == "cure");
  // Seven days of cure from the 14th at ten, then Friday the 21st's hours.
  CHECK(text(p.chances.front().opens) == "21T10:00");
}

TEST_CASE("reasons go back to what was really done") {
  const SmallJob job;
  const auto p =
      sequence::programme(asked(job, "11T06:00", {done("etch-walls", "10T08:00", "10T09:00")}));
  const auto& test = booking(p, "dryness-test");
  CHECK(dates::iso(test.start) == "2027-05-12T09:00");
  REQUIRE_FALSE(test.held_by.empty());
  CHECK(test.held_by.front().by == sequence::Held::By::wait);
  CHECK(test.held_by.front().task == "etch-walls");
  CHECK(test.held_by.front().wait.in(units::hours) == Approx(48));
}
