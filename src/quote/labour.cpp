#include "basinwright/quote/labour.hpp"

#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"

namespace basinwright::quote {
namespace {

using units::Duration;

// Microseconds keep the product exact and are far below a minor unit of any wage.
money::Money wage(Duration time, const money::Money& hour) {
  constexpr std::int64_t microseconds_in_hour = 3'600'000'000;
  const double microseconds = time.in(units::hours) * static_cast<double>(microseconds_in_hour);
  return money::scaled(
      hour, std::llround(microseconds), microseconds_in_hour, money::Rounding::half_away);
}

LabourLine& line_for(std::vector<LabourLine>& lines, const std::string& task) {
  const auto it = std::ranges::find(lines, task, &LabourLine::task);
  if (it != lines.end()) return *it;
  return lines.emplace_back(LabourLine{task, {}, {}, {}});
}

// Work on a dearer day costs the share above the plain wage on top.
money::Money premium(const sequence::Programme& programme, const Labour& wages) {
  money::Money sum;
  for (const sequence::Booking& booking : programme.bookings) {
    for (const sequence::Worked& day : booking.worked) {
      const std::int64_t over = wages.weekday[dates::weekday(day.date)].millionths - money::whole;
      if (over <= 0) continue;
      const Duration time = units::minutes(15.0 * day.quarters * booking.people);
      sum += money::share(wage(time, wages.hour), {over}, money::Rounding::half_away);
    }
  }
  return sum;
}

}  // namespace

std::vector<LabourLine> labour(const std::vector<sequence::Work>& work,
                               const sequence::Programme& programme,
                               Duration daily_set_up,
                               const Labour& wages) {
  std::vector<LabourLine> lines;
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
  for (LabourLine& line : lines) line.total = wage(line.person_hours, wages.hour);
  const money::Money over = premium(programme, wages);
  if (over != money::Money()) lines.push_back({"overtime premium", {}, {}, over});
  return lines;
}

}  // namespace basinwright::quote
