#include "after_fill.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "quarters.hpp"

namespace basinwright::sequence {
namespace {

dates::Date day_from(dates::Moment moment) {
  return moment.date() + std::chrono::days{moment.quarter() > 0 ? 1 : 0};
}

dates::Moment later(dates::Moment moment, int quarters) {
  return dates::Moment::of_quarters(moment.quarters() + quarters);
}

dates::Date working_day_from(const dates::WorkCalendar& calendar, dates::Date day) {
  while (!calendar.works_on(day)) day += std::chrono::days{1};
  return day;
}

// One addition a working day once the quiet time is over; nobody swims before the last is mixed.
void balance_the_water(const ProgrammeQuestion& q, Booking& start_up, Programme& programme) {
  dates::Date day = programme.quiet_until;
  for (int visit = 0; visit < q.water_visits; ++visit)
    day = working_day_from(q.calendar, day) + std::chrono::days{1};
  if (day <= programme.first_swim) return;
  programme.first_swim = day;
  start_up.end = dates::Moment(day, 0);
}

Booking start_up_of(const ProgrammeQuestion& q, dates::Moment full, Programme& programme) {
  const auto wait = std::max(q.waits.start_up.value, q.system.quiet_start.value);
  Booking start_up{"start-up", "", full, later(full, quarters_up(wait)), 0, {}, {}};
  start_up.held_by.push_back({Held::By::task, "fill", {}});
  programme.first_swim = day_from(start_up.end);
  programme.quiet_until = day_from(later(full, quarters_up(q.system.quiet_start.value)));
  if (q.water_visits > 0) balance_the_water(q, start_up, programme);
  settle(q, start_up);
  if (start_up.done && !start_up.going_on) programme.first_swim = start_up.end.date();
  return start_up;
}

Booking handover_of(const ProgrammeQuestion& q, const Programme& programme) {
  const dates::Date day = working_day_from(q.calendar, programme.first_swim);
  const auto work = std::ranges::find(q.work, "handover", &Work::task);
  const int quarters = work == q.work.end() ? 4 : std::max(1, quarters_up(work->person_hours));
  const dates::Moment start(day, q.calendar.hours.from);
  Booking handover{"handover", "", start, later(start, quarters), 1, {{day, quarters}}, {}};
  handover.held_by.push_back({Held::By::task, "start-up", {}});
  settle(q, handover);
  return handover;
}

}  // namespace

void settle(const ProgrammeQuestion& q, Booking& booking) {
  if (!q.past) return;
  const auto done = std::ranges::find(q.past->done, booking.task, &Done::task);
  if (done == q.past->done.end()) return;
  booking.done = true;
  booking.going_on = done->running;
  booking.start = done->start;
  if (!done->running) booking.end = std::max(done->start, done->end);
  booking.held_by.clear();
}

void add_after_fill(const ProgrammeQuestion& q, Programme& programme) {
  Booking& fill = *std::ranges::find(programme.bookings, "fill", &Booking::task);
  fill.end = later(fill.start, std::max(1, quarters_up(q.water / q.tap)));
  settle(q, fill);
  programme.fill_start = fill.start;
  programme.refill_done = fill.end;
  programme.bookings.push_back(start_up_of(q, programme.refill_done, programme));
  programme.bookings.push_back(handover_of(q, programme));
}

void put_in_order(Programme& programme) {
  if (!std::ranges::is_sorted(programme.bookings, {}, &Booking::start))
    std::ranges::stable_sort(programme.bookings, {}, &Booking::start);
  std::vector<dates::Date> days;
  days.reserve(2 * programme.bookings.size());
  for (const Booking& b : programme.bookings) {
    for (const Worked& w : b.worked) days.push_back(w.date);
  }
  std::ranges::sort(days);
  programme.days_on_site = static_cast<int>(std::unique(days.begin(), days.end()) - days.begin());
  if (!programme.bookings.empty()) programme.start = programme.bookings.front().start;
}

}  // namespace basinwright::sequence
