// The checker against the enumeration of all programmes (brute_force.hpp), and one broken rule
// after the other by hand.
#include <set>

#include "brute_force.hpp"
#include "hand_problem.hpp"
#include "random_problem.hpp"

using namespace basinwright::schedule;
using What = Booking::What;

namespace {

bool accepted(const Problem& problem, const Answer& answer) {
  return verify(problem, answer).empty();
}

bool says(const Problem& problem, const Answer& answer, const std::string& part) {
  for (const std::string& complaint : verify(problem, answer)) {
    if (complaint.find(part) != std::string::npos) {
      return true;
    }
  }
  return false;
}

// All programmes of a problem with their objectives, up to a number; empty when there are more.
std::vector<Answer> all(const Problem& problem, std::size_t most) {
  std::vector<Answer> answers;
  bool too_many = false;
  brute::Enumeration(problem).each([&](const Answer& answer) {
    too_many = too_many || answers.size() == most;
    if (!too_many) {
      answers.push_back(answer);
    }
  });
  return too_many ? std::vector<Answer>{} : answers;
}

}  // namespace

TEST_CASE("the checker accepts every programme and no shifted one that is none") {
  int programmes = 0;
  int broken = 0;
  for (std::uint32_t seed = 0; seed < 600; ++seed) {
    INFO("seed " << seed);
    const Problem problem = random::problem(seed, {9, 2, 2, 2});
    const std::vector<Answer> answers = all(problem, 1500);
    std::set<std::vector<brute::Key>> known;
    for (const Answer& answer : answers) {
      known.insert(brute::keys(answer.bookings));
    }
    for (const Answer& answer : answers) {
      ++programmes;
      CHECK(accepted(problem, answer));
      for (std::size_t index = 0; index < answer.bookings.size(); ++index) {
        for (const Slot by : {-2, -1, 1, 2}) {
          Answer shifted = answer;
          shifted.bookings[index].start += by;
          shifted.bookings[index].end += by;
          if (known.count(brute::keys(shifted.bookings)) == 0) {
            ++broken;
            CHECK_FALSE(accepted(problem, shifted));
          }
        }
      }
    }
  }
  CHECK(programmes > 1500);
  CHECK(broken > 10000);
}

TEST_CASE("the checker refuses a booking that is missing, doubled or unknown") {
  const Problem problem = hand::plain();
  const Answer right = hand::answer(problem);
  for (std::size_t index = 0; index < right.bookings.size(); ++index) {
    Answer missing = right;
    missing.bookings.erase(missing.bookings.begin() + static_cast<std::ptrdiff_t>(index));
    CHECK(says(problem, missing, "is booked 0 times"));
    Answer doubled = right;
    doubled.bookings.push_back(doubled.bookings[index]);
    CHECK(says(problem, doubled, "is booked 2 times"));
    Answer unknown = right;
    unknown.bookings[index].index = 7;
    CHECK(says(problem, unknown, "does not have"));
    Answer beyond = right;
    beyond.bookings[index].end = problem.horizon + 1;
    CHECK(says(problem, beyond, "within the horizon"));
  }
  Answer extra = right;
  extra.bookings.push_back({What::rework, 0, 0, 100, 102});
  CHECK(says(problem, extra, "no rework is offered"));
  extra.bookings.back().what = What::reclean;
  CHECK(says(problem, extra, "no reclean is offered"));
}

TEST_CASE("the checker refuses each wrong value of the objective") {
  const Problem problem = hand::plain();
  const Answer right = hand::answer(problem);
  Answer wrong = right;
  ++wrong.objective.finish;
  CHECK(says(problem, wrong, "the finish is"));
  wrong = right;
  ++wrong.objective.splits;
  CHECK(says(problem, wrong, "the splits is"));
  wrong = right;
  ++wrong.objective.reworks;
  CHECK(says(problem, wrong, "the reworks is"));
  wrong = right;
  --wrong.objective.cost;
  CHECK(says(problem, wrong, "the cost is"));
  wrong = right;
  --*wrong.objective.slack;
  CHECK(says(problem, wrong, "the slack is"));
  wrong.objective.slack.reset();
  CHECK(says(problem, wrong, "there is a window to keep"));
  wrong = right;
  ++wrong.objective.empty;
  CHECK(says(problem, wrong, "the time empty is"));
}

