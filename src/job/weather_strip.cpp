#include "basinwright/job/weather_strip.hpp"

#include <algorithm>

#include "site_weather.hpp"

namespace basinwright::job {
namespace {

std::vector<weather::State> hours_of(const weather::Conditions& conditions, dates::Date day) {
  constexpr int hours_a_day = 24;
  std::vector<weather::State> hours;
  hours.reserve(hours_a_day);
  const weather::HourNumber first = weather::hour_of(dates::Moment(day, 0));
  for (int h = 0; h < hours_a_day; ++h) hours.push_back(conditions.at(first + h));
  return hours;
}

}  // namespace

std::vector<StripDay> weather_strip(const Job& job,
                                    const RateBook& rates,
                                    const Plan& plan,
                                    const Circumstances& now) {
  const auto& bookings = plan.programme.bookings;
  if (!plan.programme.feasible || bookings.empty()) return {};
  const dates::Date first = bookings.front().start.date();
  dates::Date last = first;
  for (const sequence::Booking& b : bookings) last = std::max(last, b.end.date());
  return weather_strip(job, rates, now, first, last);
}

std::vector<StripDay> weather_strip(const Job& job,
                                    const RateBook& rates,
                                    const Circumstances& now,
                                    dates::Date first,
                                    dates::Date last) {
  std::vector<StripDay> days;
  const sequence::SiteWeather site = site_weather(job, rates, now);
  const weather::Record none;
  const weather::Conditions conditions(site.record == nullptr ? none : *site.record,
                                       site.rules.shell_lag);
  for (dates::Date day = first; day <= last; day += std::chrono::days{1}) {
    StripDay strip{.date = day, .works = job.calendar.works_on(day)};
    if (site.position && site.clock_offset)
      strip.sun = weather::sun(*site.position, day, *site.clock_offset);
    if (site.record != nullptr) strip.hours = hours_of(conditions, day);
    days.push_back(std::move(strip));
  }
  return days;
}

}  // namespace basinwright::job
