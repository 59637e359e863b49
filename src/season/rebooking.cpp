#include "rebooking.hpp"

#include <algorithm>
#include <cstdlib>
#include <random>
#include <utility>

#include "diary.hpp"

namespace basinwright::season {
namespace {

class Rebooking {
 public:
  Rebooking(Singles& singles, Season season, std::size_t last)
      : singles_(singles),
        p_(singles.problem()),
        season_(season),
        best_(std::move(season)),
        last_(last) {}

  Season run() {
    constexpr std::size_t tries_a_job = 60;
    const std::size_t tries = tries_a_job * p_.jobs.size();
    for (std::size_t i = 0; i < tries && p_.jobs.size() > 1 && singles_.solved() < last_; ++i) {
      Season again = without_and_again(some());
      if (worth(season_) < worth(again)) continue;
      if (worth(again) < worth(best_)) best_ = again;
      season_ = std::move(again);
    }
    return std::move(best_);
  }

 private:
  // Of seasons that are equally good the one in which the crews go to fewer places.
  static std::pair<Value, std::size_t> worth(const Season& season) {
    std::size_t visits = 0;
    for (const SinglePtr& job : season.jobs) visits += job->booked ? job->booked->at.size() : 0;
    return {season.value, visits};
  }

  std::size_t below(std::size_t end) { return static_cast<std::size_t>(row_()) % end; }

  [[nodiscard]] std::int32_t when(std::size_t job) const {
    const auto& booked = season_.jobs[job]->booked;
    return booked ? booked->at.front().date : 0;
  }

  // A job, and some of those next to it in time, in any order.
  Order some() {
    constexpr std::size_t most = 5;
    const std::size_t n = p_.jobs.size();
    const std::size_t first = below(n);
    Order near;
    for (std::size_t j = 0; j < n; ++j) {
      if (j != first) near.push_back(j);
    }
    std::ranges::stable_sort(
        near, {}, [&](std::size_t j) { return std::abs(when(j) - when(first)); });
    const std::size_t wanted = std::min(n, 2 + below(most - 1));
    Order chosen{first};
    while (chosen.size() < wanted && !near.empty()) {
      const std::size_t at_most = std::min(near.size(), 2 * most);
      const auto next = near.begin() + static_cast<std::ptrdiff_t>(below(at_most));
      chosen.push_back(*next);
      near.erase(next);
    }
    for (std::size_t i = chosen.size(); i > 1; --i) std::swap(chosen[i - 1], chosen[below(i)]);
    return chosen;
  }

  [[nodiscard]] Season without_and_again(const Order& jobs) {
    Season again = season_;
    std::vector<Diary> diaries(p_.crews);
    for (std::size_t j = 0; j < again.jobs.size(); ++j) {
      if (std::ranges::find(jobs, j) != jobs.end()) {
        again.value = again.value - again.jobs[j]->value;
      } else if (const auto& booked = again.jobs[j]->booked) {
        enter(diaries[booked->crew], j, *booked);
      }
    }
    for (const std::size_t job : jobs) {
      again.jobs[job] = best_beside(singles_, job, diaries);
      again.value = again.value + again.jobs[job]->value;
    }
    return again;
  }

  Singles& singles_;
  const Problem& p_;
  Season season_;  ///< Walks among seasons that are equally good.
  Season best_;    ///< The first of the best.
  std::size_t last_;
  std::minstd_rand row_;  // the standard fixes its numbers
};

}  // namespace

Season rebooked(Singles& singles, Season season, std::size_t last) {
  return Rebooking(singles, std::move(season), last).run();
}

}  // namespace basinwright::season
