// How long a replay of forty years takes for one job once the gates are known. Printed, never
// asserted: another machine, another figure.
#include <fmt/format.h>
#include <algorithm>
#include <chrono>
#include <vector>

#include "job/question.hpp"
#include "support/plans.hpp"

#include "basinwright/odds/replay.hpp"
#include "basinwright/odds/years.hpp"
#include "basinwright/readers/weather_file.hpp"

int main() {
  using namespace basinwright;
  using Clock = std::chrono::steady_clock;
  const auto ms = [](Clock::time_point from) {
    return std::chrono::duration<double, std::milli>(Clock::now() - from).count();
  };
  diagnostics::Problems problems;
  const auto file =
      readers::read_weather({"days.csv", test::file_text("tests/odds/seattle.days.csv")}, problems);
  const auto record = readers::merge({*file}, 0, 0);
  const auto job = test::job_of(test::file_text("examples/plain-pool.json"));
  const auto rates = test::demonstration();
  job::Circumstances now;
  now.today = test::day("2027-01-04");
  const auto plan = job::make_plan(job, rates, now);
  const auto question = job::question_of(job, rates, now, plan);
  const auto past = odds::years_of(record, {question.start, 120});
  const auto gates = Clock::now();
  std::vector<sequence::Posed> years;
  // The four real years ten times over: as much work as forty.
  for (int i = 0; i < 10; ++i) {
    for (const auto& year : past.years) years.emplace_back(question, year.record, 120);
  }
  const double posed = ms(gates);
  double best = 1e300;
  for (int round = 0; round < 7; ++round) {
    const auto start = Clock::now();
    int finished = 0;
    for (const auto& year : years) finished += odds::with_foresight(year).refill_done ? 1 : 0;
    best = finished > 0 ? std::min(best, ms(start)) : best;
  }
  const auto usual = odds::climatology(years);
  const auto start = Clock::now();
  int again = 0;
  for (const auto& year : years) again += odds::as_a_foreman(year, usual).etched_again;
  fmt::print(
      "replay of {} years: {:.1f} ms with foresight, {:.0f} ms as a foreman ({} etches "
      "again), gates {:.0f} ms\n",
      years.size(),
      best,
      ms(start),
      again,
      posed);
}
