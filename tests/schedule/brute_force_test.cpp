// The solver against every programme there is: small problems, all enumerated by the rules of
// problem.hpp (brute_force.hpp), no method shared.
#include "brute_force.hpp"

#include "basinwright/schedule/solve.hpp"
#include "random_problem.hpp"
#include "support/catch.hpp"

using namespace basinwright::schedule;

namespace {

// How often each rule had a say, so that the seeds cannot quietly become trivial.
struct Seen {
  int feasible = 0, infeasible = 0, replanned = 0, split = 0, reworked = 0, recleaned = 0;
  int slack = 0, emptied = 0;
};

void count(const Problem& problem, const Answer& answer, Seen& seen) {
  ++seen.feasible;
  seen.replanned += problem.facts ? 1 : 0;
  seen.slack += answer.objective.slack.value_or(0) > 0 ? 1 : 0;
  seen.emptied += answer.objective.empty > 0 ? 1 : 0;
  seen.split += answer.objective.splits > 0 ? 1 : 0;
  for (const Booking& booking : answer.bookings) {
    seen.reworked += booking.what == Booking::What::rework ? 1 : 0;
    seen.recleaned += booking.what == Booking::What::reclean ? 1 : 0;
  }
}

// All values, and the very bookings: of equals the first in the fixed order.
void compare(const Problem& problem, Seen& seen) {
  const auto solved = solve(problem);
  const auto expected = brute::best(problem);
  const auto* answer = std::get_if<Answer>(&solved);
  REQUIRE((answer != nullptr) == expected.has_value());
  if (answer == nullptr) {
    ++seen.infeasible;
    return;
  }
  CHECK(answer->objective.finish == expected->objective.finish);
  CHECK(answer->objective.splits == expected->objective.splits);
  CHECK(answer->objective.reworks == expected->objective.reworks);
  CHECK(answer->objective.cost == expected->objective.cost);
  CHECK(answer->objective.slack == expected->objective.slack);
  CHECK(answer->objective.empty == expected->objective.empty);
  CHECK(brute::keys(answer->bookings) == brute::keys(expected->bookings));
  for (const std::string& complaint : verify(problem, *answer)) {
    FAIL_CHECK(complaint);
  }
  count(problem, *answer, seen);
}

void compare(std::uint32_t seed, const random::Size& size, Seen& seen) {
  INFO("seed " << seed);
  compare(random::problem(seed, size), seen);
}

}  // namespace

TEST_CASE("small problems are solved as the enumeration solves them") {
  Seen seen;
  for (std::uint32_t seed = 0; seed < 4000; ++seed) {
    compare(seed, {15, 2, 2, 2}, seen);
  }
  CHECK(seen.feasible > 1200);
  CHECK(seen.infeasible > 300);
  CHECK(seen.replanned > 200);
  CHECK(seen.split > 60);
  CHECK(seen.reworked > 40);
  CHECK(seen.recleaned > 10);
  CHECK(seen.slack > 500);
  CHECK(seen.emptied > 500);
}

TEST_CASE("three coats are solved as the enumeration solves them") {
  Seen seen;
  for (std::uint32_t seed = 10000; seed < 11000; ++seed) {
    compare(seed, {17, 1, 3, 1}, seen);
  }
  CHECK(seen.feasible > 200);
  CHECK(seen.reworked > 20);
}

TEST_CASE("a longer chain is solved as the enumeration solves it") {
  Seen seen;
  for (std::uint32_t seed = 20000; seed < 21500; ++seed) {
    compare(seed, {16, 4, 1, 2}, seen);
  }
  CHECK(seen.feasible > 200);
  CHECK(seen.recleaned > 10);
}

// Dates that cost the same throughout and no reworks: the solver's labels are whole stretches.
TEST_CASE("even dates are solved as the enumeration solves them") {
  Seen seen;
  for (std::uint32_t seed = 30000; seed < 32000; ++seed) {
    INFO("seed " << seed);
    Problem problem = random::problem(seed, {15, 1, seed % 2 == 0 ? 2 : 3, 2});
    if (problem.facts && !problem.facts->reworks.empty()) {
      continue;
    }
    problem.units.rework.reset();
    for (std::size_t slot = 0; slot < problem.cost_of.size(); ++slot) {
      problem.cost_of[slot] = 1 + problem.date_of[slot] % 3;
    }
    compare(problem, seen);
  }
  CHECK(seen.feasible > 500);
  CHECK(seen.split > 30);
}
