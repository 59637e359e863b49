// One rule at a time, worked out by hand from the rule's wording in problem.hpp; where a case comes
// from the trade, its source stands beside it.
#include "hand_problem.hpp"

using namespace basinwright::schedule;
using What = Booking::What;

namespace {

constexpr Slot day = 24;

}  // namespace

// Wash 07-09 and etch 09-11 on day 0; dry at 23, so the first coat is on day 1, the second on day 2
// at 08, and the finish at 10 + 48 h. The first at 10 (22 h) leaves the second 2 h in hand.
TEST_CASE("a plain chain and two coats come one after the other") {
  const Answer answer = hand::answer(hand::plain());
  CHECK(hand::start_of(answer, What::task, 0) == 7);
  CHECK(hand::start_of(answer, What::task, 1) == 9);
  CHECK(hand::start_of(answer, What::unit, 0) == day + 10);
  CHECK(hand::start_of(answer, What::unit, 1) == 2 * day + 8);
  CHECK(answer.objective.finish == 2 * day + 10 + 48);
  CHECK(answer.objective.cost == 8 * 10 + 3 * 100);
  CHECK(answer.objective.slack == 2);
}

// A primer of 1 h and a coat of 2 h: 08-09 then 08-10 next day is 24 h for the first metre and 25 h
// for the last, too late; priming at 11 makes it 21 and 22 h. With mornings of two hours it can
// only be 09: 23 and 24 h. Common practice: the recoat time of a data sheet holds for the whole
// surface.
TEST_CASE("a recoat window holds for starts and for ends") {
  Problem problem = hand::plain();
  problem.units.slots = {{1}, {2}};
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == day + 11);
  CHECK(hand::start_of(answer, What::unit, 1) == 2 * day + 8);
  CHECK(answer.objective.slack == 2);
  problem.calendars[1] = hand::daily(10, 8, 10);
  const Answer tight = hand::answer(problem);
  CHECK(hand::start_of(tight, What::unit, 0) == day + 9);
  CHECK(hand::start_of(tight, What::unit, 1) == 2 * day + 8);
  CHECK(tight.objective.slack == 0);
}

// Clocks: a date of 25 hours lies between the coats, so 08 to 08 is 25 h elapsed; 09 to 08 is 24.
// The coats take a whole hour less than the morning.
TEST_CASE("elapsed hours count over a night of the autumn clock change") {
  Problem problem = hand::plain();
  problem.units.slots = {{3}, {3}};
  for (Calendar& calendar : problem.calendars) {
    calendar.insert(calendar.begin() + 2 * day, 0);
    calendar.pop_back();
  }
  for (Slot slot = 2 * day; slot < problem.horizon; ++slot) {
    problem.date_of[hand::place(slot)] = (slot - 1) / day;
  }
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == day + 9);
  CHECK(hand::start_of(answer, What::unit, 1) == 2 * day + 1 + 8);
}

// Spring: 08 to 08 is 23 h, inside 20 to 24. The coats take the whole morning.
TEST_CASE("elapsed hours count over a night of the spring clock change") {
  Problem problem = hand::plain();
  problem.units.slots = {{4}, {4}};
  for (Calendar& calendar : problem.calendars) {
    calendar.erase(calendar.begin() + 2 * day);
    calendar.push_back(0);
  }
  for (Slot slot = 2 * day; slot < problem.horizon; ++slot) {
    problem.date_of[hand::place(slot)] = (slot + 1) / day;
  }
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == day + 8);
  CHECK(hand::start_of(answer, What::unit, 1) == 2 * day - 1 + 8);
}

// An end on day 2 leads to a finish ten days later, one on day 3 to one a week later.
TEST_CASE("a later end may bring an earlier finish") {
  Problem problem = hand::plain(20);
  for (Slot end = 0; end <= problem.horizon; ++end) {
    problem.finish[hand::place(end)] = Finish{end + (end < 3 * day ? 10 * day : 7 * day), 0};
  }
  const Answer answer = hand::answer(problem);
  CHECK(answer.objective.finish == 3 * day + 10 + 7 * day);
  CHECK(hand::start_of(answer, What::unit, 1) == 3 * day + 8);
}

TEST_CASE("rain before the very first coat only holds it up") {
  Problem problem = hand::plain();
  problem.anchor.rain_free = 20;
  problem.wet[day + 2] = 1;  // six hours before the first coat's earliest start
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == 2 * day + 10);
  problem.wet[2 * day + 10] = 1;  // and during it: before the second coat
  CHECK(hand::start_of(hand::answer(problem), What::unit, 1) == 3 * day + 8);
}

// The etch may not wait for the paint: it ends no sooner than 30 h before it. The recoat window
// keeps two hours in hand at best (22 h); with two hours the etch ends at 06 or later, so it is on
// the day before. The wash comes as early as it can, or on the same date if attendance counts.
TEST_CASE("the chain waits where its anchor would run out") {
  Problem problem = hand::plain();
  problem.anchor.limit = 30;
  problem.chain[1].kind = Kind::one_shift;
  problem.attendance = 0;
  std::fill_n(problem.calendars[1].begin(), 3 * day, 0);
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == 3 * day + 10);
  CHECK(hand::start_of(answer, What::task, 0) == 7);
  CHECK(hand::start_of(answer, What::task, 1) == 2 * day + 7);
  CHECK(answer.objective.slack == 2);
  problem.attendance = 100;
  const Answer together = hand::answer(problem);
  CHECK(hand::start_of(together, What::task, 0) == 2 * day + 7);
  CHECK(hand::start_of(together, What::task, 1) == 2 * day + 9);
}

