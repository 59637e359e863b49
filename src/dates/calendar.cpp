#include "basinwright/dates/calendar.hpp"

#include <algorithm>

namespace basinwright::dates {
namespace {

constexpr int minutes_in_quarter = 15;

// Slots within the hours of their day; the hours of a day are asked for once.
template <class HoursOf>
std::vector<char> slots_within(const Timeline& timeline, HoursOf hours_of) {
  std::vector<char> result(static_cast<std::size_t>(timeline.size()), 0);
  std::int64_t from = 0;
  std::int64_t to = 0;
  std::int64_t midnight = 0;
  for (std::int32_t s = 0; s < timeline.size(); ++s) {
    const Moment now = timeline.moment(s);
    if (s == 0 || now.quarters() < midnight || now.quarters() >= midnight + quarters_per_day) {
      const Date day = now.date();
      const Hours hours = hours_of(day);
      midnight = Moment(day, 0).quarters();
      from = midnight + hours.from;
      to = midnight + hours.to;
    }
    result[static_cast<std::size_t>(s)] = now.quarters() >= from && now.quarters() < to ? 1 : 0;
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
    moments_.push_back(clock);
    days_.push_back(day_of(clock));
    clock = Moment::of_quarters(clock.quarters() + 1);
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
