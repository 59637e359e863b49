#include "goals.hpp"

#include <algorithm>

namespace basinwright::schedule {

Goals::Goals(const Setting& setting, const std::vector<Painting>& paintings, Slot earliest_end)
    : setting_(setting) {
  for (const Painting& painting : paintings) {
    anchors_.push_back(painting.anchor_from);
  }
  std::sort(anchors_.begin(), anchors_.end());
  anchors_.erase(std::unique(anchors_.begin(), anchors_.end()), anchors_.end());
  const Table empty(anchors_.size() + 1, std::vector<Onward>(at(setting.length) + 1));
  const bool recleaned = setting.may_reclean();
  if (recleaned || !setting.standing.links.empty()) {
    painted_ = empty;
    for (const Painting& painting : paintings) {
      add(painted_, painting);
    }
    spread(painted_);
    onward_ = painted_;
  }
  if (setting.standing.links.empty()) {
    // The chain's end is behind; all that counts is whether it is dry by then, and the clock.
    onward_ = empty;
    for (Painting painting : paintings) {
      if (painting.wet_until >= setting.standing.wet) {
        painting.wet_until = painting.start;
        add(onward_, painting);
      }
    }
    spread(onward_);
  }
  if (recleaned) {
    reclean(earliest_end);
  }
}

std::size_t Goals::class_of(Slot anchor) const {
  return static_cast<std::size_t>(
      std::upper_bound(anchors_.begin(), anchors_.end(), std::max<Slot>(anchor, 0)) -
      anchors_.begin());
}

// At the latest end it can follow; `spread` takes it to the earlier ones.
void Goals::add(Table& table, const Painting& painting) {
  if (painting.wet_until < 0) {
    return;
  }
  const std::int32_t date = setting_.date(painting.start);
  Slot last = painting.wet_until;  // the last end whose last slot is on that date
  while (last > 0 && setting_.date(last - 1) > date) {
    --last;
  }
  for (std::size_t one = class_of(painting.anchor_from); one < table.size(); ++one) {
    Onward& latest = table[one][at(painting.wet_until)];
    latest.any = std::min(latest.any, painting.tally);
    if (last > 0 && setting_.date(last - 1) == date) {
      Onward& same = table[one][at(last)];
      same.same_date = std::min(same.same_date, painting.tally);
    }
  }
}

void Goals::spread(Table& table) const {
  for (std::vector<Onward>& onward : table) {
    for (Slot end = setting_.length - 1; end >= 0; --end) {
      Onward& here = onward[at(end)];
      const Onward& later = onward[at(end + 1)];
      here.any = std::min(here.any, later.any);
      if (end > 0 && setting_.date(end - 1) == setting_.date(end)) {
        here.same_date = std::min(here.same_date, later.same_date);
      }
    }
  }
}

// A reclean is as an anchor and a chain's end of its own.
void Goals::reclean(Slot earliest_end) {
  const Reclean& rule = *setting_.problem.anchor.reclean;
  const Openings& openings = setting_.calendars[rule.calendar];
  for (Slot start = openings.next(earliest_end); start < setting_.length;
       start = openings.next(start + 1)) {
    const Stretch stretch = openings.resumed(start, rule.slots);
    if (!stretch.possible()) {
      break;
    }
    const Tally rest = after_reclean(stretch.end);
    if (rest < no_tally) {
      const std::int64_t cost = stretch.labour + setting_.problem.attendance * stretch.dates;
      add(onward_, {start, start, 0, rest + Tally{0, 1, cost}});
    }
  }
  spread(onward_);
}

}  // namespace basinwright::schedule
