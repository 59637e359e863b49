#include "visits.hpp"

#include <algorithm>
#include <limits>
#include <variant>

#include "basinwright/schedule/solve.hpp"

namespace basinwright::season {
namespace {

/// From the first to the last open time of the units' calendar, of each date, and its longest run.
struct Open {
  std::int32_t from = all_day, to = -all_day;
  Slot run = 0;
};

std::map<std::int32_t, Open> open_dates(const Candidate& candidate) {
  std::map<std::int32_t, Open> dates;
  const schedule::Problem& p = candidate.problem;
  const schedule::Calendar& calendar = p.calendars[p.units.calendar];
  const auto slots = std::min(calendar.size(), at(p.horizon));
  Slot run = 0;
  for (std::size_t s = 0; s < slots; ++s) {
    const bool same = s > 0 && p.date_of[s] == p.date_of[s - 1];
    run = calendar[s] == 0 ? 0 : (same ? run + 1 : 1);
    if (run == 0) continue;
    Open& open = dates[p.date_of[s]];
    open.from = std::min(open.from, candidate.time_of[s]);
    open.to = std::max(open.to, candidate.time_of[s] + 1);
    open.run = std::max(open.run, run);
  }
  return dates;
}

bool coat_done(const schedule::Problem& problem, std::size_t coat, std::size_t section) {
  if (!problem.facts) return false;
  return std::ranges::any_of(problem.facts->units, [&](const schedule::DoneUnit& d) {
    return d.coat == coat && d.section == section;
  });
}

/// Slots of the shortest unit that is to be done; none when all are.
std::optional<Slot> shortest_unit(const schedule::Problem& problem) {
  std::optional<Slot> shortest;
  for (std::size_t c = 0; c < problem.units.coats.size(); ++c) {
    for (std::size_t s = 0; s < problem.units.sections.size(); ++s) {
      if (coat_done(problem, c, s)) continue;
      shortest =
          std::min(shortest.value_or(std::numeric_limits<Slot>::max()), problem.units.slots[c][s]);
    }
  }
  return shortest;
}

/// Of two starts in open slots: the most slots between them on one date, the fewest when a date or
/// more lies between.
struct Between {
  Slot on_one = 0;
  Slot over_one = std::numeric_limits<Slot>::max();
};

Between between(const schedule::Problem& p) {
  struct Date {
    std::int32_t date = 0;
    Slot first = 0, last = 0;
  };
  std::vector<Date> dates;
  const schedule::Calendar& calendar = p.calendars[p.units.calendar];
  for (Slot s = 0; s < p.horizon && at(s) < calendar.size(); ++s) {
    if (calendar[at(s)] == 0) continue;
    if (dates.empty() || dates.back().date != p.date_of[at(s)])
      dates.push_back({p.date_of[at(s)], s, s});
    dates.back().last = s;
  }
  Between found;
  auto later = dates.begin();
  for (const Date& one : dates) {
    found.on_one = std::max(found.on_one, one.last - one.first);
    while (later != dates.end() && later->date < one.date + 2) ++later;
    if (later != dates.end()) found.over_one = std::min(found.over_one, later->first - one.last);
  }
  return found;
}

// The least date on which the last unit may end; none where it never does.
std::optional<std::int32_t> earliest_last(const Candidate& candidate) {
  schedule::Problem problem = candidate.problem;
  problem.finish.assign(at(problem.horizon) + 1, std::nullopt);
  for (Slot end = 1; end <= problem.horizon; ++end)
    problem.finish[at(end)] = schedule::Finish{end, 0};
  const auto solved = schedule::solve(problem);
  const auto* answer = std::get_if<schedule::Answer>(&solved);
  if (answer == nullptr) return {};
  return problem.date_of[at(answer->objective.finish - 1)];
}

PaintingDates dates_on(const Candidate& candidate) {
  const schedule::Problem& p = candidate.problem;
  PaintingDates dates;
  std::size_t left = 0;
  for (std::size_t s = 0; s < p.units.sections.size(); ++s) {
    std::size_t coats = 0;
    for (std::size_t c = 0; c < p.units.coats.size(); ++c) coats += coat_done(p, c, s) ? 0U : 1U;
    left = std::max(left, coats);
  }
  if (left == 0) return dates;
  const Between starts = between(p);
  bool apart = true;
  bool next = !p.units.rework;
  for (const schedule::Recoat& window : p.units.recoat) {
    apart = apart && window.min > starts.on_one;
    next = next && window.max < starts.over_one;
  }
  dates.least = apart ? static_cast<std::int64_t>(left) : 1;
  dates.in_a_row = apart && next && left > 1;
  if (!dates.in_a_row) return dates;
  const auto last = earliest_last(candidate);
  dates.from = last ? *last - static_cast<std::int32_t>(dates.least) + 1 : all_day;
  return dates;
}

}  // namespace

PaintingDates painting_dates(const Job& job) {
  PaintingDates least{std::numeric_limits<std::int64_t>::max(), true, all_day};
  bool any = false;
  const Candidate* before = nullptr;
  for (const auto& candidate : job.by_crew) {
    if (!candidate || candidate.get() == before) continue;
    any = true;
    before = candidate.get();
    const PaintingDates one = dates_on(*candidate);
    least.from = std::min(least.from, one.from);
    least.least = std::min(least.least, one.least);
    least.in_a_row = least.in_a_row && one.in_a_row;
  }
  return any ? least : PaintingDates{};
}

Dates visits_of(const Problem& problem, std::size_t crew, std::int32_t from) {
  std::map<std::int32_t, Open> open;
  std::vector<std::int64_t> units;
  Slot ready = std::numeric_limits<Slot>::max();
  for (const Job& job : problem.jobs) {
    const auto& candidate = job.by_crew[crew];
    const auto shortest = candidate ? shortest_unit(candidate->problem) : std::nullopt;
    if (!shortest) continue;
    units.push_back(*shortest);
    ready = std::min(ready, candidate->ready);
    for (const auto& [date, one] : open_dates(*candidate)) {
      Open& all = open[date];
      all.from = std::min(all.from, one.from);
      all.to = std::max(all.to, one.to);
      all.run = std::max(all.run, one.run);
    }
  }
  std::ranges::sort(units);
  std::int64_t way = std::numeric_limits<std::int32_t>::max();
  for (std::size_t a = 0; a < problem.jobs.size(); ++a) {
    for (std::size_t b = 0; b < problem.jobs.size(); ++b) {
      if (a != b) way = std::min<std::int64_t>(way, problem.travel[a][b]);
    }
  }
  Dates visits;
  for (const auto& [date, one] : open) {
    std::int64_t& count = visits[date];
    if (units.empty() || one.run < units.front() || date < from) continue;
    std::int64_t taken = 0;
    for (const std::int64_t unit : units) {
      taken += unit + (count > 0 ? way + ready : 0);
      if (count > 0 && taken > one.to - one.from) break;
      ++count;
    }
  }
  return visits;
}

Dates rows_of(const Dates& visits, std::int64_t length) {
  Dates left = visits;
  Dates rows;
  for (auto first = left.begin(); first != left.end(); ++first) {
    std::int64_t most = first->second;
    auto last = first;
    for (std::int64_t day = 1; day < length && most > 0; ++day) {
      const auto next = std::next(last);
      if (next == left.end() || next->first != last->first + 1) most = 0;
      if (most == 0) break;
      last = next;
      most = std::min(most, last->second);
    }
    if (most == 0) continue;
    for (auto day = first; day != std::next(last); ++day) day->second -= most;
    rows[last->first] += most;
  }
  return rows;
}

}  // namespace basinwright::season
