#include "late_start.hpp"

#include <algorithm>
#include <numeric>

#include "diary.hpp"

namespace basinwright::season {
namespace {

// Nothing before a date, from a date on which there was something.
Windows closed_before(Windows windows, std::int32_t from, std::int32_t date) {
  for (std::int32_t closed = from; closed < date; ++closed)
    narrow(windows, {closed, -all_day, -all_day});
  return windows;
}

class Delay {
 public:
  Delay(Singles& singles, Season season)
      : singles_(singles), p_(singles.problem()), season_(std::move(season)) {}

  Season run() {
    Order order(season_.jobs.size());
    std::iota(order.begin(), order.end(), 0);
    std::erase_if(order, [&](std::size_t j) { return !may_move(j); });
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
      return season_.jobs[a]->booked->at.front().date > season_.jobs[b]->booked->at.front().date;
    });
    for (const std::size_t job : order) move(job);
    return std::move(season_);
  }

 private:
  [[nodiscard]] bool may_move(std::size_t job) const {
    const auto& booked = season_.jobs[job]->booked;
    return booked && !p_.jobs[job].by_crew[booked->crew]->problem.facts;
  }

  // A day more on which somebody goes there must shorten the job by a week.
  static bool is_worth_it(const Booked& now, const Booked& later) {
    constexpr std::int64_t days_a_visit = 7;
    const auto visits = [](const Booked& b) { return static_cast<std::int64_t>(b.at.size()); };
    return later.at.front().date - now.at.front().date >=
           days_a_visit * (visits(later) - visits(now));
  }

  void move(std::size_t job) {
    const SinglePtr now = season_.jobs[job];
    const std::size_t crew = now->booked->crew;
    Diary others;
    for (std::size_t other = 0; other < season_.jobs.size(); ++other) {
      const auto& booked = season_.jobs[other]->booked;
      if (other != job && booked && booked->crew == crew) enter(others, other, *booked);
    }
    const Candidate& candidate = *p_.jobs[job].by_crew[crew];
    const std::vector<Presence>& at = now->booked->at;
    const Windows windows = windows_for(p_, job, candidate, others, at);
    const std::int32_t first = at.front().date;
    std::int32_t holds = first;
    std::int32_t fails = now->booked->full + 1;
    while (fails - holds > 1) {
      const std::int32_t middle = holds + (fails - holds) / 2;
      SinglePtr later = singles_.best(
          job, crew, closed_before(windows, candidate.problem.date_of.front(), middle));
      if (later->value == now->value) {
        holds = later->booked->at.front().date;
        if (is_worth_it(*season_.jobs[job]->booked, *later->booked))
          season_.jobs[job] = std::move(later);
      } else {
        fails = middle;
      }
    }
  }

  Singles& singles_;
  const Problem& p_;
  Season season_;
};

}  // namespace

Season begun_late(Singles& singles, Season season) {
  return Delay(singles, std::move(season)).run();
}

}  // namespace basinwright::season
