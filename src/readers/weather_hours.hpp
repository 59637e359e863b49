// Time stamps of a weather file, and its hours in order.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/readers/weather_file.hpp"
#include "weather_problems.hpp"

namespace basinwright::readers {

/// A time as it stands in the file.
struct Stamp {
  std::string_view text;
  Span at;
  std::string_view list = {};  ///< Pointer to the list it stands in, or to itself.
  std::optional<std::size_t> index = {};

  [[nodiscard]] std::string pointer() const {
    return std::string(list) + (index ? "/" + std::to_string(*index) : "");
  }
};

/// The hour of an ISO 8601 local time on the full hour, `T` or a blank between day and time,
/// seconds `:00` allowed; anything else is reported.
[[nodiscard]] std::optional<weather::HourNumber> hour_of(const Stamp& stamp,
                                                         WeatherProblems& problems);

/// The hour of a count of seconds since 1970 in UTC.
[[nodiscard]] std::optional<weather::HourNumber> hour_of_seconds(const Stamp& stamp,
                                                                 units::Duration ahead_of_utc,
                                                                 WeatherProblems& problems);

/// The hour that begins `hours` after the midnight of a day of the typical calendar.
[[nodiscard]] weather::HourNumber hour_of_typical(unsigned month, unsigned day, int hours);

/// First hour that a dated file may hold, and one past the last: 1950 to 2149.
[[nodiscard]] weather::HourNumber first_hour();
[[nodiscard]] weather::HourNumber past_last_hour();

/// Hours as the rows of a file give them. What runs backwards is an error; gaps, and an hour that
/// the clock shows twice in autumn, are warnings.
class HourRun {
 public:
  HourRun(bool is_typical, WeatherProblems& problems)
      : is_typical_(is_typical), problems_(problems) {}

  void add(weather::HourNumber at, const weather::Hour& known, const Stamp& stamp);
  /// A row that could not be read: the next one is not held against the one before it.
  void skip() { previous_.reset(); }
  /// All hours; says what a typical year lacks.
  [[nodiscard]] std::vector<WeatherHour> finish();

 private:
  void tell_gap(weather::HourNumber missing, const Stamp& stamp);
  void repeat(const weather::Hour& known, const Stamp& stamp);
  void refuse(std::string message, const Stamp& stamp);

  bool is_typical_;
  WeatherProblems& problems_;
  std::vector<WeatherHour> hours_;
  std::optional<weather::HourNumber> previous_;
  std::optional<weather::HourNumber> last_repeat_;
  Span last_ = {};
};

}  // namespace basinwright::readers
