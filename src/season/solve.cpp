#include "basinwright/season/solve.hpp"

#include <algorithm>
#include <stdexcept>

#include "bound.hpp"
#include "exact.hpp"
#include "insertion.hpp"
#include "late_start.hpp"

namespace basinwright::season {
namespace {

void require(bool holds, const char* what) {
  if (!holds) throw std::invalid_argument(std::string("season: ") + what);
}

void require_sound(const Candidate& candidate) {
  const schedule::Problem& p = candidate.problem;
  require(candidate.time_of.size() >= at(p.horizon), "a slot has no time");
  require(std::ranges::all_of(candidate.time_of, [](auto time) { return time >= 0; }),
          "a time is negative");
  require(candidate.full.size() >= at(p.horizon), "a finish is never complete");
  require(std::ranges::is_sorted(candidate.full), "the dates of completion do not ascend");
  require(candidate.after.calendar < p.calendars.size(),
          "the calendar of the work after is unknown");
  require(candidate.after.unmask >= 0 && candidate.after.refit >= 0 && candidate.ready >= 0,
          "a length is negative");
  for (const schedule::Task& task : p.chain) {
    require(task.kind != schedule::Kind::attended || !task.lag_max,
            "a task that may pause has a latest lag");
    require(task.calendar != p.units.calendar, "a task shares the calendar of the units");
  }
}

void require_sound(const Problem& problem) {
  require(problem.travel.size() == problem.jobs.size(), "a job has no travel");
  for (const auto& row : problem.travel)
    require(row.size() == problem.jobs.size(), "a job has no travel");
  require(problem.alike.empty() || problem.alike.size() == problem.crews, "a crew has no kind");
  for (const Job& job : problem.jobs) {
    require(job.by_crew.size() == problem.crews, "a job does not know a crew");
    require(job.weight > 0, "a weight is not positive");
    for (const auto& candidate : job.by_crew) {
      if (candidate) require_sound(*candidate);
    }
  }
}

Answer answer_of(const std::vector<SinglePtr>& jobs, const Value& bound) {
  Answer answer;
  for (const SinglePtr& single : jobs) {
    answer.jobs.push_back(single->booked);
    answer.value = answer.value + single->value;
  }
  answer.bound = bound;
  answer.optimal = bound == answer.value;
  return answer;
}

// Without a search: each job alone, and the places of the order.
Value plain_bound(Singles& singles, const Bound& bound) {
  std::vector<Value> alone;
  Value sum;
  const Problem& p = singles.problem();
  for (std::size_t j = 0; j < p.jobs.size(); ++j) {
    Value best{1, 0, 0, 0};
    for (std::size_t c = 0; c < p.crews; ++c) best = std::min(best, singles.best(j, c, {})->value);
    alone.push_back(best);
    sum = sum + best;
  }
  return std::max(sum, bound.of(alone));
}

}  // namespace

Answer solve(const Problem& problem, const Effort& effort) {
  require_sound(problem);
  Singles singles(problem);
  const Bound bound(problem);
  const Season season = best_by_insertion(singles, effort.improving);
  const Proof proof = prove(singles, bound, season.value, effort.proving);
  const Season best = proof.better ? Season{*proof.better, {}} : season;
  return answer_of(begun_late(singles, best).jobs, proof.bound);
}

Answer book_in_order(const Problem& problem,
                     const std::vector<std::size_t>& order,
                     const std::vector<std::size_t>& crews) {
  require_sound(problem);
  Singles singles(problem);
  const Season season = insert_all(singles, order, crews);
  return answer_of(season.jobs, std::min(season.value, plain_bound(singles, Bound(problem))));
}

}  // namespace basinwright::season
