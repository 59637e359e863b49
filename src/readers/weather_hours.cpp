#include "weather_hours.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::readers {
namespace {

using weather::HourNumber;

constexpr int hours_in_day = 24;
constexpr int first_year = 1950;
constexpr int past_last_year = 2150;
constexpr std::size_t hours_in_typical_year = 8760;

HourNumber hour_at(dates::Date day, int hours) {
  return HourNumber{day.time_since_epoch().count()} * hours_in_day + hours;
}

dates::Date new_year(int year) {
  return dates::Date{std::chrono::year{year} / std::chrono::January / 1};
}

std::optional<int> two_digits(std::string_view text) {
  int value = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (text.size() != 2 || text.front() == '-' || error != std::errc() || stop != end) return {};
  return value;
}

void refuse(Code code, const Stamp& stamp, std::string hint, WeatherProblems& problems) {
  const std::string shown = "\"" + std::string(stamp.text.substr(0, 40)) + "\"";
  problems.tell({.code = code,
                 .at = stamp.at,
                 .pointer = stamp.pointer(),
                 .message = shown + (code.word == codes::not_a_full_hour.word
                                         ? " is not a full hour"
                                         : " is no time that can be read"),
                 .hint = std::move(hint)});
}

std::optional<HourNumber> within_years(HourNumber hour,
                                       const Stamp& stamp,
                                       WeatherProblems& problems) {
  if (hour >= first_hour() && hour < past_last_hour()) return hour;
  problems.tell({.code = codes::out_of_range,
                 .at = stamp.at,
                 .pointer = stamp.pointer(),
                 .message = "The year lies between 1950 and 2149"});
  return {};
}

/// Hour and minute of `HH:MM` with or without `:SS`; minutes and seconds as one number.
struct Clock {
  int hour = 0;
  int past_hour = 0;
};

std::optional<Clock> clock_of(std::string_view text) {
  constexpr std::size_t short_form = 5;
  constexpr std::size_t long_form = 8;
  if (text.size() != short_form && text.size() != long_form) return {};
  const bool has_seconds = text.size() == long_form;
  const auto hour = two_digits(text.substr(0, 2));
  const auto minute = two_digits(text.substr(3, 2));
  const auto second = has_seconds ? two_digits(text.substr(6, 2)) : std::optional(0);
  const bool has_colons = text[2] == ':' && (!has_seconds || text[5] == ':');
  if (!hour || !minute || !second || !has_colons) return {};
  if (*hour >= hours_in_day || *minute > 59 || *second > 60) return {};
  return Clock{*hour, *minute + *second};
}

template <class T>
void keep_later(std::optional<T>& kept, const std::optional<T>& later) {
  if (later) kept = later;
}

/// One hour of the clock that passed twice: the rain of both fell in it.
void join(weather::Hour& kept, const weather::Hour& later) {
  if (kept.rain && later.rain) {
    kept.rain->value += later.rain->value;
    kept.rain->quality = std::min(kept.rain->quality, later.rain->quality);
  } else {
    kept.rain.reset();
  }
  keep_later(kept.air, later.air);
  keep_later(kept.dew_point, later.dew_point);
  keep_later(kept.shell, later.shell);
  keep_later(kept.humidity, later.humidity);
  keep_later(kept.wind, later.wind);
  keep_later(kept.cloud, later.cloud);
}

}  // namespace

HourNumber first_hour() {
  return hour_at(new_year(first_year), 0);
}

HourNumber past_last_hour() {
  return hour_at(new_year(past_last_year), 0);
}

HourNumber hour_of_typical(unsigned month, unsigned day, int hours) {
  return hour_at(dates::Date{std::chrono::year{typical_calendar_year} / std::chrono::month{month} /
                             std::chrono::day{day}},
                 hours);
}

std::optional<HourNumber> hour_of(const Stamp& stamp, WeatherProblems& problems) {
  constexpr std::size_t day_size = 10;
  const std::string_view text = stamp.text;
  const auto day = dates::parse_date(text.substr(0, day_size));
  const bool has_time =
      day && text.size() > day_size + 1 && (text[day_size] == 'T' || text[day_size] == ' ');
  const auto clock = has_time ? clock_of(text.substr(day_size + 1)) : std::nullopt;
  if (!clock) {
    refuse(codes::not_a_date,
           stamp,
           "Write it as 2027-05-31T08:00, local time without an offset.",
           problems);
    return {};
  }
  if (clock->past_hour != 0) {
    refuse(codes::not_a_full_hour, stamp, "One row for each hour, on the hour.", problems);
    return {};
  }
  return within_years(hour_at(*day, clock->hour), stamp, problems);
}