// The chain is done and its limit over: only a reclean (2 h at 07) opens the way again.
TEST_CASE("a reclean sets the anchor and the drying anew") {
  Problem problem = hand::plain();
  problem.facts = Facts{6 * day, {{0, 7, 9}, {1, 9, 11}}};
  CHECK(hand::refusal(problem).part == Infeasible::Part::unit);
  problem.anchor.reclean = Reclean{2, 0};
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::reclean, 0) == 6 * day + 7);
  CHECK(hand::start_of(answer, What::unit, 0) == 7 * day + 10);
  CHECK(answer.objective.reworks == 1);
}

// The first coat is long past its window: rework (2 h), then within 24 h the next coat at 08, which
// has most in hand when the rework ends with the shift at 16.
TEST_CASE("a coat past its window is reworked first") {
  Problem problem = hand::plain();
  problem.facts = Facts{5 * day, {{0, 7, 9}, {1, 9, 11}}, {{0, 0, day + 8, day + 10}}};
  CHECK(hand::refusal(problem).index == 1);
  problem.units.rework = Rework{{2}, 0, 2, 24};
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::rework, 0) == 5 * day + 14);
  CHECK(answer.objective.slack == 8);
  CHECK(hand::start_of(answer, What::unit, 1) == 6 * day + 8);
  CHECK(answer.bookings.size() == 2);
}

// A rework that is done already counts, and its window with it.
TEST_CASE("a rework done before now opens the next coat") {
  Problem problem = hand::plain();
  problem.units.rework = Rework{{2}, 0, 2, 24};
  problem.facts = Facts{4 * day,
                        {{0, 7, 9}, {1, 9, 11}},
                        {{0, 0, day + 8, day + 10}},
                        {{0, 0, 3 * day + 14, 3 * day + 16}}};
  const Answer answer = hand::answer(problem);
  REQUIRE(answer.bookings.size() == 1);
  CHECK(hand::start_of(answer, What::unit, 1) == 4 * day + 8);
  CHECK(answer.objective.reworks == 1);
}

// Work on the date of the last fact pays no attendance; the next date does.
TEST_CASE("the last date of the facts has its attendance free") {
  Problem problem = hand::plain();
  problem.facts = Facts{9, {{0, 7, 9}}};
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::task, 1) == 9);
  CHECK(answer.objective.cost == 6 * 10 + 2 * 100);
}

TEST_CASE("idle time and unattended work cost nothing") {
  Problem problem = hand::plain();
  problem.chain[0].kind = Kind::unattended;
  problem.chain[0].slots = 30;
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::task, 1) == day + 13);
  CHECK(answer.objective.cost == 6 * 10 + 3 * 100);
}

// Day 0 costs half as much again, and painting opens only on day 5: the chain waits for day 1.
TEST_CASE("of equal finishes the cheapest is taken") {
  Problem problem = hand::plain(12);
  std::fill_n(problem.calendars[1].begin(), 5 * day, 0);
  for (Slot slot = 0; slot < day; ++slot) {
    problem.cost_of[hand::place(slot)] = 15;
  }
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::unit, 0) == 5 * day + 10);
  CHECK(hand::start_of(answer, What::task, 0) == day + 7);
  CHECK(answer.objective.cost == 8 * 10 + 3 * 100);
}

// Painting opens on day 5. The wash empties: it waits for day 4, with the etch on the same date,
// and ends as late as the etch lets it; what comes after it comes as early as it can.
TEST_CASE("what empties comes as late as nothing else minds") {
  Problem problem = hand::plain(12);
  std::fill_n(problem.calendars[1].begin(), 5 * day, 0);
  problem.anchor.dry = 18;
  problem.emptied_by = 0;
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::task, 0) == 4 * day + 12);
  CHECK(hand::start_of(answer, What::task, 1) == 4 * day + 14);
  CHECK(answer.objective.finish == 6 * day + 10 + 48);
  CHECK(answer.objective.empty == 6 * day + 10 + 48 - (4 * day + 14));
}

// The time empty never costs money: day 4 is dearer, so the wash stays on day 3.
TEST_CASE("what empties does not wait for a dearer date") {
  Problem problem = hand::plain(12);
  std::fill_n(problem.calendars[1].begin(), 5 * day, 0);
  problem.anchor.dry = 18;
  problem.emptied_by = 0;
  for (Slot slot = 4 * day; slot < 5 * day; ++slot) {
    problem.cost_of[hand::place(slot)] = 11;
  }
  const Answer answer = hand::answer(problem);
  CHECK(hand::start_of(answer, What::task, 0) == 3 * day + 12);
  CHECK(hand::start_of(answer, What::task, 1) == 3 * day + 14);
}

TEST_CASE("a window without an end has no slack") {
  Problem problem = hand::plain();
  problem.units.recoat = {{20, endless}};
  problem.anchor.limit.reset();
  CHECK_FALSE(hand::answer(problem).objective.slack.has_value());
}

TEST_CASE("everything painted leaves only the finish") {
  Problem problem = hand::plain();
  problem.facts = Facts{3 * day,
                        {{0, 7, 9}, {1, 9, 11}},
                        {{0, 0, day + 8, day + 10}, {1, 0, 2 * day + 8, 2 * day + 10}}};
  const Answer answer = hand::answer(problem);
  CHECK(answer.bookings.empty());
  CHECK(answer.objective == Objective{2 * day + 10 + 48, 0, 0, 0});
}
