// What the forms of typical years share. Their years mean nothing; their hours are ends of hours.
#pragma once

#include "weather_forms.hpp"

namespace basinwright::readers {

/// Day and hour of a row, as they stand in the file.
struct TypicalTime {
  std::string_view month, day, hour;
  Span at;
};

/// Cells of a heading.
struct Heading {
  const CsvCell &latitude, &longitude, &hours_ahead, &elevation;
};

void read_heading(const Heading& heading, WeatherReading& reading);

/// Which cell of a row says over how many hours the rain was gathered. An empty cell, 0 and values
/// from `missing_from` up say that nobody noted it.
struct RainPeriod {
  std::optional<std::size_t> place;
  double missing_from = 0.0;
};

/// Reads the rows of a typical year.
class TypicalRows {
 public:
  TypicalRows(std::vector<WeatherColumn> columns, RainPeriod period, WeatherProblems& problems)
      : columns_(std::move(columns)), period_(period), problems_(problems), run_(true, problems) {}

  void add(const CsvRows& rows, const TypicalTime& time);
  /// A row that cannot be read.
  void skip();
  [[nodiscard]] std::vector<WeatherHour> finish(Span heading);

 private:
  [[nodiscard]] std::optional<double> period_of(const CsvRows& rows) const;
  void forget_rain(std::vector<WeatherHour>& hours, Span heading);

  std::vector<WeatherColumn> columns_;
  RainPeriod period_;
  WeatherProblems& problems_;
  HourRun run_;
  std::size_t count_ = 0;
  bool ever_rained_ = false;
  bool ever_gathered_ = false;
};

}  // namespace basinwright::readers
