#include <algorithm>
#include <cmath>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/unit.hpp"
#include "weather_hours.hpp"

namespace basinwright::readers {
namespace {

using weather::HourNumber;

constexpr HourNumber hours_of_day = 24;

/// A typical year by month, day and hour.
class TypicalYear {
 public:
  explicit TypicalYear(const WeatherFile& file)
      : hours_(static_cast<std::size_t>(366 * hours_of_day), nullptr) {
    for (const WeatherHour& hour : file.hours) hours_[index(hour.at)] = &hour.known;
    const auto leap_day = index(hour_of_typical(2, 29, 0));
    const auto begin = hours_.begin() + static_cast<std::ptrdiff_t>(leap_day);
    const auto is_given = [](const weather::Hour* hour) { return hour != nullptr; };
    if (std::none_of(begin, begin + hours_of_day, is_given)) {
      std::copy(begin - hours_of_day, begin, begin);
    }
  }

  /// The hours of a day, 24 of them; those that the file lacks are null.
  [[nodiscard]] const weather::Hour* const* day(dates::Date date) const {
    const std::chrono::year_month_day civil{date};
    return &hours_[index(hour_of_typical(
        static_cast<unsigned>(civil.month()), static_cast<unsigned>(civil.day()), 0))];
  }

 private:
  static std::size_t index(HourNumber at) {
    return static_cast<std::size_t>(at - hour_of_typical(1, 1, 0));
  }

  std::vector<const weather::Hour*> hours_;
};

HourNumber midnight(dates::Date day) {
  return HourNumber{day.time_since_epoch().count()} * hours_of_day;
}

dates::Date day_of(HourNumber hour) {
  const HourNumber down = hour >= 0 ? hour : hour - (hours_of_day - 1);
  return dates::Date{std::chrono::days{down / hours_of_day}};
}

/// How many hours the site's clock is ahead of a file's own, by the hour the site's clock shows.
class Ahead {
 public:
  Ahead(const WeatherFile& file, const SiteClock& clock) {
    if (!clock.ahead_of_utc || !file.ahead_of_utc) return;
    first_ = std::lround((*clock.ahead_of_utc - *file.ahead_of_utc).in(units::hours));
    const HourNumber since = midnight(clock.since);
    for (const dates::ClockChange& change : clock.changes) {
      const HourNumber at = weather::hour_of(change.at);
      const HourNumber by = std::lround(change.minutes / minutes_in_hour);
      if (at < since) first_ -= by;
      changes_.emplace_back(at, by);
    }
  }
  [[nodiscard]] HourNumber at(HourNumber hour) const {
    HourNumber ahead = first_;
    for (const auto& [from, by] : changes_) ahead += hour >= from ? by : 0;
    return ahead;
  }

 private:
  static constexpr double minutes_in_hour = 60.0;
  HourNumber first_ = 0;
  std::vector<std::pair<HourNumber, HourNumber>> changes_;
};

void lay(const WeatherFile& file,
         HourNumber from,
         HourNumber until,
         const Ahead& ahead,
         weather::Record& record) {
  const TypicalYear year(file);
  for (HourNumber at = from; at < until; ++at) {
    const HourNumber standard = at - ahead.at(at);
    const dates::Date day = day_of(standard);
    const weather::Hour* hour = year.day(day)[standard - midnight(day)];
    if (hour != nullptr) record.put(at, *hour);
  }
}

}  // namespace

weather::Record merge(const std::vector<WeatherFile>& files,
                      HourNumber from,
                      HourNumber until,
                      const SiteClock& clock) {
  weather::Record record;
  // A record holds two centuries; nobody plans outside those that files may have.
  from = std::max(from, first_hour());
  until = std::min(until, past_last_hour());
  for (const WeatherFile& file : files) {
    if (file.is_typical_year()) {
      lay(file, from, until, Ahead(file, clock), record);
      continue;
    }
    for (const WeatherHour& hour : file.hours) record.put(hour.at, hour.known);
  }
  return record;
}

}  // namespace basinwright::readers
