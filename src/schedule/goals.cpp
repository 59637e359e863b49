#include "goals.hpp"

namespace basinwright::schedule {

Goals::Goals(const Setting& setting, const std::vector<Painting>& paintings, Slot earliest_end)
    : setting_(setting), earliest_end_(earliest_end) {
  for (const Painting& painting : paintings) {
    anchors_.push_back(painting.anchor_from);
  }
  std::sort(anchors_.begin(), anchors_.end());
  anchors_.erase(std::unique(anchors_.begin(), anchors_.end()), anchors_.end());
  if (setting.may_reclean() || !setting.standing.links.empty()) {
    painted_ = spread(paintings);
    by_class_ = painted_;
  }
  if (setting.standing.links.empty()) {
    // The chain's end is behind; all that counts is whether it is dry by then, and the clock.
    std::vector<Painting> open;
    for (Painting painting : paintings) {
      if (painting.wet_until >= setting.standing.wet) {
        painting.wet_until = painting.start;
        open.push_back(painting);
      }
    }
    by_class_ = spread(open);
  }
  if (setting.may_reclean()) {
    by_class_[0] = spread(recleaned(), earliest_end_);
  }
}

std::size_t Goals::class_of(Slot anchor) const {
  return static_cast<std::size_t>(
      std::upper_bound(anchors_.begin(), anchors_.end(), std::max<Slot>(anchor, 0)) -
      anchors_.begin());
}

Slot Goals::anchor_from(std::size_t anchor_class) const {
  return anchor_class == 0 ? 0 : anchors_[anchor_class - 1];
}

Slot Goals::anchor_until(std::size_t anchor_class) const {
  return anchor_class == anchors_.size() ? never : anchors_[anchor_class];
}

std::vector<Onwards> Goals::spread(const std::vector<Painting>& paintings) const {
  std::vector<Onwards> result(anchors_.size() + 1);
  for (std::size_t one = 1; one < result.size(); ++one) {
    const Slot anchor = anchors_[one - 1];
    std::vector<Painting> possible;
    for (const Painting& painting : paintings) {
      if (painting.anchor_from <= anchor && painting.wet_until >= anchor) {
        possible.push_back(painting);
      }
    }
    result[one] = spread(possible, std::max(anchor, earliest_end_));
  }
  return result;
}

// From the latest end that each can follow to all earlier ones.
Onwards Goals::spread(const std::vector<Painting>& paintings, Slot from) const {
  Onwards result{from, {}};
  for (const Painting& painting : paintings) {
    const std::size_t size = at(std::max<Slot>(0, painting.wet_until + 1 - from));
    result.slots.resize(std::max(result.slots.size(), size));
  }
  for (const Painting& painting : paintings) {
    const std::int32_t date = setting_.date(painting.start);
    Slot end = painting.wet_until;
    if (result.has(end)) {
      Tally& any = result.slots[at(end - from)].any;
      any = std::min(any, painting.tally);
    }
    while (end > from && setting_.date(end - 1) > date) {
      --end;  // to the last end whose last slot is on that date
    }
    if (result.has(end) && end > 0 && setting_.date(end - 1) == date) {
      Tally& same_date = result.slots[at(end - from)].same_date;
      same_date = std::min(same_date, painting.tally);
    }
  }
  for (Slot end = result.until() - 2; end >= from; --end) {
    Onward& here = result.slots[at(end - from)];
    const Onward& later = result.slots[at(end + 1 - from)];
    here.any = std::min(here.any, later.any);
    if (end > 0 && setting_.date(end - 1) == setting_.date(end)) {
      here.same_date = std::min(here.same_date, later.same_date);
    }
  }
  return result;
}

// A reclean is as an anchor and a chain's end of its own.
std::vector<Painting> Goals::recleaned() const {
  const Reclean& rule = *setting_.problem.anchor.reclean;
  const Openings& openings = setting_.calendars[rule.calendar];
  std::vector<Painting> result;
  for (Slot start = openings.next(earliest_end_); start < setting_.length;
       start = openings.next(start + 1)) {
    const Stretch stretch = openings.resumed(start, rule.slots);
    if (!stretch.possible()) {
      break;
    }
    const Tally rest = after_reclean(stretch.end);
    if (rest < no_tally) {
      const std::int64_t cost = stretch.labour + setting_.problem.attendance * stretch.dates;
      result.push_back({start, start, 0, rest + Tally{0, 1, cost}});
    }
  }
  return result;
}

}  // namespace basinwright::schedule
