#include "finish_search.hpp"

#include <algorithm>

#include "endings.hpp"

namespace basinwright::schedule {
namespace {

// The finishes in question, ascending.
std::vector<Slot> all_finishes(const Problem& problem) {
  std::vector<Slot> finishes;
  for (const auto& finish : problem.finish) {
    if (finish && (finishes.empty() || finishes.back() != finish->slot)) {
      finishes.push_back(finish->slot);
    }
  }
  if (!std::is_sorted(finishes.begin(), finishes.end())) {
    std::sort(finishes.begin(), finishes.end());
  }
  finishes.erase(std::unique(finishes.begin(), finishes.end()), finishes.end());
  return finishes;
}

class FinishSearch {
 public:
  FinishSearch(const Problem& problem,
               const Standing& standing,
               const std::vector<Slot>& best_finish,
               std::unique_ptr<Look> look)
      : problem_(problem), standing_(standing), best_finish_(best_finish), look_(std::move(look)) {}

  EarliestFinish run() {
    if (!found()) found_.reset();
    return {found_, std::move(look_)};
  }

 private:
  bool found() {
    const Slot least = least_finish();
    if (least == never) {
      return false;
    }
    const Reply reply = ask(least);
    if (reply == Reply::found) {
      return true;
    }
    finishes_ = all_finishes(problem_);
    const Slot open = reply == Reply::refused ? least + 1 : least;
    effort_ *= reply == Reply::too_much ? 2 : 1;
    const auto first = std::lower_bound(finishes_.begin(), finishes_.end(), open);
    low_ = static_cast<std::size_t>(first - finishes_.begin());
    high_ = finishes_.size();
    while (low_ < finishes_.size()) {
      const std::size_t place = next_place();
      switch (ask(finishes_[place])) {
        case Reply::found:
          return true;
        case Reply::refused:
          low_ = place + 1;
          high_ = finishes_.size();  // there is more effort now
          break;
        case Reply::too_much:
          high_ = place;
          effort_ *= 2;
          break;
      }
      if (low_ > high_) {
        high_ = finishes_.size();
        step_ = 1;
      }
    }
    return false;
  }

  [[nodiscard]] Slot first_look() const {
    if (problem_.likely_finish) {
      return std::max(standing_.clock + 1, last_end(best_finish_, *problem_.likely_finish));
    }
    constexpr Slot two_weeks = 1344;
    // Where weather keeps work waiting, two weeks are seldom enough.
    return standing_.clock + (problem_.wet.empty() ? two_weeks : 2 * two_weeks);
  }

  // By every section alone; looks at twice as many slots while a later end might still come first.
  Slot least_finish() {
    Slot length = std::min(problem_.horizon, first_look());
    while (true) {
      if (look_ && look_->setting.length >= length) {
        length = look_->setting.length;
      } else {
        look_ = std::make_unique<Look>(problem_, standing_, length, best_finish_);
      }
      const Slot least = look_->starts.least_finish();
      const Slot needed = least < never ? last_end(best_finish_, least) : problem_.horizon;
      if (needed <= length) {
        return least;
      }
      // A rest that is short beside what was looked at is not worth a look of its own.
      const Slot longer = 8 * length / 3 >= problem_.horizon ? problem_.horizon : 2 * length;
      length = least < never ? needed : longer;
    }
  }

  enum class Reply { found, refused, too_much };

  // Ever further ahead, and half way back from where there was too much to look at.
  std::size_t next_place() {
    if (high_ < finishes_.size()) {
      return low_ + (high_ - low_) / 2;
    }
    const std::size_t place = std::min(finishes_.size() - 1, low_ + step_ - 1);
    step_ *= 16;
    return place;
  }

  // Is there a finish no later than `latest`? The least one is then in `found_`.
  Reply ask(Slot latest) {
    const Slot needed = last_end(best_finish_, latest);
    if (needed > look_->setting.length) {
      const Slot length = std::max(needed, 2 * look_->setting.length);
      look_ = std::make_unique<Look>(
          problem_, standing_, std::min(problem_.horizon, length), best_finish_);
    }
    look_->starts.limit(latest);
    Endings suffixes(look_->setting, look_->starts, look_->reach, {latest, false});
    if (!suffixes.run(effort_)) {
      return Reply::too_much;
    }
    for (const Painting& painting : suffixes.paintings()) {
      const auto slot = static_cast<Slot>(painting.tally.cost);
      if (follows_chain(painting) && slot <= found_.value_or(latest)) {
        found_ = slot;
      }
    }
    effort_ = std::max(effort_, 4 * suffixes.labels());
    return found_ ? Reply::found : Reply::refused;
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
  std::unique_ptr<Look> look_;
  std::vector<Slot> finishes_;
  std::size_t low_ = 0;   // all before are refused
  std::size_t high_ = 0;  // here was too much to look at, if it is one of them
  std::size_t step_ = 1;
  std::size_t effort_ = 1000;  // labels
  std::optional<Slot> found_;
};

}  // namespace

std::vector<Slot> best_finishes(const Problem& problem) {
  std::vector<Slot> best(at(problem.horizon) + 2, never);
  Slot least = never;
  for (std::size_t end = std::min(problem.finish.size(), at(problem.horizon) + 1); end-- > 0;) {
    const std::optional<Finish>& here = problem.finish[end];
    if (here && here->slot < least) least = here->slot;
    best[end] = least;
  }
  return best;
}

Slot last_end(const std::vector<Slot>& best_finish, Slot finish) {
  const auto after = std::partition_point(
      best_finish.begin(), best_finish.end(), [&](Slot slot) { return slot <= finish; });
  return static_cast<Slot>(after - best_finish.begin()) - 1;
}

EarliestFinish earliest_finish(const Problem& problem,
                               const Standing& standing,
                               const std::vector<Slot>& best_finish,
                               std::unique_ptr<Look> look) {
  return FinishSearch(problem, standing, best_finish, std::move(look)).run();
}

}  // namespace basinwright::schedule
