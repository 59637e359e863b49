#include "basinwright/dates/date.hpp"

#include <array>

#include <fmt/format.h>

namespace basinwright::dates {
namespace {

constexpr std::array<std::string_view, 7> weekday_names = {
    "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
constexpr std::array<std::string_view, 12> month_names = {
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

constexpr int minutes_per_quarter = 15;
constexpr std::size_t date_length = 10;  // YYYY-MM-DD
constexpr std::size_t clock_length = 5;  // HH:MM

/// The number that `text` spells in digits alone; no sign, no blank.
std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::chrono::year_month_day civil(Date date) {
  return std::chrono::year_month_day{date};
}

}  // namespace

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != date_length || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto y = digits(text.substr(0, 4));
  const auto m = digits(text.substr(5, 2));
  const auto d = digits(text.substr(8, 2));
  if (!y || !m || !d || *y < first_year || *y > last_year) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year{*y},
                                         std::chrono::month{static_cast<unsigned>(*m)},
                                         std::chrono::day{static_cast<unsigned>(*d)}};
  if (!date.ok()) return std::nullopt;
  return Date{date};
}

std::string iso(Date date) {
  return fmt::format(
      "{:04}-{:02}-{:02}", year(date), month(date), static_cast<unsigned>(civil(date).day()));
}

unsigned weekday(Date date) {
  return std::chrono::weekday{date}.iso_encoding() - 1;
}

unsigned month(Date date) {
  return static_cast<unsigned>(civil(date).month());
}

int year(Date date) {
  return static_cast<int>(civil(date).year());
}

std::string_view short_weekday(Date date) {
  return weekday_names.at(weekday(date));
}

std::string short_day(Date date) {
  return fmt::format("{} {} {}",
                     short_weekday(date),
                     static_cast<unsigned>(civil(date).day()),
                     month_names.at(month(date) - 1));
}

Date Moment::date() const {
  // Rounds down before 1970 too.
  const std::int64_t late = quarters_ < 0 ? quarters_per_day - 1 : 0;
  return Date(std::chrono::days{(quarters_ - late) / quarters_per_day});
}

int Moment::quarter() const {
  return static_cast<int>(quarters_ - date().time_since_epoch().count() * quarters_per_day);
}

std::optional<Moment> parse_moment(std::string_view text) {
  const auto date = parse_date(text.substr(0, date_length));
  if (!date) return std::nullopt;
  if (text.size() == date_length) return Moment{*date, 0};
  if (text[date_length] != 'T') return std::nullopt;
  const auto quarter = parse_clock(text.substr(date_length + 1));
  if (!quarter || *quarter == quarters_per_day) return std::nullopt;
  return Moment{*date, *quarter};
}

std::string iso(Moment moment) {
  std::string text = iso(moment.date());
  text += 'T';
  text += clock(moment);
  return text;
}

std::string clock(Moment moment) {
  return fmt::format("{:02}:{:02}", moment.hour(), moment.minute());
}

std::optional<int> parse_clock(std::string_view text) {
  if (text.size() != clock_length || text[2] != ':') return std::nullopt;
  const auto hours = digits(text.substr(0, 2));
  const auto minutes = digits(text.substr(3, 2));
  if (!hours || !minutes || *minutes >= 60 || *minutes % minutes_per_quarter != 0)
    return std::nullopt;
  const int quarter = *hours * 4 + *minutes / minutes_per_quarter;
  if (quarter > quarters_per_day) return std::nullopt;
  return quarter;
}

}  // namespace basinwright::dates
