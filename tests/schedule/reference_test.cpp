// The rows of tests/reference/schedules.json: proven optimal by label setting and by a constraint
// solver independently, all integers, so compared exactly (the file's own `tolerance`).
#include <fstream>

#include "basinwright/schedule/solve.hpp"
#include "reference_row.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"

using namespace basinwright::schedule;

namespace {

using nlohmann::json;

json rows() {
  std::ifstream stream(places::source() + "/tests/reference/schedules.json");
  return json::parse(stream).at("rows");
}

Slot count_of(const Calendar& calendar) {
  return static_cast<Slot>(std::count(calendar.begin(), calendar.end(), 1));
}

Problem without_rework(Problem problem) {
  problem.units.rework.reset();
  problem.anchor.reclean.reset();
  return problem;
}

bool feasible(const Problem& problem) {
  return std::holds_alternative<Answer>(solve(problem));
}

}  // namespace

TEST_CASE("every reference row has its status and its four values") {
  std::size_t read = 0;
  for (const json& row : rows()) {
    const reference::Row wanted = reference::read_row(row);
    INFO(wanted.name);
    const auto solved = solve(wanted.problem);
    const auto* answer = std::get_if<Answer>(&solved);
    REQUIRE((answer != nullptr) == wanted.expected.has_value());
    ++read;
    if (answer == nullptr) {
      continue;
    }
    CHECK(answer->objective.finish == wanted.expected->finish);
    CHECK(answer->objective.splits == wanted.expected->splits);
    CHECK(answer->objective.reworks == wanted.expected->reworks);
    CHECK(answer->objective.cost == wanted.expected->cost);
    for (const std::string& complaint : verify(wanted.problem, *answer)) {
      FAIL_CHECK(complaint);
    }
  }
  CHECK(read == 22);
}

// The row's `refill_slot_without_rework`: null where there is then no programme.
TEST_CASE("every reference row has its finish without rework and reclean") {
  std::size_t checked = 0;
  for (const json& row : rows()) {
    if (!row.at("expected").contains("refill_slot_without_rework")) {
      continue;
    }
    const json& wanted = row.at("expected").at("refill_slot_without_rework");
    INFO(row.at("name").get<std::string>());
    const auto solved = solve(without_rework(reference::read_row(row).problem));
    const auto* answer = std::get_if<Answer>(&solved);
    REQUIRE((answer != nullptr) == wanted.is_number());
    if (answer != nullptr) {
      CHECK(answer->objective.finish == wanted.get<Slot>());
    }
    ++checked;
  }
  CHECK(checked == 19);
}

// The row's own witness is a programme too, no better than the answer: `verify` accepts it. Its
// slack the row does not state; it is no larger than the answer's.
TEST_CASE("the programmes of the reference pass the checker") {
  std::size_t checked = 0;
  for (const json& row : rows()) {
    const reference::Row wanted = reference::read_row(row);
    if (!wanted.expected) {
      continue;
    }
    INFO(wanted.name);
    Answer witness{reference::read_witness(row, wanted.problem), *wanted.expected};
    const auto solved = solve(wanted.problem);
    const auto most = std::get<Answer>(solved).objective.slack;
    REQUIRE(most.has_value());
    witness.objective.slack = *most;
    while (*witness.objective.slack > 0 && !verify(wanted.problem, witness).empty()) {
      --*witness.objective.slack;
    }
    for (const std::string& complaint : verify(wanted.problem, witness)) {
      FAIL_CHECK(complaint);
    }
    ++checked;
  }
  CHECK(checked == 19);
}

// The row's `gate_stats`: what the reader makes of the weather.
TEST_CASE("the reader opens as many slots as every reference row says") {
  for (const json& row : rows()) {
    const reference::Row wanted = reference::read_row(row);
    INFO(wanted.name);
    const json& stats = row.at("expected").at("gate_stats");
    CHECK(count_of(wanted.problem.calendars[reference::paint_slots]) ==
          stats.at("open").get<Slot>());
    CHECK(count_of(wanted.problem.calendars[reference::work_slots]) ==
          stats.at("work_slots").get<Slot>());
    CHECK(count_of(wanted.problem.calendars[reference::dry_work_slots]) ==
          stats.at("dry_work_slots").get<Slot>());
  }
}

// The rows' `single_gate_relaxations_that_restore_feasibility`.
TEST_CASE("infeasible reference rows become feasible without the gates they name") {
  const std::vector<std::string> gates{"calendar", "air", "shell", "dew", "rain"};
  std::size_t checked = 0;
  for (const json& row : rows()) {
    if (row.at("expected").at("status") != "infeasible") {
      continue;
    }
    std::vector<std::string> restoring;
    for (const std::string& gate : gates) {
      if (feasible(reference::RowReader(row, {gate}).problem())) {
        restoring.push_back(gate);
      }
    }
    INFO(row.at("name").get<std::string>());
    CHECK(restoring == row.at("expected")
                           .at("single_gate_relaxations_that_restore_feasibility")
                           .get<std::vector<std::string>>());
    ++checked;
  }
  CHECK(checked == 3);
}

// The parts are read off the rows: s12 has no open paint slot at all, s13 no two consecutive days
// for a window of 20 to 24 h, s22 a unit of 4 h in a window of 3 h whatever the weather.
TEST_CASE("infeasible reference rows name the first part without a start") {
  std::size_t checked = 0;
  for (const json& row : rows()) {
    const reference::Row wanted = reference::read_row(row);
    const auto solved = solve(wanted.problem);
    const auto* reason = std::get_if<Infeasible>(&solved);
    if (reason == nullptr) {
      continue;
    }
    INFO(wanted.name << ": " << reason->why);
    CHECK(reason->part == Infeasible::Part::unit);
    CHECK(reason->index == (wanted.name == "s13_infeasible_calendar" ? 1 : 0));
    CHECK(reason->section == 0);
    CHECK_FALSE(reason->why.empty());
    if (wanted.name == "s22_infeasible_recoat_rule") {
      CHECK(reason->rule_conflict);
    }
    ++checked;
  }
  CHECK(checked == 3);
}
