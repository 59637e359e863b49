#include "insertion.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <tuple>

namespace basinwright::season {
namespace {

/// Who is where on each date, of one crew, in the order of the day.
struct Stay {
  std::size_t job = 0;
  Presence at;
};
using Diary = std::map<std::int32_t, std::vector<Stay>>;

void enter(Diary& diary, std::size_t job, const Booked& booked) {
  for (const Presence& at : booked.at) {
    auto& day = diary[at.date];
    const auto place =
        std::ranges::upper_bound(day, at.from, {}, [](const Stay& stay) { return stay.at.from; });
    day.insert(place, {job, at});
  }
}

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

// The longest stretch of a date that the others leave, travel taken off; of equals the first.
Presence longest_gap(const Problem& problem,
                     std::size_t job,
                     const Presence& hours,
                     const std::vector<Stay>& day) {
  Presence best{hours.date, -all_day, -all_day};
  std::int32_t from = -all_day;
  const auto take = [&](std::int32_t to) {
    const auto length = [&](std::int32_t a, std::int32_t b) {
      return std::min(b, hours.to) - std::max(a, hours.from);
    };
    if (length(from, to) > std::max(0, length(best.from, best.to))) best = {hours.date, from, to};
  };
  for (const Stay& stay : day) {
    take(stay.at.from - problem.travel[job][stay.job]);
    from = std::max(from, stay.at.to + problem.travel[stay.job][job]);
  }
  take(all_day);
  return best;
}

Windows windows_for(const Problem& problem,
                    std::size_t job,
                    const Candidate& candidate,
                    const Diary& diary) {
  Windows windows;
  for (const auto& [date, day] : diary)
    narrow(windows, longest_gap(problem, job, hours_of(candidate, date), day));
  return windows;
}

class Improver {
 public:
  Improver(Singles& singles, std::size_t most)
      : singles_(singles), p_(singles.problem()), last_(singles.solved() + most) {}

  Season run() {
    start();
    // The later a job is against its promise, the sooner it is tried in an earlier place.
    bool better = true;
    while (better && !spent()) {
      better = false;
      for (const std::size_t job : by_need()) {
        if (better || spent()) break;
        better = move_forward(job);
      }
    }
    return best_;
  }

 private:
  [[nodiscard]] bool spent() const { return singles_.solved() >= last_; }

  void start() {
    Order order(p_.jobs.size());
    std::iota(order.begin(), order.end(), 0);
    std::vector<Booked> alone(p_.jobs.size());
    for (std::size_t j = 0; j < p_.jobs.size(); ++j) alone[j] = alone_of(j);
    const auto promise = [&](std::size_t j) {
      return p_.jobs[j].promised.value_or(std::numeric_limits<std::int32_t>::max());
    };
    const auto keep = [&](auto key) {
      Order sorted = order;
      std::ranges::stable_sort(sorted, {}, key);
      if (best_.jobs.empty() || !spent()) take(sorted, insert_all(singles_, sorted));
    };
    keep([&](std::size_t j) { return std::tuple(promise(j), -p_.jobs[j].weight, alone[j].full); });
    keep([&](std::size_t j) { return std::tuple(alone[j].full, promise(j)); });
    keep([&](std::size_t j) { return std::tuple(-p_.jobs[j].weight, promise(j), alone[j].full); });
    keep([&](std::size_t j) { return std::tuple(alone[j].at.size(), promise(j)); });
  }

  // Of the crews the one on which it is full first.
  [[nodiscard]] Booked alone_of(std::size_t job) {
    Booked best;
    best.full = std::numeric_limits<std::int32_t>::max();
    for (std::size_t c = 0; c < p_.crews; ++c) {
      const SinglePtr single = singles_.best(job, c, {});
      if (single->booked && single->booked->full < best.full) best = *single->booked;
    }
    return best;
  }

  bool take(const Order& order, Season season) {
    if (!best_.jobs.empty() && !(season.value < best_.value)) return false;
    order_ = order;
    best_ = std::move(season);
    return true;
  }

  [[nodiscard]] Order by_need() const {
    Order order = order_;
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
      const Value& x = best_.jobs[a]->value;
      const Value& y = best_.jobs[b]->value;
      return std::tuple(x.unbooked, x.late) > std::tuple(y.unbooked, y.late);
    });
    return order;
  }

  // Every earlier place, the nearest first, in steps that double where the order is long.
  bool move_forward(std::size_t job) {
    const auto place = static_cast<std::size_t>(std::ranges::find(order_, job) - order_.begin());
    for (std::size_t step = 1; step <= place && !spent(); step = step < 4 ? step + 1 : step * 2) {
      Order order = order_;
      const auto from = order.begin() + static_cast<std::ptrdiff_t>(place - step);
      std::rotate(from,
                  order.begin() + static_cast<std::ptrdiff_t>(place),
                  order.begin() + static_cast<std::ptrdiff_t>(place) + 1);
      if (take(order, insert_all(singles_, order))) return true;
    }
    return false;
  }

  Singles& singles_;
  const Problem& p_;
  std::size_t last_;
  Order order_;
  Season best_;
};

}  // namespace

Season insert_all(Singles& singles, const Order& order, const Order& crews) {
  const Problem& p = singles.problem();
  const auto nobody = std::make_shared<const Single>(Single{{1, 0, 0, 0}, std::nullopt});
  Season season{std::vector<SinglePtr>(p.jobs.size(), nobody), {}};
  std::vector<Diary> diaries(p.crews);
  for (const std::size_t job : order) {
    SinglePtr& best = season.jobs[job];
    for (std::size_t c = 0; c < p.crews; ++c) {
      const auto& candidate = p.jobs[job].by_crew[c];
      if (!candidate || (!crews.empty() && crews[job] != c)) continue;
      SinglePtr single = singles.best(job, c, windows_for(p, job, *candidate, diaries[c]));
      if (single->value < best->value) best = std::move(single);
    }
    if (best->booked) enter(diaries[best->booked->crew], job, *best->booked);
    season.value = season.value + best->value;
  }
  return season;
}

Season best_by_insertion(Singles& singles, std::size_t most) {
  return Improver(singles, most).run();
}

}  // namespace basinwright::season
