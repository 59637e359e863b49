#include "basinwright/quote/labour.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "basinwright/units/unit.hpp"

namespace basinwright::quote {
namespace {

using units::Duration;

// Microseconds keep the product exact and are far below a minor unit of any wage.
money::Money wage(Duration time, const money::Money& hour, money::Rounding rounding) {
  constexpr std::int64_t microseconds_in_hour = 3'600'000'000;
  const double microseconds = time.in(units::hours) * static_cast<double>(microseconds_in_hour);
  return money::scaled(hour, std::llround(microseconds), microseconds_in_hour, rounding);
}

LabourLine& line_for(std::vector<LabourLine>& lines, const std::string& task) {
  const auto it = std::ranges::find(lines, task, &LabourLine::task);
  if (it != lines.end()) return *it;
  return lines.emplace_back(LabourLine{task, {}, {}, {}});
}

// Quarters of a stretch inside one day that lie before the crew's hours or after them; only
// painting from first light leaves them, and it ends on the day it begins.
int quarters_outside(const sequence::Booking& booking, dates::Hours hours) {
  if (booking.worked.size() != 1 || booking.start.date() != booking.end.date()) return 0;
  const int from = booking.start.quarter();
  const int to = booking.end.quarter();
  return std::max(0, std::min(to, hours.from) - from) + std::max(0, to - std::max(from, hours.to));
}

// Time that costs more than the plain wage, and by what share.
struct Dearer {
  std::int64_t over = 0;  ///< Millionths above the wage, above 0.
  std::int64_t person_seconds = 0;
};

struct PremiumQuestion {
  const sequence::Programme& programme;
  const Labour& wages;
  dates::Hours hours;
  Duration set_up;  ///< Of the whole crew on each day on site.
};

std::vector<Dearer> dearer_times(const PremiumQuestion& q) {
  constexpr std::int64_t seconds_in_quarter = 900;
  std::vector<Dearer> all;
  const auto add = [&](std::int64_t over, std::int64_t person_seconds) {
    if (over > 0) all.push_back({over, person_seconds});
  };
  std::vector<dates::Date> days;
  days.reserve(2 * q.programme.bookings.size());
  const auto of_day = [&](dates::Date day) {
    return q.wages.weekday[dates::weekday(day)].millionths - money::whole;
  };
  for (const sequence::Booking& booking : q.programme.bookings) {
    const int outside = quarters_outside(booking, q.hours);
    for (const sequence::Worked& day : booking.worked) {
      const std::int64_t over = of_day(day.date);
      const std::int64_t early = std::max(over, q.wages.outside_hours.millionths - money::whole);
      const std::int64_t each = seconds_in_quarter * booking.people;
      add(over, (day.quarters - outside) * each);
      add(early, outside * each);
      days.push_back(day.date);
    }
  }
  std::ranges::sort(days);
  days.erase(std::unique(days.begin(), days.end()), days.end());
  for (const dates::Date day : days) add(of_day(day), std::llround(q.set_up.in(units::seconds)));
  return all;
}

// One line, rounded once, in whole numbers.
money::Money premium(const PremiumQuestion& q, money::Rounding rounding) {
  constexpr std::int64_t seconds_in_hour = 3600;
  std::int64_t weighted = 0;
  for (const Dearer& one : dearer_times(q)) weighted += one.over * one.person_seconds;
  return money::scaled(q.wages.hour, weighted, money::whole * seconds_in_hour, rounding);
}

}  // namespace

std::vector<LabourLine> labour(const std::vector<sequence::Work>& work,
                               const sequence::Programme& programme,
                               Duration daily_set_up,
                               const Labour& wages,
                               dates::Hours hours,
                               money::Rounding rounding) {
  std::vector<LabourLine> lines;
  lines.reserve(work.size() + 2);  // set-up and premium
  int people = 0;
  for (const sequence::Work& w : work) {
    if (w.person_hours <= Duration()) continue;
    LabourLine& line = line_for(lines, w.task);
    line.person_hours += w.person_hours;
    line.crew_hours += w.person_hours / std::max(1, w.people);
    people = std::max(people, w.people);
  }
  if (programme.days_on_site > 0) {
    LabourLine& line = line_for(lines, "set-up and clean-up");
    line.crew_hours = daily_set_up * programme.days_on_site;
    line.person_hours = line.crew_hours * people;
  }
  for (LabourLine& line : lines) line.total = wage(line.person_hours, wages.hour, rounding);
  const Duration set_up = programme.days_on_site > 0 ? daily_set_up * people : Duration();
  const money::Money over = premium({programme, wages, hours, set_up}, rounding);
  if (over != money::Money()) lines.push_back({"overtime premium", {}, {}, over});
  return lines;
}

}  // namespace basinwright::quote
