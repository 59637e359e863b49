#include "basinwright/dates/calendar.hpp"

#include <algorithm>

namespace basinwright::dates {
namespace {

constexpr int minutes_in_quarter = 15;

template <class Open>
std::vector<char> slots_where(const Timeline& timeline, Open open) {
  std::vector<char> result(static_cast<std::size_t>(timeline.size()), 0);
  for (std::int32_t s = 0; s < timeline.size(); ++s) {
    const Moment now = timeline.moment(s);
    result[static_cast<std::size_t>(s)] = open(now.date(), now.quarter()) ? 1 : 0;
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

Timeline::Timeline(Date start, int days, std::span<const ClockChange> changes) : start_(start) {
  std::vector<ClockChange> ahead(changes.begin(), changes.end());
  std::ranges::stable_sort(ahead, {}, &ClockChange::at);
  auto next = ahead.begin();
  Moment clock(start, 0);
  const Moment stop(start + std::chrono::days{days}, 0);
  while (next != ahead.end() && next->at < clock) ++next;
  while (clock < stop) {
    // A jump is taken once: in autumn the clock shows its hour a second time.
    if (next != ahead.end() && clock >= next->at) {
      clock = Moment::of_quarters(clock.quarters() + next->minutes / minutes_in_quarter);
      ++next;
      continue;
    }
    moments_.push_back(clock);
    clock = Moment::of_quarters(clock.quarters() + 1);
  }
  end_ = clock;
}

Moment Timeline::moment(std::int32_t s) const {
  return s >= size() ? end_ : moments_[static_cast<std::size_t>(s)];
}

std::int32_t Timeline::day(std::int32_t s) const {
  return static_cast<std::int32_t>((moment(s).date() - start_).count());
}

std::int32_t Timeline::slot(Moment when) const {
  const auto it = std::ranges::find_if(moments_, [&](Moment m) { return m >= when; });
  return static_cast<std::int32_t>(it - moments_.begin());
}

std::vector<char> work_slots(const Timeline& timeline, const WorkCalendar& calendar, int clean_up) {
  return slots_where(timeline, [&](Date day, int quarter) {
    return quarter >= calendar.hours.from && quarter < calendar.hours.to - clean_up &&
           calendar.works_on(day);
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
  return slots_where(timeline, [&](Date day, int quarter) {
    const Hours hours = by_day[static_cast<std::size_t>((day - timeline.date(0)).count())];
    // First light before the crew's hours: they come with it and get ready first.
    const int come = std::min(hours.from, calendar.hours.from);
    const int from = std::max(hours.from, come + ready);
    return quarter >= from && quarter < hours.to && calendar.works_on(day);
  });
}

}  // namespace basinwright::dates
