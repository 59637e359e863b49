#include <algorithm>

#include "basinwright/dates/date.hpp"
#include "weather_hours.hpp"

namespace basinwright::readers {
namespace {

using weather::HourNumber;

constexpr HourNumber hours_in_day = 24;

/// A typical year by month, day and hour.
class TypicalYear {
 public:
  explicit TypicalYear(const WeatherFile& file)
      : hours_(static_cast<std::size_t>(366 * hours_in_day), nullptr) {
    for (const WeatherHour& hour : file.hours) hours_[index(hour.at)] = &hour.known;
    const auto leap_day = index(hour_of_typical(2, 29, 0));
    const auto begin = hours_.begin() + static_cast<std::ptrdiff_t>(leap_day);
    const auto is_given = [](const weather::Hour* hour) { return hour != nullptr; };
    if (std::none_of(begin, begin + hours_in_day, is_given)) {
      std::copy(begin - hours_in_day, begin, begin);
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
  return HourNumber{day.time_since_epoch().count()} * hours_in_day;
}

dates::Date day_of(HourNumber hour) {
  const HourNumber down = hour >= 0 ? hour : hour - (hours_in_day - 1);
  return dates::Date{std::chrono::days{down / hours_in_day}};
}

void lay(const WeatherFile& file, HourNumber from, HourNumber until, weather::Record& record) {
  const TypicalYear year(file);
  for (dates::Date day = day_of(from); midnight(day) < until; day += std::chrono::days{1}) {
    const weather::Hour* const* hours = year.day(day);
    const HourNumber begin = std::max(from, midnight(day));
    const HourNumber end = std::min(until, midnight(day) + hours_in_day);
    for (HourNumber at = begin; at < end; ++at) {
      const weather::Hour* hour = hours[at - midnight(day)];
      if (hour != nullptr) record.put(at, *hour);
    }
  }
}

}  // namespace

weather::Record merge(const std::vector<WeatherFile>& files, HourNumber from, HourNumber until) {
  weather::Record record;
  // A record holds two centuries; nobody plans outside those that files may have.
  from = std::max(from, first_hour());
  until = std::min(until, past_last_hour());
  for (const WeatherFile& file : files) {
    if (file.is_typical_year()) {
      lay(file, from, until, record);
      continue;
    }
    for (const WeatherHour& hour : file.hours) record.put(hour.at, hour.known);
  }
  return record;
}

}  // namespace basinwright::readers
