// The parts of the search for a season that a season as a whole hardly shows.
#include "season/diary.hpp"

#include <algorithm>
#include <numeric>

#include "schedule/hand_problem.hpp"
#include "schedule/random_problem.hpp"
#include "season/bound.hpp"

namespace basinwright::season {
namespace {

// By what "least assignment" means: every order of the columns, tried one by one.
Value least_of_all_orders(const std::vector<std::vector<Value>>& costs) {
  std::vector<std::size_t> column(costs.size());
  std::iota(column.begin(), column.end(), 0U);
  std::optional<Value> least;
  do {
    Value sum;
    for (std::size_t row = 0; row < costs.size(); ++row) sum = sum + costs[row][column[row]];
    least = least ? std::min(*least, sum) : sum;
  } while (std::next_permutation(column.begin(), column.end()));
  return *least;
}

TEST_CASE("the least assignment is the least of all orders") {
  schedule::random::Dice dice(11);
  for (int round = 0; round < 300; ++round) {
    const auto size = static_cast<std::size_t>(dice.between(1, 6));
    std::vector<std::vector<Value>> costs(size, std::vector<Value>(size));
    for (auto& row : costs) {
      for (Value& cost : row)
        cost = {dice.between(0, 1), dice.between(0, 9), dice.between(0, 99), dice.between(0, 9)};
    }
    CAPTURE(round, size);
    CHECK(least_assignment(costs) == least_of_all_orders(costs));
  }
}

// By hand: the crew works from 07 to 16. One job at 12 to 14 leaves five hours before and two
// after; one at 08 to 10 leaves one before and six after; an hour of travel comes off either side.
TEST_CASE("another job leaves of a day its longest gap without the travel") {
  Candidate candidate;
  candidate.problem = schedule::hand::plain();
  for (Slot slot = 0; slot <= candidate.problem.horizon; ++slot)
    candidate.time_of.push_back(slot % 24);
  Problem problem;
  problem.jobs.resize(2);
  problem.travel = {{0, 1}, {1, 0}};
  const auto left = [&](std::vector<Presence> stays) {
    Booked booked;
    booked.at = std::move(stays);
    Diary diary;
    enter(diary, 0, booked);
    return windows_for(problem, 1, candidate, diary);
  };
  CHECK(left({{0, 12, 14}}) == Windows{{0, -all_day, 11}});
  CHECK(left({{2, 8, 10}}) == Windows{{2, 11, all_day}});
  // Of equals the first: 07 to 10 and 13 to 16.
  CHECK(left({{0, 11, 12}}) == Windows{{0, -all_day, 10}});
  // Nothing is left of a day that is taken whole.
  CHECK(left({{3, 7, 16}}).front().to <= left({{3, 7, 16}}).front().from);
}

}  // namespace
}  // namespace basinwright::season
