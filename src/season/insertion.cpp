#include "insertion.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

#include "diary.hpp"
#include "late_start.hpp"
#include "rebooking.hpp"

namespace basinwright::season {
namespace {

class Improver {
 public:
  Improver(Singles& singles, std::size_t most)
      : singles_(singles), p_(singles.problem()), last_(singles.solved() + most) {}

  Season run() {
    start();
    // The later a job is against its promise, the sooner it is tried in an earlier place.
    bool better = true;
    while (better && !spent()) {
      better = rebook_begun_late();
      for (const std::size_t job : by_need()) {
        if (better || spent()) break;
        better = move_forward(job);
      }
    }
    return rebooked(singles_, begun_late(singles_, best_), last_);
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

  // Jobs that begin late leave early hours to others: all are booked again in the order in which
  // they would begin as late as they may, or end.
  bool rebook_begun_late() {
    const Season late = begun_late(singles_, best_);
    const auto in_order_of = [&](auto key) {
      Order order = order_;
      std::ranges::stable_sort(order, {}, [&](std::size_t j) {
        const auto& booked = late.jobs[j]->booked;
        return booked ? key(*booked) : std::numeric_limits<std::int32_t>::max();
      });
      return order;
    };
    for (const Order& order : {in_order_of([](const Booked& b) { return b.at.front().date; }),
                               in_order_of([](const Booked& b) { return b.full; })}) {
      if (!spent() && take(order, insert_all(singles_, order))) return true;
    }
    return false;
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

SinglePtr best_beside(Singles& singles,
                      std::size_t job,
                      std::vector<Diary>& diaries,
                      std::optional<std::size_t> only) {
  const Problem& p = singles.problem();
  auto best = std::make_shared<const Single>(Single{{1, 0, 0, 0}, std::nullopt});
  for (std::size_t c = 0; c < p.crews; ++c) {
    const auto& candidate = p.jobs[job].by_crew[c];
    if (!candidate || (only && *only != c)) continue;
    SinglePtr single = singles.best(job, c, windows_for(p, job, *candidate, diaries[c]));
    if (single->value < best->value) best = std::move(single);
  }
  if (best->booked) enter(diaries[best->booked->crew], job, *best->booked);
  return best;
}

Season insert_all(Singles& singles, const Order& order, const Order& crews) {
  const Problem& p = singles.problem();
  Season season{std::vector<SinglePtr>(p.jobs.size()), {}};
  std::vector<Diary> diaries(p.crews);
  for (const std::size_t job : order) {
    season.jobs[job] = best_beside(
        singles, job, diaries, crews.empty() ? std::nullopt : std::optional(crews[job]));
    season.value = season.value + season.jobs[job]->value;
  }
  return season;
}

Season best_by_insertion(Singles& singles, std::size_t most) {
  return Improver(singles, most).run();
}

}  // namespace basinwright::season
