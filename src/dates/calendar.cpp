#include "basinwright/dates/calendar.hpp"

#include <algorithm>

namespace basinwright::dates {
namespace {

constexpr int minutes_in_quarter = 15;

// Slots within the hours of their day; the hours of a day are asked for once.
template <class HoursOf>
std::vector<char> slots_within(const Timeline& timeline, HoursOf hours_of) {
  std::vector<char> result(static_cast<std::size_t>(timeline.size()), 0);
  const auto of_day = [&](std::int32_t from, std::int32_t to) {
    const Date day = timeline.date(from);
    const Hours hours = hours_of(day);
    const auto first = timeline.moment(from).quarters() - Moment(day, 0).quarters();
    const auto last = timeline.moment(to - 1).quarters() - Moment(day, 0).quarters();
    if (last - first == to - 1 - from) {  // the clock does not jump
      const std::int64_t open = std::clamp<std::int64_t>(hours.from - first, 0, to - from);
      const std::int64_t close = std::clamp<std::int64_t>(hours.to - first, open, to - from);
      std::fill(result.begin() + from + open, result.begin() + from + close, char{1});
      return;
    }
    for (std::int32_t s = from; s < to; ++s) {
      const std::int64_t quarter = timeline.moment(s).quarters() - Moment(day, 0).quarters();
      result[static_cast<std::size_t>(s)] = quarter >= hours.from && quarter < hours.to ? 1 : 0;
    }
  };
  const std::vector<std::int32_t>& days = timeline.days();
  for (auto from = days.begin(); from != days.end();) {
    const auto to = std::upper_bound(from, days.end(), *from);
    of_day(static_cast<std::int32_t>(from - days.begin()),
           static_cast<std::int32_t>(to - days.begin()));
    from = to;
  }
  return result;
}

}  // namespace

bool WorkCalendar::works_on(Date day) const {
  return working[weekday(day)] && std::ranges::find(closed, day) == closed.end();
}

Hours WorkCalendar::painting_hours(Date day) const {
  return painting_by_month[month(day) - 1].value_or(painting);
}

Timeline::Timeline(Date start, int days, std::span<const ClockChange> changes) {
  std::vector<ClockChange> ahead(changes.begin(), changes.end());
  std::ranges::stable_sort(ahead, {}, &ClockChange::at);
  auto next = ahead.begin();
  Moment clock(start, 0);
  const Moment stop(start + std::chrono::days{days}, 0);
  while (next != ahead.end() && next->at < clock) ++next;
  moments_.reserve(static_cast<std::size_t>(days * quarters_per_day));
  days_.reserve(moments_.capacity());
  const std::int64_t first = clock.quarters();
  const auto day_of = [first](Moment moment) {
    const std::int64_t since = moment.quarters() - first;
    // A jump back over the first midnight shows the day before.
    return static_cast<std::int32_t>((since < 0 ? since + 1 - quarters_per_day : since) /
                                     quarters_per_day);
  };
  while (clock < stop) {
    // A jump is taken once: in autumn the clock shows its hour a second time.
    if (next != ahead.end() && clock >= next->at) {
      clock = Moment::of_quarters(clock.quarters() + next->minutes / minutes_in_quarter);
      ++next;
      continue;
    }
    // Up to midnight, a jump or the end the clock runs and the day stays.
    const std::int32_t day = day_of(clock);
    std::int64_t until = std::min(first + (day + 1) * quarters_per_day, stop.quarters());
    if (next != ahead.end()) until = std::min(until, next->at.quarters());
    const std::size_t before = days_.size();
    days_.resize(before + static_cast<std::size_t>(until - clock.quarters()), day);
    moments_.resize(days_.size());
    for (std::size_t s = before; s < moments_.size(); ++s)
      moments_[s] = Moment::of_quarters(clock.quarters() + static_cast<std::int64_t>(s - before));
    clock = Moment::of_quarters(until);
  }
  end_ = clock;
  end_day_ = day_of(clock);
}

Moment Timeline::moment(std::int32_t s) const {
  return s >= size() ? end_ : moments_[static_cast<std::size_t>(s)];
}

std::int32_t Timeline::slot(Moment when) const {
  const auto it = std::ranges::find_if(moments_, [&](Moment m) { return m >= when; });
  return static_cast<std::int32_t>(it - moments_.begin());
}

std::vector<char> work_slots(const Timeline& timeline, const WorkCalendar& calendar, int clean_up) {
  return slots_within(timeline, [&](Date day) {
    if (!calendar.works_on(day)) return Hours();
    return Hours{calendar.hours.from, calendar.hours.to - clean_up};
  });
}

std::vector<char> painting_slots(const Timeline& timeline,
                                 const WorkCalendar& calendar,
                                 int ready) {
  std::vector<Hours> by_day;
  const std::int32_t days = timeline.size() == 0 ? 0 : timeline.day(timeline.size() - 1) + 1;
  for (std::int32_t day = 0; day < days; ++day) {
    by_day.push_back(calendar.painting_hours(timeline.date(0) + std::chrono::days{day}));
  }
  return painting_slots(timeline, calendar, ready, by_day);
}

std::vector<char> painting_slots(const Timeline& timeline,
                                 const WorkCalendar& calendar,
                                 int ready,
                                 std::span<const Hours> by_day) {
  return slots_within(timeline, [&](Date day) {
    if (!calendar.works_on(day)) return Hours();
    const Hours hours = by_day[static_cast<std::size_t>((day - timeline.date(0)).count())];
    // First light before the crew's hours: they come with it and get ready first.
    const int come = std::min(hours.from, calendar.hours.from);
    const int from = std::max(hours.from, come + ready);
    return Hours{from, hours.to};
  });
}

}  // namespace basinwright::dates
