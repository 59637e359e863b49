#include "finish_search.hpp"

#include <algorithm>

#include "suffixes.hpp"

namespace basinwright::schedule {
namespace {

// The finishes in question, ascending.
std::vector<Slot> all_finishes(const Problem& problem) {
  std::vector<Slot> finishes;
  for (const auto& finish : problem.finish) {
    if (finish) {
      finishes.push_back(finish->slot);
    }
  }
  std::sort(finishes.begin(), finishes.end());
  finishes.erase(std::unique(finishes.begin(), finishes.end()), finishes.end());
  return finishes;
}

class FinishSearch {
 public:
  FinishSearch(const Problem& problem,
               const Standing& standing,
               const std::vector<Slot>& best_finish)
      : problem_(problem), standing_(standing), best_finish_(best_finish) {}

  std::optional<Slot> run() {
    const Slot least = least_finish();
    const std::vector<Slot> finishes = all_finishes(problem_);
    const auto first = std::lower_bound(finishes.begin(), finishes.end(), least);
    auto place = static_cast<std::size_t>(first - finishes.begin());
    for (std::size_t step = 1; place < finishes.size(); step *= 2) {
      if (const auto found = ask(finishes[place])) {
        return found;
      }
      const bool last = place + 1 == finishes.size();
      place = last ? finishes.size() : std::min(finishes.size() - 1, place + step);
    }
    return std::nullopt;
  }

 private:
  // By every section alone; looks at twice as many slots while a later end might still come first.
  Slot least_finish() {
    constexpr Slot first_look = 2048;
    Slot length = std::min(problem_.horizon, standing_.clock + first_look);
    while (true) {
      look_.emplace(problem_, standing_, length, best_finish_);
      const Slot least = look_->starts.least_finish();
      const Slot needed = least < never ? last_end(best_finish_, least) : problem_.horizon;
      if (needed <= length) {
        return least;
      }
      length = least < never ? needed : std::min(problem_.horizon, 2 * length);
    }
  }

  std::optional<Slot> ask(Slot latest) {
    const Slot needed = last_end(best_finish_, latest);
    if (needed > look_->setting.length) {
      const Slot length = std::max(needed, 2 * look_->setting.length);
      look_.emplace(problem_, standing_, std::min(problem_.horizon, length), best_finish_);
    }
    look_->starts.limit(latest);
    Suffixes suffixes(look_->setting, look_->starts, look_->reach, {latest, false});
    suffixes.run();
    std::optional<Slot> finish;
    for (const Painting& painting : suffixes.paintings()) {
      const auto slot = static_cast<Slot>(painting.tally.cost);
      if (follows_chain(painting) && slot <= finish.value_or(latest)) {
        finish = slot;
      }
    }
    return finish;
  }

  bool follows_chain(const Painting& painting) const {
    if (painting.wet_until < 0) {
      return false;
    }
    const Slot anchor = look_->reach.latest_anchor[at(painting.wet_until)];
    return anchor != no_slot && anchor >= painting.anchor_from;
  }

  const Problem& problem_;
  const Standing& standing_;
  const std::vector<Slot>& best_finish_;
  std::optional<Look> look_;
};

}  // namespace

std::vector<Slot> best_finishes(const Problem& problem) {
  std::vector<Slot> best(at(problem.horizon) + 2, never);
  for (Slot end = problem.horizon; end >= 0; --end) {
    const bool given = at(end) < problem.finish.size() && problem.finish[at(end)];
    best[at(end)] = std::min(best[at(end) + 1], given ? problem.finish[at(end)]->slot : never);
  }
  return best;
}

Slot last_end(const std::vector<Slot>& best_finish, Slot finish) {
  const auto after = std::partition_point(
      best_finish.begin(), best_finish.end(), [&](Slot slot) { return slot <= finish; });
  return static_cast<Slot>(after - best_finish.begin()) - 1;
}

std::optional<Slot> earliest_finish(const Problem& problem,
                                    const Standing& standing,
                                    const std::vector<Slot>& best_finish) {
  return FinishSearch(problem, standing, best_finish).run();
}

}  // namespace basinwright::schedule
