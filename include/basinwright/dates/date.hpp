// Local dates and times on a quarter-hour grid.
#pragma once

#include <chrono>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace basinwright::dates {

/// A local calendar day, proleptic Gregorian.
using Date = std::chrono::sys_days;

/// Years that are read: a job that begins in the last of them ends before the year 10000, which ISO
/// 8601 and calendars cannot write.
inline constexpr int first_year = 1900;
inline constexpr int last_year = 9990;

/// Reads `YYYY-MM-DD` (ISO 8601), years 1900 to 9990; nothing when it is no such day.
[[nodiscard]] std::optional<Date> parse_date(std::string_view text);
/// The day as `YYYY-MM-DD`.
[[nodiscard]] std::string iso(Date date);
/// 0 = Monday ... 6 = Sunday.
[[nodiscard]] unsigned weekday(Date date);
/// 1 = January ... 12.
[[nodiscard]] unsigned month(Date date);
[[nodiscard]] int year(Date date);
/// "Mon", "Tue" ... in English.
[[nodiscard]] std::string_view short_weekday(Date date);
/// "Mon 4 May" in English; the year is said where it matters by the caller.
[[nodiscard]] std::string short_day(Date date);

/// Quarter hours in a day.
inline constexpr std::int64_t quarters_per_day = 96;

/// A local time on the quarter-hour grid.
class Moment {
 public:
  constexpr Moment() = default;
  constexpr Moment(Date day, int quarter)
      : quarters_(day.time_since_epoch().count() * quarters_per_day + quarter) {}
  [[nodiscard]] static constexpr Moment of_quarters(std::int64_t since_epoch) {
    Moment m;
    m.quarters_ = since_epoch;
    return m;
  }
  /// Quarters since 1970-01-01T00:00 local.
  [[nodiscard]] constexpr std::int64_t quarters() const { return quarters_; }
  [[nodiscard]] Date date() const;
  /// Quarter of the day, 0 to 95.
  [[nodiscard]] int quarter() const;
  [[nodiscard]] int hour() const { return quarter() / 4; }
  [[nodiscard]] int minute() const { return quarter() % 4 * 15; }
  friend constexpr auto operator<=>(Moment, Moment) = default;

 private:
  std::int64_t quarters_ = 0;
};

/// Reads `YYYY-MM-DDTHH:MM` with minutes 00, 15, 30 or 45 (a day alone is its midnight).
[[nodiscard]] std::optional<Moment> parse_moment(std::string_view text);
/// `YYYY-MM-DDTHH:MM`.
[[nodiscard]] std::string iso(Moment moment);
/// `HH:MM`.
[[nodiscard]] std::string clock(Moment moment);

/// Reads `HH:MM` on the grid, `24:00` allowed, as quarters from midnight.
[[nodiscard]] std::optional<int> parse_clock(std::string_view text);

}  // namespace basinwright::dates
