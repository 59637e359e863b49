#include "basinwright/dates/minute.hpp"

#include <fmt/format.h>
#include <charconv>

namespace basinwright::dates {
namespace {

constexpr std::size_t length_of_date = 10;
constexpr std::size_t minute_length = 16;
constexpr std::int64_t minutes_per_hour = 60;
constexpr std::int64_t minutes_per_day = 24 * minutes_per_hour;

std::optional<int> two_digits(std::string_view text) {
  int value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc() || read.ptr != text.data() + text.size() || text.front() == '-')
    return {};
  return value;
}

std::int64_t minute_of_day(Minute minute) {
  return minute.minutes() - minute.date().time_since_epoch().count() * minutes_per_day;
}

}  // namespace

Moment Minute::down() const {
  const std::int64_t rest = minutes_ % minutes_in_quarter;
  return Moment::of_quarters((minutes_ - rest) / minutes_in_quarter - (rest < 0 ? 1 : 0));
}

Moment Minute::up() const {
  const Moment below = down();
  return Minute(below) == *this ? below : Moment::of_quarters(below.quarters() + 1);
}

std::optional<Minute> parse_minute(std::string_view text) {
  if (text.size() != minute_length || text[length_of_date] != 'T' ||
      text[length_of_date + 3] != ':')
    return {};
  const auto date = parse_date(text.substr(0, length_of_date));
  const auto hour = two_digits(text.substr(length_of_date + 1, 2));
  const auto minute = two_digits(text.substr(length_of_date + 4, 2));
  if (!date || !hour || !minute || *hour >= 24 || *minute >= minutes_per_hour) return {};
  return Minute(date->time_since_epoch().count() * minutes_per_day + *hour * minutes_per_hour +
                *minute);
}

std::string iso(Minute minute) {
  return iso(minute.date()) + "T" + clock(minute);
}

std::string clock(Minute minute) {
  const std::int64_t of_day = minute_of_day(minute);
  return fmt::format("{:02}:{:02}", of_day / minutes_per_hour, of_day % minutes_per_hour);
}

}  // namespace basinwright::dates
