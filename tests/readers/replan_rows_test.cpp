// The re-plan rows of tests/reference/schedules.json from real log files: what the row says was
// done is written as a site log, read back, and solved. Integers, compared exactly (the file's own
// `tolerance`); proven optimal by label setting and by a constraint solver independently.
#include <fmt/format.h>

#include "basinwright/readers/site_log.hpp"
#include "basinwright/schedule/solve.hpp"
#include "basinwright/sitelog/progress.hpp"
#include "reading.hpp"
#include "schedule/reference_row.hpp"
#include "sequence/add_fact.hpp"

using namespace reading;
namespace dates = basinwright::dates;
namespace schedule = basinwright::schedule;
namespace sequence = basinwright::sequence;
namespace sitelog = basinwright::sitelog;

namespace {

constexpr std::int64_t minutes_in_slot = 60;

/// The row's clock: slot 0 is its `start`.
dates::Minute first_of(const json& row) {
  return dates::parse_minute(row.at("start").get<std::string>()).value();
}
std::string when(const json& row, int slot) {
  return dates::iso(dates::Minute(first_of(row).minutes() + slot * minutes_in_slot));
}

std::string two_lines(const json& row, const json& done, const std::string& what) {
  return fmt::format(
      "{{\"at\": \"{}\", \"event\": \"started\", {}}}\n"
      "{{\"at\": \"{}\", \"event\": \"finished\", {}}}\n",
      when(row, done.at("start").get<int>()),
      what,
      when(row, done.at("end").get<int>()),
      what);
}

// Coats are called coat-1 and so on in a log, sections as the row does.
std::string log_of(const json& row) {
  std::string text;
  for (const json& done : row.at("actual").value("prep_done", json::array())) {
    text += two_lines(row, done, fmt::format("\"task\": \"{}\"", done.at("id").get<std::string>()));
  }
  for (const json& done : row.at("actual").value("units_done", json::array())) {
    const json& section = row.at("coats").at("sections").at(done.at("section").get<std::size_t>());
    text += two_lines(row,
                      done,
                      fmt::format("\"task\": \"coat-{}\", \"section\": \"{}\"",
                                  done.at("coat").get<int>() + 1,
                                  section.at("id").get<std::string>()));
  }
  return text;
}

schedule::Slot slot_of(const json& row, dates::Minute at) {
  return static_cast<schedule::Slot>((at.minutes() - first_of(row).minutes()) / minutes_in_slot);
}

}  // namespace

TEST_CASE("the re-plan rows of the reference from real log files") {
  int read = 0;
  const json file = json::parse(contents("tests/reference/schedules.json"));
  for (const json& row : file.at("rows")) {
    if (!row.contains("actual")) continue;
    INFO(row.at("name").get<std::string>());
    schedule::reference::Row wanted = schedule::reference::read_row(row);
    Problems problems;
    const auto log = readers::read_site_log({"site.log", log_of(row)}, problems);
    INFO(told(problems));
    REQUIRE(log);
    schedule::Problem problem = wanted.problem;
    for (std::size_t c = 0; c < problem.units.coats.size(); ++c)
      problem.units.coats[c] = "coat-" + std::to_string(c + 1);
    problem.units.sections.clear();
    for (const json& section : row.at("coats").at("sections"))
      problem.units.sections.push_back(section.at("id").get<std::string>());
    problem.facts = schedule::Facts{row.at("actual").at("now").get<schedule::Slot>()};
    for (const sitelog::Progress& p : sitelog::progress(*log)) {
      sequence::add_fact(problem, {p.task, p.section, slot_of(row, p.start), slot_of(row, *p.end)});
    }
    CHECK(problem.facts->tasks.size() == row.at("actual").at("prep_done").size());
    const auto solved = schedule::solve(problem);
    const auto* answer = std::get_if<schedule::Answer>(&solved);
    REQUIRE(answer != nullptr);
    CHECK(answer->objective.finish == wanted.expected->finish);
    CHECK(answer->objective.splits == wanted.expected->splits);
    CHECK(answer->objective.reworks == wanted.expected->reworks);
    CHECK(answer->objective.cost == wanted.expected->cost);
    ++read;
  }
  CHECK(read == 3);
}
