// A look that ends early because the weeks to come are like those looked at must say the same as a
// look at all days at once.
#include <random>

#include "basinwright/schedule/solve.hpp"
#include "basinwright/sequence/posed.hpp"
#include "remembered.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace remembered;

namespace {

constexpr int ahead = 150;

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int number(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
  }
  bool one_in(int sides) { return number(1, sides) == 1; }

 private:
  std::mt19937 engine_;
};

// Two to four coats on one or two sections, most of them tight, some with days or months of their
// own and some under a few days of weather.
sequence::ProgrammeQuestion tight(SmallJob& job, Dice& dice) {
  const int sections = dice.number(1, 2);
  job.work.resize(2);
  for (int coat = 1; coat <= dice.number(2, 4); ++coat) {
    for (int section = 0; section < sections; ++section) {
      const auto hours = units::minutes(15 * dice.number(2, sections == 1 ? 12 : 6));
      job.work.push_back({"coat-" + std::to_string(coat), "", hours, 1, 1});
    }
  }
  job.system.recoat_min.value = units::hours(dice.number(6, 30));
  job.system.recoat_max.value = units::hours(dice.number(30, 100));
  job.waits.coat_within.value = units::hours(dice.number(20, 80));
  if (dice.one_in(3)) job.calendar.working[5] = true;
  if (dice.one_in(3)) job.calendar.painting_by_month[dice.one_in(2) ? 5 : 8] = {{7 * 4, 12 * 4}};
  if (dice.one_in(3))
    job.calendar.closed.push_back(job.start + std::chrono::days{dice.number(0, 60)});
  if (dice.one_in(4)) {
    job.calendar.clock_changes.push_back(
        {dates::Moment(job.start + std::chrono::days{dice.number(20, 90)}, 8),
         dice.one_in(2) ? 60 : -60});
  }
  if (dice.one_in(3)) {
    const auto first = hour("2027-05-09T00:00");
    for (int h = 0; h < dice.number(24, 600); ++h) {
      weather::Hour now = fine();
      if (dice.one_in(9)) now.rain->value = units::millimetres(2);
      job.record.put(first + h, now);
    }
  }
  job.most_days = ahead;
  sequence::ProgrammeQuestion q = job.question();
  q.sections.assign(static_cast<std::size_t>(sections), "");
  for (int section = 0; section < sections; ++section)
    q.sections[static_cast<std::size_t>(section)] = std::to_string(section + 1);
  // An etch that waits for cement has few days left of a first look.
  if (dice.one_in(2)) q.cement_wait = units::days(dice.number(8, 40));
  q.reasons = false;
  return q;
}

}  // namespace

TEST_CASE("a look that ends early finds what a look at all days finds") {
  int without = 0;
  int with = 0;
  const auto seeds = static_cast<unsigned>(places::some_of(150));
  for (unsigned seed = 1; seed <= seeds; ++seed) {
    INFO("seed " << seed);
    Dice dice(seed);
    SmallJob job;
    const auto q = tight(job, dice);
    const sequence::Posed whole(q, job.record, ahead);
    const auto prevented = schedule::what_prevents(whole.problem());
    const auto found = sequence::programme(q);
    REQUIRE(found.feasible == !prevented);
    ++(prevented ? without : with);
    if (!prevented) continue;
    const bool unit = prevented->part == schedule::Infeasible::Part::unit;
    if (unit) {
      CHECK(found.blocked_by->task == whole.problem().units.coats[prevented->index]);
      CHECK((found.blocked_by->why == sequence::Blocked::Why::longer_than_any_window) ==
            prevented->rule_conflict);
    }
  }
  CHECK(without > 0);
  CHECK(with > 0);
}

TEST_CASE("what no week holds is told for other starts and drains as it would be found anew") {
  std::size_t without = 0, asked_for = 0, looked_for = 0;
  const auto seeds = static_cast<unsigned>(places::some_of(120));
  for (unsigned seed = 1; seed <= seeds; ++seed) {
    Dice dice(seed);
    SmallJob job;
    auto q = tight(job, dice);
    if (dice.one_in(2)) q.cement_wait = {};
    if (job.record.empty()) q.weather.record = nullptr;
    const auto first = q.start;
    q.work.insert(q.work.begin(),
                  {{"set-out", "", units::hours(1), 1, 1}, {"drain", "", {}, 0, 1}});
    sequence::Memory memory;
    for (int i = 0; i < 12; ++i) {
      q.start = first + std::chrono::days{dice.number(0, 40)};
      q.drain_pump = q.water / units::minutes(dice.number(10, 4000));
      INFO("seed " << seed << ", start " << dates::iso(q.start) << ", drained in "
                   << (q.water / q.drain_pump).in(units::hours) << " h");
      const auto found = brief_of(memory, q);
      CHECK(told_briefly(found) == briefly_anew(q));
      without += found.feasible ? 0 : 1;
      ++asked_for;
    }
    looked_for += memory.looked_for();
  }
  CHECK(without > asked_for / 4);
  CHECK(looked_for < asked_for - without / 5);
}
