#include "basinwright/odds/years.hpp"

#include <chrono>

namespace basinwright::odds {
namespace {

using weather::HourNumber;

constexpr int hours_in_day = 24;

HourNumber midnight(dates::Date day) {
  return weather::hour_of(dates::Moment(day, 0));
}

dates::Date day_of(HourNumber hour) {
  const HourNumber down = hour >= 0 ? hour : hour - (hours_in_day - 1);
  return dates::Date{std::chrono::days{down / hours_in_day}};
}

// The same day of another year; 28 February for a 29th that it lacks.
dates::Date same_day(dates::Date day, int years_later) {
  std::chrono::year_month_day civil{day};
  civil += std::chrono::years{years_later};
  return civil.ok() ? dates::Date(civil)
                    : dates::Date(civil.year() / civil.month() / std::chrono::last);
}

WeatherYear year_at(const weather::Record& record,
                    const Window& window,
                    int later,
                    double& missing) {
  WeatherYear out{dates::year(window.start) + later, {}};
  int unknown = 0;
  for (int d = -window.before; d < window.days; ++d) {
    const dates::Date day = window.start + std::chrono::days{d};
    const dates::Date past = same_day(day, later);
    for (int h = 0; h < hours_in_day; ++h) {
      const weather::Hour& hour = record.at(midnight(past) + h);
      out.record.put(midnight(day) + h, hour);
      if (d >= 0 && (!hour.air || !hour.rain)) ++unknown;
    }
  }
  missing = static_cast<double>(unknown) / (static_cast<double>(window.days) * hours_in_day);
  return out;
}

}  // namespace

Years years_of(const weather::Record& record, const Window& window) {
  Years out;
  if (record.empty()) return out;
  const int plan = dates::year(window.start);
  // The window of a year may begin in the year before the first hours and still have none of them.
  const int first = dates::year(day_of(record.from()));
  const int last = dates::year(day_of(record.until() - 1));
  for (int year = first; year <= last; ++year) {
    double missing = 0.0;
    WeatherYear one = year_at(record, window, year - plan, missing);
    if (missing > most_missing) {
      out.left_out.push_back({year, missing});
    } else {
      out.years.push_back(std::move(one));
    }
  }
  return out;
}

}  // namespace basinwright::odds
