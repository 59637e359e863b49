// One reader for each form of weather file.
#pragma once

#include "basinwright/readers/weather_file.hpp"
#include "csv_rows.hpp"
#include "plain_text.hpp"
#include "weather_columns.hpp"
#include "weather_hours.hpp"

namespace basinwright::readers {

/// A file being read.
struct WeatherReading {
  const SourceText& source;
  WeatherProblems& problems;
  WeatherFile& file;
};

/// From the parsed root of a forecast in columns.
void read_forecast(const Node& root, WeatherReading& reading);
void read_table(WeatherReading& reading);
void read_days(WeatherReading& reading);
void read_epw(WeatherReading& reading);
void read_tmy3(WeatherReading& reading);

/// Whether the row is a header of our table: one of its names stands in it.
[[nodiscard]] bool is_table_header(const std::vector<CsvCell>& cells);
/// Whether the row is a header of the table of days.
[[nodiscard]] bool is_days_header(const std::vector<CsvCell>& cells);
/// Whether the row is the second line of a TMY3 file.
[[nodiscard]] bool is_tmy3_header(const std::vector<CsvCell>& cells);

/// The best quality of any value of the hours.
[[nodiscard]] weather::Quality best_quality(const std::vector<WeatherHour>& hours);

/// Reports a row with another number of cells than it should have, or with a stray quotation mark.
[[nodiscard]] bool is_whole_row(const CsvRows& rows, std::size_t cells, WeatherProblems& problems);

/// A number of a file's heading, within limits.
struct Fact {
  std::string_view words;
  double low;
  double high;
};
inline constexpr Fact latitude_fact{"The latitude", -90.0, 90.0};
inline constexpr Fact longitude_fact{"The longitude", -180.0, 180.0};
inline constexpr Fact elevation_fact{"The elevation in metres", -500.0, 6000.0};
inline constexpr Fact hours_ahead_fact{"The hours ahead of UTC", -12.0, 14.0};

/// The number; reports one that is none or lies outside.
[[nodiscard]] std::optional<double> read_fact(const Fact& fact,
                                              const Stamp& written,
                                              WeatherProblems& problems);

/// Reports a clock that cannot be the site's: too far from where the sun stands at its longitude.
void check_clock(const WeatherFile& file, const Stamp& offset, WeatherProblems& problems);

}  // namespace basinwright::readers
