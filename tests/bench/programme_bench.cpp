// How long the earliest programme takes over a year of hours. Printed, never asserted: another
// machine, another figure.
#include <fmt/format.h>
#include <algorithm>
#include <chrono>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>
#include <variant>

#include "schedule/reference_row.hpp"

#include "basinwright/schedule/solve.hpp"

namespace {

namespace schedule = basinwright::schedule;
using schedule::Slot;
using Clock = std::chrono::steady_clock;

constexpr Slot hours_in_day = 24;
constexpr Slot days_in_week = 7;

/// Hours [from, to) of working days, each open with a chance in a hundred.
schedule::Calendar daily(Slot days, Slot from, Slot to, unsigned chance, std::mt19937& draw) {
  schedule::Calendar open(static_cast<std::size_t>(days * hours_in_day), 0);
  for (Slot day = 0; day < days; ++day) {
    if (day % days_in_week > 4) continue;
    const bool fine = draw() % 100 < chance;
    for (Slot hour = from; hour < to; ++hour) {
      open[static_cast<std::size_t>(day * hours_in_day + hour)] = fine ? 1 : 0;
    }
  }
  return open;
}

/// A domestic job in whole hours: nine tasks, then two coats on two sections, 20 to 24 h apart; of
/// the mornings so many in a hundred are fine.
schedule::Problem year(unsigned fine_mornings, std::uint32_t seed) {
  std::mt19937 draw(seed);
  constexpr Slot days = 365;
  schedule::Problem p;
  p.horizon = days * hours_in_day;
  for (Slot slot = 0; slot < p.horizon; ++slot) {
    p.date_of.push_back(slot / hours_in_day);
    p.cost_of.push_back(12600);
  }
  p.attendance = 8500;
  p.calendars = {daily(days, 7, 16, 100, draw),
                 daily(days, 8, 11, fine_mornings, draw),
                 daily(days, 7, 16, 70, draw)};
  const auto task = [&](const char* name, schedule::Kind kind, Slot slots, std::size_t calendar) {
    p.chain.push_back({name, kind, slots, calendar, 0, {}, 0});
  };
  task("set-out", schedule::Kind::attended, 1, 0);
  task("drain", schedule::Kind::unattended, 20, 0);
  task("degrease", schedule::Kind::attended, 3, 0);
  task("abrade", schedule::Kind::attended, 7, 2);
  task("dust", schedule::Kind::attended, 2, 2);
  task("etch-walls", schedule::Kind::one_shift, 2, 0);
  task("etch-floor", schedule::Kind::one_shift, 2, 0);
  task("neutralise", schedule::Kind::one_shift, 2, 0);
  p.chain[6].lag_max = 0;
  p.chain[7].lag_max = 0;
  p.emptied_by = 1;
  p.anchor.task = 6;
  p.anchor.limit = 7 * hours_in_day;
  p.anchor.dry = 48;
  p.units.coats = {"coat-1", "coat-2"};
  p.units.sections = {"deep", "shallow"};
  p.units.slots = {{2, 1}, {2, 1}};
  p.units.calendar = 1;
  p.units.recoat = {{20, 24}};
  p.finish.resize(static_cast<std::size_t>(p.horizon) + 1);
  for (Slot end = 1; end + 7 * hours_in_day < p.horizon; ++end) {
    p.finish[static_cast<std::size_t>(end)] = schedule::Finish{end + 7 * hours_in_day, 0};
  }
  return p;
}

// Milliseconds of one solution, the best of several rounds.
double milliseconds(const schedule::Problem& problem) {
  constexpr int rounds = 20;
  double best = 1e300;
  for (int r = 0; r < rounds; ++r) {
    const auto start = Clock::now();
    volatile bool found = std::holds_alternative<schedule::Answer>(schedule::solve(problem));
    static_cast<void>(found);
    const std::chrono::duration<double, std::milli> took = Clock::now() - start;
    best = std::min(best, took.count());
  }
  return best;
}

// Seconds of solving the rows of a file of programmes once each, and that each finds its optimum.
int time_rows(const char* path) {
  std::ifstream stream(path);
  double all = 0.0;
  const auto file = nlohmann::json::parse(stream);
  for (const auto& row : file.at("rows")) {
    const auto read = schedule::reference::read_row(row);
    const auto solved = schedule::solve(read.problem);
    const auto* answer = std::get_if<schedule::Answer>(&solved);
    const bool same = answer != nullptr && read.expected &&
                      answer->objective.finish == read.expected->finish &&
                      answer->objective.splits == read.expected->splits &&
                      answer->objective.reworks == read.expected->reworks &&
                      answer->objective.cost == read.expected->cost;
    if (!same) {
      fmt::print("{}: another optimum\n", read.name);
      return 1;
    }
    all += milliseconds(read.problem);
  }
  fmt::print("{:.9f}\n", all / 1000.0);
  return 0;
}

void time_years() {
  for (const unsigned fine : {90U, 50U, 30U, 0U}) {
    constexpr std::uint32_t seeds = 5;
    double all = 0.0;
    int dated = 0;
    for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
      const schedule::Problem problem = year(fine, seed);
      dated += std::holds_alternative<schedule::Answer>(schedule::solve(problem)) ? 1 : 0;
      all += milliseconds(problem);
    }
    fmt::print(
        "programme over 365 days of hours, {} % fine mornings: {:.2f} ms ({} of {} have one)\n",
        fine,
        all / seeds,
        dated,
        seeds);
  }
}

}  // namespace

/// `bench_programme [ROWS]`: with a file of the form of tests/reference/schedules.json, its rows.
int main(int argc, char** argv) {
  if (argc > 1) return time_rows(argv[1]);
  time_years();
}
