#include "diary.hpp"

#include <algorithm>

namespace basinwright::season {
namespace {

// The hours of a date in which a crew works at all for a job.
Presence hours_of(const Candidate& candidate, std::int32_t date) {
  const schedule::Problem& p = candidate.problem;
  const auto end = p.date_of.begin() + p.horizon;
  const auto [from, to] = std::equal_range(p.date_of.begin(), end, date);
  Presence hours{date, all_day, 0};
  for (auto it = from; it != to; ++it) {
    const auto slot = static_cast<std::size_t>(it - p.date_of.begin());
    const bool open = std::ranges::any_of(p.calendars, [&](const schedule::Calendar& calendar) {
      return slot < calendar.size() && calendar[slot] != 0;
    });
    if (!open) continue;
    hours.from = std::min(hours.from, candidate.time_of[slot]);
    hours.to = std::max(hours.to, candidate.time_of[slot] + 1);
  }
  return hours;
}

/// The gaps that the others leave of a date, one after the other.
class Gaps {
 public:
  Gaps(const Problem& problem, std::size_t job, const std::vector<Stay>& day) {
    std::int32_t from = -all_day;
    for (const Stay& stay : day) {
      gaps_.emplace_back(from, stay.at.from - problem.travel[job][stay.job]);
      from = std::max(from, stay.at.to + problem.travel[stay.job][job]);
    }
    gaps_.emplace_back(from, all_day);
  }

  [[nodiscard]] Presence longest(const Presence& hours) const {
    Presence best{hours.date, -all_day, -all_day};
    const auto length = [&](std::int32_t from, std::int32_t to) {
      return std::min(to, hours.to) - std::max(from, hours.from);
    };
    for (const auto& [from, to] : gaps_) {
      if (length(from, to) > std::max(0, length(best.from, best.to))) best = {hours.date, from, to};
    }
    return best;
  }

  [[nodiscard]] Presence around(const Presence& stay) const {
    for (const auto& [from, to] : gaps_) {
      if (from <= stay.from && stay.to <= to) return {stay.date, from, to};
    }
    return {stay.date, -all_day, -all_day};
  }

 private:
  std::vector<std::pair<std::int32_t, std::int32_t>> gaps_;
};

}  // namespace

void enter(Diary& diary, std::size_t job, const Booked& booked) {
  for (const Presence& at : booked.at) {
    auto& day = diary[at.date];
    const auto place =
        std::ranges::upper_bound(day, at.from, {}, [](const Stay& stay) { return stay.at.from; });
    day.insert(place, {job, at});
  }
}

Windows windows_for(const Problem& problem,
                    std::size_t job,
                    const Candidate& candidate,
                    const Diary& diary,
                    const std::vector<Presence>& kept) {
  Windows windows;
  for (const auto& [date, day] : diary) {
    const Gaps gaps(problem, job, day);
    const auto stay = std::ranges::lower_bound(kept, date, {}, &Presence::date);
    const bool there = stay != kept.end() && stay->date == date;
    narrow(windows, there ? gaps.around(*stay) : gaps.longest(hours_of(candidate, date)));
  }
  return windows;
}

}  // namespace basinwright::season
