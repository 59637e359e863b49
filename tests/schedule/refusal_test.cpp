// Problems without a programme, and what is no problem at all.
#include <limits>
#include <stdexcept>

#include "hand_problem.hpp"

using namespace basinwright::schedule;

namespace {

constexpr Slot forever = std::numeric_limits<Slot>::max();

}  // namespace

TEST_CASE("a unit longer than any open run is a conflict of rules") {
  Problem problem = hand::plain();
  problem.units.slots = {{2}, {5}};
  const Infeasible reason = hand::refusal(problem);
  CHECK(reason.part == Infeasible::Part::unit);
  CHECK(reason.index == 1);
  CHECK(reason.rule_conflict);
}

TEST_CASE("a recoat window without inside is a conflict of rules") {
  Problem problem = hand::plain();
  problem.units.recoat = {{24, 20}};
  CHECK(hand::refusal(problem).rule_conflict);
  CHECK(hand::refusal(problem).index == 1);
  // Not empty as written, but no pair of 1 h and 3 h meets it both ways.
  problem.units.recoat = {{23, 24}};
  problem.units.slots = {{1}, {3}};
  CHECK(hand::refusal(problem).rule_conflict);
  problem.units.recoat = {{22, 24}};
  CHECK(hand::answer(problem).bookings.size() == 4);
}

TEST_CASE("drying longer than the anchor lasts is a conflict of rules") {
  Problem problem = hand::plain();
  problem.anchor.dry = 97;
  const Infeasible reason = hand::refusal(problem);
  CHECK(reason.part == Infeasible::Part::unit);
  CHECK(reason.index == 0);
  CHECK(reason.rule_conflict);
}

TEST_CASE("the first task without a start is named") {
  Problem problem = hand::plain();
  problem.chain[1].kind = Kind::one_shift;
  problem.chain[1].slots = 10;
  const Infeasible reason = hand::refusal(problem);
  CHECK(reason.part == Infeasible::Part::chain);
  CHECK(reason.index == 1);
  CHECK(reason.rule_conflict);
  problem.chain[1].slots = 9;
  problem.chain[1].lag_max = 3;  // after the wash there is never a whole day left
  CHECK_FALSE(hand::refusal(problem).rule_conflict);
  CHECK(hand::refusal(problem).index == 1);
}

TEST_CASE("a lag that is over at now is a conflict of rules") {
  Problem problem = hand::plain();
  problem.chain[1].lag_max = 5;
  problem.facts = Facts{20, {{0, 7, 9}}};
  const Infeasible reason = hand::refusal(problem);
  CHECK(reason.part == Infeasible::Part::chain);
  CHECK(reason.index == 1);
  CHECK(reason.rule_conflict);
}

// Two sections of 3 h each fit no morning of 4 h together, and no two mornings within 24 h of the
// etch: the first section can be coated, the second cannot.
TEST_CASE("the section that cannot follow is named") {
  Problem problem = hand::plain();
  problem.units.sections = {"deep", "shallow"};
  problem.units.slots = {{3, 3}, {3, 3}};
  problem.anchor.limit = 24;
  const Infeasible reason = hand::refusal(problem);
  CHECK(reason.part == Infeasible::Part::unit);
  CHECK(reason.index == 0);
  CHECK(reason.section == 1);
}

TEST_CASE("no finish in the horizon is named") {
  Problem problem = hand::plain();
  problem.finish.clear();
  CHECK(hand::refusal(problem).part == Infeasible::Part::finish);
}

TEST_CASE("an empty horizon has no programme") {
  Problem problem = hand::plain();
  problem.horizon = 0;
  CHECK(hand::refusal(problem).part == Infeasible::Part::chain);
}

TEST_CASE("lags without end stay within range") {
  Problem problem = hand::plain();
  problem.anchor.limit = forever;
  problem.units.recoat = {{20, forever}};
  problem.chain[1].lag_max = forever;
  problem.units.rework = Rework{{2}, 0, 2, forever};
  CHECK(hand::answer(problem).objective.finish == 48 + 10 + 48);
  problem.anchor.dry = forever;
  CHECK(hand::refusal(problem).part == Infeasible::Part::unit);
}

TEST_CASE("what is no problem is refused") {
  const auto refused = [](void (*spoil)(Problem&)) {
    Problem problem = hand::plain();
    spoil(problem);
    CHECK_THROWS_AS(solve(problem), std::invalid_argument);
  };
  refused([](Problem& p) { p.horizon = -1; });
  refused([](Problem& p) { p.date_of.pop_back(); });
  refused([](Problem& p) { p.cost_of.clear(); });
  refused([](Problem& p) { p.date_of[3] = 99; });
  refused([](Problem& p) { p.attendance = -1; });
  refused([](Problem& p) { p.chain[0].calendar = 2; });
  refused([](Problem& p) { p.chain[0].lag_min = -1; });
  refused([](Problem& p) { p.chain[0].slots = -1; });
  refused([](Problem& p) { p.units.slots[0][0] = forever; });
  refused([](Problem& p) { p.anchor.task = 2; });
  refused([](Problem& p) { p.anchor.dry = -1; });
  refused([](Problem& p) { p.anchor.reclean = Reclean{0, 0}; });
  refused([](Problem& p) { p.units.coats.clear(); });
  refused([](Problem& p) { p.units.sections.clear(); });
  refused([](Problem& p) { p.units.calendar = 9; });
  refused([](Problem& p) { p.units.slots[1][0] = 0; });
  refused([](Problem& p) { p.units.slots.pop_back(); });
  refused([](Problem& p) { p.units.recoat.clear(); });
  refused([](Problem& p) { p.units.rework = Rework{{}, 0, 2, 24}; });
}

TEST_CASE("facts that cannot be are refused") {
  const auto refused = [](const Facts& facts) {
    Problem problem = hand::plain();
    problem.facts = facts;
    CHECK_THROWS_AS(solve(problem), std::invalid_argument);
  };
  refused(Facts{-1});
  refused(Facts{9999});
  refused(Facts{9, {{7, 7, 9}}});
  refused(Facts{9, {{0, 7, 9}, {0, 7, 9}}});
  refused(Facts{9, {{0, 9, 7}}});
  refused(Facts{9, {}, {{0, 3, 32, 34}}});
  refused(Facts{9, {}, {{1, 0, 32, 34}}});
  refused(Facts{9, {}, {{0, 0, 32, 32}}});
  refused(Facts{9, {}, {}, {{0, 0, 32, 34}}});
  refused(Facts{9, {}, {}, {}, {{-2, 3}}});
}