// The answer stays, the rule moves: wash 07-09, etch 09-11, coats on days 1 and 2 at 08 to 10, the
// only hours that are open.
TEST_CASE("the checker names each rule that an answer breaks") {
  Problem mornings = hand::plain();
  mornings.calendars[1] = hand::daily(10, 8, 10);
  const Answer answer = hand::answer(mornings);
  const auto broken = [&](const std::string& complaint, void (*change)(Problem&)) {
    Problem problem = hand::plain();
    change(problem);
    INFO(complaint);
    CHECK(says(problem, answer, complaint));
  };
  broken("starts too soon after 9", [](Problem& p) { p.chain[1].lag_min = 1; });
  broken("starts before its release", [](Problem& p) { p.chain[0].release = 8; });
  broken("open slots, not 3", [](Problem& p) { p.chain[0].slots = 3; });
  broken("starts in a closed slot", [](Problem& p) { p.calendars[0][7] = 0; });
  broken("does not end with its last worked slot", [](Problem& p) { p.calendars[0][8] = 0; });
  broken("does not last 1 slots", [](Problem& p) {
    p.chain[0].kind = Kind::one_shift;
    p.chain[0].slots = 1;
  });
  broken("does not last 5 slots", [](Problem& p) {
    p.chain[0].kind = Kind::unattended;
    p.chain[0].slots = 5;
  });
  broken("runs over the closed slot 33", [](Problem& p) { p.calendars[1][33] = 0; });
  broken("is not within one date", [](Problem& p) {
    for (std::size_t slot = 33; slot < p.date_of.size(); ++slot) ++p.date_of[slot];
  });
  broken("outside [25, 30]", [](Problem& p) { p.units.recoat = {{25, 30}}; });
  broken("outside [20, 23]", [](Problem& p) { p.units.recoat = {{20, 23}}; });
  broken("before it is dry", [](Problem& p) { p.anchor.dry = 22; });
  broken("after the anchor's limit", [](Problem& p) { p.anchor.limit = 20; });
  broken("too soon after the rain in slot 30", [](Problem& p) {
    p.anchor.rain_free = 2;
    p.wet[30] = 1;
  });
  broken("there is no finish after 58", [](Problem& p) { p.finish[58].reset(); });
  broken("before the crew is free at 8", [](Problem& p) { p.facts = Facts{8}; });
}

TEST_CASE("the checker names a late start and a rework out of its window") {
  Problem problem = hand::plain();
  problem.units.rework = Rework{{2}, 0, 2, 24};
  problem.facts = Facts{5 * 24, {{0, 7, 9}, {1, 9, 11}}, {{0, 0, 32, 34}}};
  problem.calendars[0] = hand::daily(10, 7, 9);
  const Answer answer = hand::answer(problem);  // rework 127-129, coat 152-154
  problem.units.rework->max = 22;
  CHECK(says(problem, answer, "starts too late after its rework"));
  problem.units.rework->max = 24;
  problem.units.rework->dry = 24;
  CHECK(says(problem, answer, "starts before its rework is dry"));
  problem.units.rework->dry = 2;
  problem.units.recoat = {{100, 110}};
  CHECK(says(problem, answer, "starts too soon after its coat"));
  Problem chain = hand::plain();
  Answer late = hand::answer(chain);
  chain.chain[1].lag_max = 3;
  late.bookings[1].start = 14;
  late.bookings[1].end = 16;
  CHECK(says(chain, late, "starts too late after 9"));
}

TEST_CASE("the checker names sections out of order and a reclean at the wrong time") {
  Problem problem = hand::plain();
  problem.units.sections = {"deep", "shallow"};
  problem.units.slots = {{1, 1}, {1, 1}};
  problem.anchor.reclean = Reclean{1, 0};
  Answer answer = hand::answer(problem);
  std::swap(answer.bookings[2].section, answer.bookings[3].section);
  CHECK(says(problem, answer, "before the section before it is done"));
  answer = hand::answer(problem);
  answer.bookings.insert(answer.bookings.begin() + 4, {What::reclean, 0, 0, 36, 37});
  CHECK(says(problem, answer, "a reclean comes after a unit"));
  answer = hand::answer(problem);
  answer.bookings.insert(answer.bookings.begin(), {What::reclean, 0, 0, 7, 8});
  CHECK(says(problem, answer, "a reclean starts before the chain's end"));
}
