#include "bound.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "visits.hpp"

namespace basinwright::season {
namespace {

/// What a job asks for at least, of whichever crew: slots of work, slots of units.
struct Demand {
  std::int64_t work = 0, painted = 0;
};

bool done(const schedule::Problem& problem, std::size_t task) {
  if (!problem.facts) return false;
  return std::ranges::any_of(problem.facts->tasks,
                             [&](const schedule::DoneTask& d) { return d.task == task; });
}

bool done(const schedule::Problem& problem, std::size_t coat, std::size_t section) {
  if (!problem.facts) return false;
  return std::ranges::any_of(problem.facts->units, [&](const schedule::DoneUnit& d) {
    return d.coat == coat && d.section == section;
  });
}

Demand demand_of(const schedule::Problem& problem) {
  Demand demand;
  for (std::size_t t = 0; t < problem.chain.size(); ++t) {
    const schedule::Task& task = problem.chain[t];
    if (task.kind != schedule::Kind::unattended && !done(problem, t)) demand.work += task.slots;
  }
  for (std::size_t c = 0; c < problem.units.coats.size(); ++c) {
    for (std::size_t s = 0; s < problem.units.sections.size(); ++s) {
      if (done(problem, c, s)) continue;
      demand.painted += problem.units.slots[c][s];
    }
  }
  demand.work += demand.painted;
  return demand;
}

/// What one crew can do at most on each date: in every slot that is open to any of its jobs.
struct Capacity {
  Dates work, painted;
};

// What may be done at the times of a date: 1 anything, 2 a unit too.
using Times = std::vector<char>;

void open_times(const Candidate& candidate,
                std::size_t calendar,
                std::map<std::int32_t, Times>& open) {
  const schedule::Problem& p = candidate.problem;
  const auto slots = std::min(p.calendars[calendar].size(), at(p.horizon));
  const char what = calendar == p.units.calendar ? 2 : 1;
  Times* times = nullptr;
  for (std::size_t s = 0; s < slots; ++s) {
    if (times == nullptr || p.date_of[s] != p.date_of[s - 1]) times = &open[p.date_of[s]];
    if (p.calendars[calendar][s] == 0) continue;
    const auto time = static_cast<std::size_t>(candidate.time_of[s]);
    if (times->size() <= time) times->resize(time + 1, 0);
    (*times)[time] = std::max((*times)[time], what);
  }
}

Capacity capacity_of(const Problem& problem, std::size_t crew) {
  std::map<std::int32_t, Times> open;
  for (const Job& job : problem.jobs) {
    const auto& candidate = job.by_crew[crew];
    if (!candidate) continue;
    for (std::size_t c = 0; c < candidate->problem.calendars.size(); ++c)
      open_times(*candidate, c, open);
  }
  Capacity capacity;
  for (const auto& [date, times] : open) {
    capacity.work[date] = std::ranges::count_if(times, [](char what) { return what > 0; });
    capacity.painted[date] = std::ranges::count(times, 2);
  }
  return capacity;
}

void add(const Dates& some, Dates& all) {
  for (const auto& [date, count] : some) all[date] += count;
}

// For each k the first date by which the k least demands are met.
std::vector<std::int32_t> dates_of(std::vector<std::int64_t> demands, const Dates& capacity) {
  std::ranges::sort(demands);
  std::vector<std::int32_t> dates;
  std::int64_t asked = 0;
  std::int64_t offered = 0;
  std::int32_t date = std::numeric_limits<std::int32_t>::min();
  auto next = capacity.begin();
  for (const std::int64_t demand : demands) {
    asked += demand;
    while (offered < asked && next != capacity.end()) {
      date = next->first;
      offered += next++->second;
    }
    dates.push_back(offered < asked ? std::numeric_limits<std::int32_t>::max() : date);
  }
  return dates;
}

// The least value of a job on a crew whose last unit ends on a date or later, by that date.
std::map<std::int32_t, Value> by_last_date(const Job& job, const Candidate& candidate) {
  std::map<std::int32_t, Value> least;
  const schedule::Problem problem = within(candidate, {});
  Value best{1, 0, 0, 0};
  for (Slot end = problem.horizon; end > 0; --end) {
    if (const auto& finish = problem.finish[at(end)]) {
      const std::int32_t full = candidate.full[at(finish->slot)];
      const std::int64_t late = job.promised ? std::max(0, full - *job.promised) : 0;
      best = std::min(best, {0, late * job.weight, full, candidate.cost});
    }
    least[problem.date_of[at(end - 1)]] = best;
  }
  return least;
}

}  // namespace

Bound::Bound(const Problem& problem) : p_(problem) {
  std::vector<std::int64_t> work, painted, days;
  std::int64_t loose = 0;        // jobs whose painting dates need not be in a row
  std::int32_t first = all_day;  // on which any job is painted
  std::int64_t in_a_row = std::numeric_limits<std::int64_t>::max();
  for (const Job& job : p_.jobs) {
    std::optional<Demand> least;
    for (const auto& candidate : job.by_crew) {
      if (!candidate) continue;
      const Demand demand = demand_of(candidate->problem);
      if (!least) least = demand;
      least->work = std::min(least->work, demand.work);
      least->painted = std::min(least->painted, demand.painted);
    }
    work.push_back(least ? least->work : 0);
    painted.push_back(least ? least->painted : 0);
    const PaintingDates dates = painting_dates(job);
    days.push_back(dates.least);
    if (dates.least > 0) first = std::min(first, dates.in_a_row ? dates.from : -all_day);
    if (dates.in_a_row) {
      in_a_row = std::min(in_a_row, dates.least);
    } else {
      ++loose;
    }
  }
  Capacity all;
  Dates visits, rows;
  for (std::size_t crew = 0; crew < p_.crews; ++crew) {
    const Capacity one = capacity_of(p_, crew);
    add(one.work, all.work);
    add(one.painted, all.painted);
    const Dates visited = visits_of(p_, crew, first);
    add(visited, visits);
    if (loose < static_cast<std::int64_t>(p_.jobs.size())) add(rows_of(visited, in_a_row), rows);
  }
  std::vector<std::int64_t> row_each(p_.jobs.size(), 1);
  std::fill_n(row_each.begin(), loose, 0);
  const std::vector<std::vector<std::int32_t>> each{dates_of(std::move(work), all.work),
                                                    dates_of(std::move(painted), all.painted),
                                                    dates_of(std::move(days), visits),
                                                    dates_of(std::move(row_each), rows)};
  for (std::size_t k = 0; k < p_.jobs.size(); ++k) {
    auto& date = date_of_place_.emplace_back(each.front()[k]);
    for (const auto& dates : each) date = std::max(date, dates[k]);
  }
  for (const Job& job : p_.jobs) {
    auto& row = at_place_.emplace_back(date_of_place_.size(), Value{1, 0, 0, 0});
    for (const auto& candidate : job.by_crew) {
      if (!candidate) continue;
      const auto least = by_last_date(job, *candidate);
      for (std::size_t k = 0; k < row.size(); ++k) {
        const auto from = least.lower_bound(date_of_place_[k]);
        if (from != least.end()) row[k] = std::min(row[k], from->second);
      }
    }
  }
}

Value Bound::of(const std::vector<Value>& alone) const {
  std::vector<std::vector<Value>> costs = at_place_;
  for (std::size_t job = 0; job < costs.size(); ++job) {
    for (Value& cost : costs[job]) cost = std::max(cost, alone[job]);
  }
  return least_assignment(costs);
}

// Rows are added one by one; each searches the cheapest way to a free column along reduced costs.
Value least_assignment(const std::vector<std::vector<Value>>& costs) {
  const std::size_t n = costs.size();
  constexpr Value far{std::numeric_limits<std::int32_t>::max(), 0, 0, 0};
  std::vector<Value> of_row(n + 1), of_column(n + 1);
  std::vector<std::size_t> row_of(n + 1, 0), before(n + 1, 0);  // 0: none; rows and columns from 1
  for (std::size_t row = 1; row <= n; ++row) {
    row_of[0] = row;
    std::size_t column = 0;
    std::vector<Value> least(n + 1, far);
    std::vector<char> used(n + 1, 0);
    do {
      used[column] = 1;
      Value step = far;
      std::size_t next = 0;
      for (std::size_t c = 1; c <= n; ++c) {
        if (used[c] != 0) continue;
        const Value reduced =
            costs[row_of[column] - 1][c - 1] - of_row[row_of[column]] - of_column[c];
        if (reduced < least[c]) {
          least[c] = reduced;
          before[c] = column;
        }
        if (least[c] < step) {
          step = least[c];
          next = c;
        }
      }
      for (std::size_t c = 0; c <= n; ++c) {
        if (used[c] != 0) {
          of_row[row_of[c]] = of_row[row_of[c]] + step;
          of_column[c] = of_column[c] - step;
        } else {
          least[c] = least[c] - step;
        }
      }
      column = next;
    } while (row_of[column] != 0);
    for (; column != 0; column = before[column]) row_of[column] = row_of[before[column]];
  }
  Value sum;
  for (std::size_t c = 1; c <= n; ++c) sum = sum + costs[row_of[c] - 1][c - 1];
  return sum;
}

}  // namespace basinwright::season
