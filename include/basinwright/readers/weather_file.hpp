// Weather files into hours, and several files into one record.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/calendar.hpp"
#include "basinwright/diagnostics/diagnostic.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::readers {

/// How a weather file is laid out; told by its content, never by its name.
enum class WeatherForm {
  columns,  ///< Hourly forecast, JSON with one list for each variable.
  table,    ///< CSV with a header of our own names.
  days,     ///< CSV of days with a header of our own names, made into hours.
  epw,      ///< EnergyPlus weather: a typical year.
  tmy3      ///< Third typical meteorological year, CSV: a typical year.
};

/// "a forecast in columns (JSON)", "a typical year (EPW)" ...
[[nodiscard]] std::string_view name(WeatherForm form);

/// What a file says of one hour.
struct WeatherHour {
  weather::HourNumber at = 0;
  weather::Hour known;
};

/// A weather file as read.
struct WeatherFile {
  std::string name;
  WeatherForm form = WeatherForm::table;
  /// The best quality of any value.
  weather::Quality quality = weather::Quality::missing;
  std::string place;                            ///< As the file names it; may be empty.
  std::optional<double> latitude;               ///< Degrees north.
  std::optional<double> longitude;              ///< Degrees east.
  std::optional<units::Length> elevation;       ///< Above the sea.
  std::optional<units::Duration> ahead_of_utc;  ///< Of the file's clock.
  /// Ascending, no hour twice. A typical year's hours are those of `typical_calendar_year`.
  std::vector<WeatherHour> hours;

  /// A typical year stands for every year: its own year numbers mean nothing.
  [[nodiscard]] bool is_typical_year() const {
    return form == WeatherForm::epw || form == WeatherForm::tmy3;
  }
};

/// The leap year that holds the hours of a typical year.
inline constexpr int typical_calendar_year = 2000;

/// Reads a weather file (UTF-8, at most 64 MiB) of any form. Unknown values, gaps and jumps of the
/// clock are warnings: an hour without a value is unknown, never dry or mild. Nothing comes back
/// when there is an error.
///
/// A forecast's `precipitation` is the sum of the hour before its stamp and is booked there. The
/// hours 1 to 24 of a typical year are the ends of hours: hour 1 is 00:00 to 01:00.
[[nodiscard]] std::optional<WeatherFile> read_weather(const Input& input,
                                                      diagnostics::Problems& problems);

/// The same for hours or days that are replayed as past ones. A typical year is refused: it is put
/// together from many, has no date, and its calm is nobody's.
[[nodiscard]] std::optional<WeatherFile> read_past_weather(const Input& input,
                                                           diagnostics::Problems& problems);

/// The clock on the wall at the site.
struct SiteClock {
  /// What it is ahead of universal time on `since`; typical years are then moved by what that is
  /// more than their own standard time, without it they are laid as they stand.
  std::optional<units::Duration> ahead_of_utc;
  dates::Date since;
  std::vector<dates::ClockChange> changes;  ///< Those after `since` add up; those before undo.
};

/// One record of all files: value by value, observed beats forecast beats climatology, and of
/// equals the later file. Typical years are laid over the hours [from, until), month by month, day
/// by day and hour by hour; a 29 February that they lack repeats their 28th, one that the year
/// lacks is left out.
[[nodiscard]] weather::Record merge(const std::vector<WeatherFile>& files,
                                    weather::HourNumber from,
                                    weather::HourNumber until,
                                    const SiteClock& clock = {});

}  // namespace basinwright::readers
