#include <algorithm>
#include <cstdlib>
#include <fstream>

#include "basinwright/season/solve.hpp"
#include "schedule/hand_problem.hpp"
#include "season/as_data.hpp"
#include "season/brute_force.hpp"
#include "season/random_season.hpp"
#include "support/places.hpp"

namespace basinwright::season {
namespace {

std::string in_words(const Value& value) {
  return std::to_string(value.unbooked) + " unbooked, late " + std::to_string(value.late) +
         ", refill " + std::to_string(value.refill) + ", cost " + std::to_string(value.cost);
}

std::uint32_t some_of(int all) {
  return static_cast<std::uint32_t>(places::some_of(all));
}

Answer checked(const Problem& season_problem) {
  const Answer answer = solve(season_problem);
  for (const std::string& complaint : verify(season_problem, answer)) FAIL_CHECK(complaint);
  return answer;
}

Value sum_of_each_alone(const Problem& season_problem) {
  Value sum;
  for (const Job& job : season_problem.jobs) {
    Problem one = season_problem;
    one.jobs = {job};
    one.travel = {{0}};
    sum = sum + solve(one).value;
  }
  return sum;
}

// Against trying everything, by code that shares nothing with the search: a season called optimal
// is the best one, every bound is one, and no season is better than the best.
TEST_CASE("small seasons are the best ones there are") {
  int conflicts = 0;
  int late = 0;
  int proven = 0;
  int unbooked = 0;
  const std::uint32_t seeds = some_of(200);
  for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
    CAPTURE(seed);
    const Problem season_problem = random::season(seed, {.jobs = seed % 5 == 0 ? 3 : 2});
    const Value best = brute::Everything(season_problem).best();
    const Answer answer = checked(season_problem);
    CAPTURE(in_words(best), in_words(answer.value), in_words(answer.bound));
    CHECK(answer.value >= best);
    CHECK(answer.bound <= best);
    if (answer.optimal) CHECK(answer.value == best);
    proven += answer.optimal ? 1 : 0;
    conflicts += sum_of_each_alone(season_problem) < best ? 1 : 0;
    late += best.late > 0 ? 1 : 0;
    unbooked += best.unbooked > 0 ? 1 : 0;
  }
  // The cases are worth their name: most are proven, and in many the jobs are in one another's way.
  CHECK(proven > static_cast<int>(seeds) * 9 / 10);
  CHECK(conflicts > static_cast<int>(seeds) / 8);
  CHECK(late > static_cast<int>(seeds) / 8);
  CHECK(unbooked < static_cast<int>(seeds) * 2 / 3);
}

// With no effort for the proof the bound still holds, and nothing is called optimal that is not.
TEST_CASE("a season that nobody proved has a bound and says so") {
  int open = 0;
  for (std::uint32_t seed = 1000; seed < 1000 + some_of(60); ++seed) {
    CAPTURE(seed);
    const Problem season_problem = random::season(seed, {.jobs = 3});
    const Value best = solve(season_problem, {4000, 20000}).value;
    const Answer quick = solve(season_problem, {1, 0});
    for (const std::string& complaint : verify(season_problem, quick)) FAIL_CHECK(complaint);
    CHECK(quick.bound <= best);
    if (quick.optimal) CHECK(quick.value == best);
    open += quick.optimal ? 0 : 1;
  }
  CHECK(open > 0);
}

TEST_CASE("another crew, a looser promise or an open hour never hurts") {
  for (std::uint32_t seed = 2000; seed < 2000 + some_of(60); ++seed) {
    CAPTURE(seed);
    const Problem season_problem = random::season(seed, {});
    const Answer base = checked(season_problem);
    if (!base.optimal) continue;

    Problem more = season_problem;
    more.alike.clear();
    ++more.crews;
    for (Job& job : more.jobs) job.by_crew.push_back(job.by_crew.front());
    CHECK(checked(more).value <= base.value);

    Problem looser = season_problem;
    for (Job& job : looser.jobs) {
      if (job.promised) ++*job.promised;
    }
    const Value loose = checked(looser).value;
    CHECK(std::pair(loose.unbooked, loose.late) <= std::pair(base.value.unbooked, base.value.late));

    Problem closed = season_problem;
    schedule::random::Dice dice(seed);
    for (Job& job : closed.jobs) {
      Candidate season_candidate = *job.by_crew.front();
      const auto season_slot = static_cast<std::size_t>(dice.between(0, 15));
      for (auto& calendar : season_candidate.problem.calendars) calendar[season_slot] = 0;
      job.by_crew.front() = std::make_shared<const Candidate>(std::move(season_candidate));
    }
    closed.alike.clear();
    Answer worse = checked(closed);
    CHECK(worse.value >= base.value);
  }
}

// By hand, for tests/deep/seasons_by_constraints.py: a season a line with what is found for it.
TEST_CASE("seasons as data", "[.]") {
  const char* path = std::getenv("SEASONS");
  const char* count = std::getenv("COUNT");
  const char* first = std::getenv("FIRST");
  REQUIRE((path != nullptr && count != nullptr && first != nullptr));
  std::ofstream file(path, std::ios::binary);
  const int begin = std::atoi(first);
  for (int seed = begin; seed < begin + std::atoi(count); ++seed) {
    const auto number = static_cast<std::uint32_t>(seed);
    const Problem season_problem = random::season(number, {.jobs = seed % 4 == 0 ? 3 : 2});
    file << as_data(season_problem, checked(season_problem), seed) << "\n";
  }
  REQUIRE(file.good());
}

TEST_CASE("the same season twice is the same to the last booking") {
  const Problem season_problem = random::season(77, {.jobs = 3});
  const Answer first = solve(season_problem);
  const Answer second = solve(season_problem);
  REQUIRE(first.jobs.size() == second.jobs.size());
  for (std::size_t j = 0; j < first.jobs.size(); ++j) {
    REQUIRE(first.jobs[j].has_value() == second.jobs[j].has_value());
    if (first.jobs[j]) CHECK(first.jobs[j]->at == second.jobs[j]->at);
  }
}

/// Wash 07-09, etch, two coats of 2 h on two mornings, filled from the second day after; 24 slots a
/// date.
Candidate by_hand() {
  Candidate season_candidate;
  season_candidate.problem = schedule::hand::plain();
  season_candidate.after.cured.assign(
      static_cast<std::size_t>(season_candidate.problem.horizon) + 1, {});
  for (Slot season_slot = 0; season_slot <= season_candidate.problem.horizon; ++season_slot) {
    season_candidate.after.cured[static_cast<std::size_t>(season_slot)] = season_slot + 48;
    season_candidate.time_of.push_back(season_slot % 24);
    season_candidate.full.push_back(season_slot / 24);
  }
  return season_candidate;
}

Problem two_by_hand(std::int32_t travel) {
  const auto season_candidate = std::make_shared<const Candidate>(by_hand());
  Problem season_problem;
  season_problem.crews = 1;
  season_problem.jobs = {{"north", 4, 1, {season_candidate}}, {"south", 4, 1, {season_candidate}}};
  season_problem.travel = {{0, travel}, {travel, 0}};
  return season_problem;
}

// By hand. Alone: wash and etch on day 0, coats 08-10 on days 1 and 2 (20 to 24 h apart), cured 48
// h after, so from 10:00 on day 4. Two jobs, painting 08-12 only: both preparations fit on day 0
// (07-11 and 11-15), and with no way between them both paint each morning (08-10, 10-12) and are
// filled on day 4, one after the other.
TEST_CASE("two pools next door share mornings") {
  const Answer answer = checked(two_by_hand(0));
  CHECK(answer.optimal);
  CHECK(answer.value == Value{0, 0, 8, 0});
}

// With an hour between them only one can be painted on a morning. The other is painted on the two
// mornings after (days 3 and 4; the recoat window allows no day between) and filled on day 6, two
// days late.
TEST_CASE("an hour of travel makes one of two pools late") {
  const Answer answer = checked(two_by_hand(1));
  CHECK(answer.optimal);
  CHECK(answer.value == Value{0, 2, 10, 0});
}

// The second of them is painted from day 3 on. Its shell must be dry for 12 h before, so washed and
// etched on day 2 at the latest, and there it fits: the crew leaves the first at 10:00.
TEST_CASE("a job is begun no earlier than its dates ask for") {
  const Answer answer = checked(two_by_hand(1));
  REQUIRE((answer.jobs[0] && answer.jobs[1]));
  const auto begun = std::minmax(answer.jobs[0]->at.front().date, answer.jobs[1]->at.front().date);
  CHECK(begun.first == 0);
  CHECK(begun.second == 2);
}

// By hand: only one is painted on a morning, and the second coat follows on the next, so three take
// the mornings 1 and 2, 3 and 4, 5 and 6 and are filled on days 4, 6 and 8; promised for day 4. The
// bound knows it without any search.
TEST_CASE("pools that take turns at mornings in a row are proven by counting") {
  Problem season_problem = two_by_hand(1);
  season_problem.jobs.push_back(season_problem.jobs.front());
  season_problem.travel.assign(3, std::vector<std::int32_t>(3, 1));
  CHECK(solve(season_problem, {1, 0}).bound == Value{0, 6, 18, 0});
  const Answer answer = checked(season_problem);
  CHECK(answer.optimal);
  CHECK(answer.value == Value{0, 6, 18, 0});
}

// Random seasons in which coats are laid in the first half of a date and follow one another on the
// next, against trying everything: the count of mornings is never too high.
TEST_CASE("a bound by mornings in a row is one") {
  int tight = 0;
  const std::uint32_t seeds = some_of(40);
  for (std::uint32_t seed = 3000; seed < 3000 + seeds; ++seed) {
    CAPTURE(seed);
    Problem season_problem = random::season(seed, {.jobs = 3, .crews = 1, .dates = 4, .tasks = 1});
    for (Job& job : season_problem.jobs) {
      Candidate season_candidate = *job.by_crew.front();
      schedule::Problem& p = season_candidate.problem;
      auto& mornings = p.calendars[p.units.calendar];
      for (std::size_t s = 0; s < mornings.size(); ++s) mornings[s] = s % 4 < 2 ? 1 : 0;
      for (schedule::Recoat& window : p.units.recoat) window = {3, 5};
      job.by_crew.front() = std::make_shared<const Candidate>(std::move(season_candidate));
    }
    const Value best = brute::Everything(season_problem).best();
    const Answer quick = solve(season_problem, {1, 0});
    CAPTURE(in_words(best), in_words(quick.bound));
    CHECK(quick.bound <= best);
    tight += quick.bound == best && sum_of_each_alone(season_problem) < best ? 1 : 0;
  }
  CHECK(tight > 0);
}

TEST_CASE("the promise that counts more is kept") {
  Problem season_problem = two_by_hand(1);
  season_problem.jobs[1].weight = 3;
  const Answer answer = checked(season_problem);
  CHECK(answer.value.late == 2);
  REQUIRE(answer.jobs[1]);
  CHECK(answer.jobs[1]->days_late == 0);
}

TEST_CASE("a broken season is found out") {
  const Problem season_problem = two_by_hand(1);
  const Answer sound = checked(season_problem);
  const auto finds = [&](auto spoil) {
    Answer broken = sound;
    spoil(broken);
    return !verify(season_problem, broken).empty();
  };
  CHECK(finds([](Answer& a) { a.jobs[1] = a.jobs[0]; }));  // in two places at once
  CHECK(finds([](Answer& a) { --a.value.late; }));
  CHECK(finds([](Answer& a) { a.bound.refill = a.value.refill + 1; }));
  CHECK(finds([](Answer& a) { a.bound.refill = a.value.refill - 1; }));  // optimal with a gap
  CHECK(finds([](Answer& a) { a.jobs[0].reset(); }));
  CHECK(finds([](Answer& a) { a.jobs[0]->finish += 1; }));
  CHECK(finds([](Answer& a) { a.jobs[0]->full -= 1; }));
  CHECK(finds([](Answer& a) { a.jobs[0]->days_late += 1; }));
  CHECK(finds([](Answer& a) { a.jobs[0]->crew = 1; }));
  CHECK(finds([](Answer& a) { a.jobs[0]->answer.bookings.back().start += 1; }));
  CHECK(finds([](Answer& a) { a.jobs[0]->at.pop_back(); }));
  CHECK(finds([](Answer& a) { a.jobs.pop_back(); }));
  CHECK(finds([](Answer& a) { a.jobs[0]->windows = {{a.jobs[0]->at[0].date, 0, 0}}; }));
}

TEST_CASE("seasons that make no sense are refused") {
  Problem pausing = two_by_hand(0);
  Candidate season_candidate = by_hand();
  season_candidate.problem.chain[1].lag_max = 5;
  pausing.jobs[0].by_crew[0] = std::make_shared<const Candidate>(season_candidate);
  CHECK_THROWS_AS(solve(pausing), std::invalid_argument);
  Problem light = two_by_hand(0);
  light.jobs[0].weight = 0;
  CHECK_THROWS_AS(solve(light), std::invalid_argument);
  Problem lost = two_by_hand(0);
  lost.travel.pop_back();
  CHECK_THROWS_AS(solve(lost), std::invalid_argument);
}

}  // namespace
}  // namespace basinwright::season
