// The cheapest ways to go on within a window of starts.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "goals.hpp"
#include "window_best.hpp"

namespace basinwright::schedule {

/// What going on costs, by way; starts ascend.
struct Continuations {
  const Stretch* ways;
  std::span<const Onward> prices;
};

/// The best of all continuations that start in a window whose ends only move forward.
class ChainWindow {
 public:
  ChainWindow(const Setting& setting, Continuations after) : setting_(setting), after_(after) {}

  /// Those that start in `starts`; on the same date, only those on `last_date`, no start is before.
  [[nodiscard]] Onward best(Reach starts, std::int32_t last_date) {
    for (; entered_ < after_.prices.size() && after_.ways[entered_].start <= starts.until;
         ++entered_) {
      const Tally& here = after_.prices[entered_].any;
      if (here < no_tally) any_.enter(after_.ways[entered_].start, here);
    }
    for (; same_entered_ < entered_ && date(same_entered_) <= last_date; ++same_entered_) {
      const Tally& here = after_.prices[same_entered_].same_date;
      if (here < no_tally) same_date_.enter(after_.ways[same_entered_].start, here);
    }
    any_.leave_before(starts.from);
    same_date_.leave_before(starts.from);
    return {any_.empty() ? no_tally : any_.best(),
            same_date_.empty() ? no_tally : same_date_.best()};
  }

 private:
  [[nodiscard]] std::int32_t date(std::size_t way) const {
    return setting_.date(after_.ways[way].start);
  }

  const Setting& setting_;
  Continuations after_;
  std::size_t entered_ = 0;
  std::size_t same_entered_ = 0;
  WindowBest<Tally, std::less<>> any_;
  WindowBest<Tally, std::less<>> same_date_;
};

}  // namespace basinwright::schedule