std::optional<HourNumber> hour_of_seconds(const Stamp& stamp,
                                          units::Duration ahead_of_utc,
                                          WeatherProblems& problems) {
  constexpr std::int64_t seconds_in_hour = 3600;
  constexpr std::int64_t most_seconds = 10'000'000'000;
  std::int64_t utc = 0;
  const char* const end = stamp.text.data() + stamp.text.size();
  const auto [stop, error] = std::from_chars(stamp.text.data(), end, utc);
  if (error != std::errc() || stop != end || utc > most_seconds || utc < -most_seconds) {
    refuse(codes::not_a_date, stamp, "Whole seconds since 1970 in UTC belong here.", problems);
    return {};
  }
  const std::int64_t local = utc + static_cast<std::int64_t>(ahead_of_utc.in(units::seconds));
  if (local % seconds_in_hour != 0) {
    refuse(codes::not_a_full_hour, stamp, "One value for each hour, on the hour.", problems);
    return {};
  }
  return within_years(local / seconds_in_hour, stamp, problems);
}

void HourRun::refuse(std::string message, const Stamp& stamp) {
  problems_.tell({.code = codes::not_in_order,
                  .at = stamp.at,
                  .pointer = stamp.pointer(),
                  .message = std::move(message),
                  .hint = "Each hour stands once, the earlier before the later."});
}

void HourRun::tell_gap(HourNumber missing, const Stamp& stamp) {
  const bool one = missing == 1;
  problems_.tell(
      {.code = codes::missing_hours,
       .at = stamp.at,
       .pointer = stamp.pointer(),
       .message =
           one ? "One hour is missing before this one"
               : grouped(static_cast<std::size_t>(missing)) + " hours are missing before this one",
       .hint = one ? "In spring the clock jumps over an hour; otherwise it is a gap, and closed."
                   : "An hour without values is closed.",
       .severity = diagnostics::Severity::warning});
}

void HourRun::repeat(const weather::Hour& known, const Stamp& stamp) {
  // Clocks go back once in a year.
  constexpr HourNumber season = HourNumber{60} * hours_in_day;
  const HourNumber at = hours_.back().at;
  if (is_typical_ || (last_repeat_ && at - *last_repeat_ < season)) {
    refuse("This hour has been given already", stamp);
    return;
  }
  last_repeat_ = at;
  join(hours_.back().known, known);
  problems_.tell({.code = codes::repeated_hour,
                  .at = stamp.at,
                  .pointer = stamp.pointer(),
                  .message = "This hour stands twice",
                  .hint =
                      "In autumn the clock shows an hour twice: the rain of both is added up, of "
                      "the rest the later counts.",
                  .severity = diagnostics::Severity::warning});
}

void HourRun::add(HourNumber at, const weather::Hour& known, const Stamp& stamp) {
  last_ = stamp.at;
  const std::optional<HourNumber> previous = std::exchange(previous_, at);
  if (previous && at < *previous) {
    refuse("This time is earlier than the one before it", stamp);
    return;
  }
  if (!hours_.empty() && at <= hours_.back().at) {
    const bool twice = previous && at == *previous && at == hours_.back().at;
    if (twice) repeat(known, stamp);
    return;
  }
  if (previous && at > *previous + 1 && !is_typical_) tell_gap(at - *previous - 1, stamp);
  hours_.push_back({at, known});
}

std::vector<WeatherHour> HourRun::finish() {
  if (!is_typical_) return std::move(hours_);
  const HourNumber leap_day = hour_of_typical(2, 29, 0);
  std::size_t known = 0;
  for (const WeatherHour& hour : hours_) {
    const bool is_extra = hour.at >= leap_day && hour.at < leap_day + hours_in_day;
    known += is_extra ? 0 : 1;
  }
  if (known < hours_in_typical_year && known > 0) {
    problems_.tell({.code = codes::missing_hours,
                    .at = last_,
                    .message = grouped(hours_in_typical_year - known) +
                               " of the 8,760 hours of a year are missing",
                    .severity = diagnostics::Severity::warning});
  }
  return std::move(hours_);
}

}  // namespace basinwright::readers
