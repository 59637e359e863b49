// The table of days: CSV with a header of our own names in any order, made into hours.
#include <algorithm>
#include <array>

#include "basinwright/weather/daily.hpp"
#include "weather_forms.hpp"

namespace basinwright::readers {
namespace {

using weather::Quality;

enum class DayValue { highest, lowest, rain, wind, dew_point };

struct DayColumn {
  std::string_view name;
  DayValue value;
  Variable variable;
  std::string_view unit;
};

constexpr std::array<DayColumn, 5> day_columns{
    {{"temp_max_c", DayValue::highest, Variable::air, "\u00B0C"},
     {"temp_min_c", DayValue::lowest, Variable::air, "\u00B0C"},
     {"rain_mm", DayValue::rain, Variable::rain, "mm"},
     {"wind_ms", DayValue::wind, Variable::wind, "m/s"},
     {"dew_point_c", DayValue::dew_point, Variable::dew_point, "\u00B0C"}}};

constexpr std::string_view date_name = "date";

class DaysReader {
 public:
  explicit DaysReader(WeatherReading& reading)
      : rows_(reading.source.bytes(), mark_size(reading.source.bytes())),
        problems_(reading.problems),
        file_(reading.file) {}

  void read() {
    if (!rows_.next()) return;
    const Span header = rows_.row();
    read_header();
    while (!problems_.is_hopeless() && rows_.next()) read_row();
    tell_missing_columns(header);
    if (days_.empty()) {
      problems_.tell(
          {.code = codes::empty_list, .at = header, .message = "There is not one day in the file"});
    }
    for (const weather::MadeHour& hour : weather::hours_of(days_, Quality::forecast))
      file_.hours.push_back({hour.at, hour.known});
  }

 private:
  void read_header() {
    const auto& cells = rows_.cells();
    cell_count_ = cells.size();
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (cells[i].text == date_name) {
        date_ = i;
        continue;
      }
      const auto* const it = std::ranges::find(day_columns, cells[i].text, &DayColumn::name);
      if (it == day_columns.end()) {
        tell_nobody_reads(cells[i]);
        continue;
      }
      const bool twice = std::ranges::any_of(
          values_, [&](const DayColumn* column) { return column->value == it->value; });
      if (twice) {
        problems_.tell({.code = codes::repeated_column,
                        .at = cells[i].at,
                        .message = "The column \"" + std::string(it->name) + "\" stands twice",
                        .hint = "Keep one of the two."});
        continue;
      }
      values_.push_back(&*it);
      columns_.push_back(
          {it->variable, std::string(it->name), unit_named(it->variable, it->unit), i});
    }
  }

  // A dew point may be guessed; nothing else of a day can.
  void tell_missing_columns(Span header) {
    for (const DayValue needed : {DayValue::highest, DayValue::lowest, DayValue::rain}) {
      if (std::ranges::find(values_, needed, &DayColumn::value) != values_.end()) continue;
      const auto* const row = std::ranges::find(day_columns, needed, &DayColumn::value);
      problems_.tell({.code = codes::missing_column,
                      .at = header,
                      .message = "The column \"" + std::string(row->name) + "\" is missing"});
    }
  }

  void tell_nobody_reads(const CsvCell& cell) {
    problems_.tell(
        {.code = codes::unknown_column,
         .at = cell.at,
         .message = "Nobody reads the column \"" + std::string(cell.text.substr(0, 40)) + "\"",
         .hint = "Known: date, temp_max_c, temp_min_c, rain_mm, wind_ms, dew_point_c.",
         .severity = diagnostics::Severity::warning});
  }

  void read_row() {
    if (!is_whole_row(rows_, cell_count_, problems_)) return;
    const auto& cells = rows_.cells();
    weather::Day day;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const CsvCell& cell = cells[columns_[c].place];
      const auto si = read_value(columns_[c], {cell.text, cell.at}, problems_);
      if (si) put(values_[c]->value, *si, day);
    }
    const CsvCell& written = cells[date_];
    const auto date = dates::parse_date(written.text);
    if (!date) {
      problems_.tell({.code = codes::not_a_date,
                      .at = written.at,
                      .message = "\"" + std::string(written.text.substr(0, 40)) +
                                 "\" is no day of the calendar",
                      .hint = "Write it as 2027-05-31."});
      return;
    }
    const auto midnight = weather::hour_of(dates::Moment(*date, 0));
    if (midnight < first_hour() || midnight >= past_last_hour()) {
      problems_.tell({.code = codes::out_of_range,
                      .at = written.at,
                      .message = "The year lies between 1950 and 2149"});
      return;
    }
    day.date = *date;
    if (!days_.empty() && day.date <= days_.back().date) {
      problems_.tell({.code = codes::not_in_order,
                      .at = written.at,
                      .message = "The days do not follow one another",
                      .hint = "Sort the rows by date, each day once."});
      return;
    }
    if (day.highest && day.lowest && *day.highest < *day.lowest) {
      problems_.tell({.code = codes::out_of_range,
                      .at = rows_.row(),
                      .message = "The day's highest temperature is below its lowest"});
      return;
    }
    days_.push_back(day);
  }

  static void put(DayValue value, double si, weather::Day& day) {
    switch (value) {
      case DayValue::highest:
        day.highest = units::Temperature::from_si(si);
        break;
      case DayValue::lowest:
        day.lowest = units::Temperature::from_si(si);
        break;
      case DayValue::rain:
        day.rain = units::Length::from_si(si);
        break;
      case DayValue::wind:
        day.wind = units::Speed::from_si(si);
        break;
      case DayValue::dew_point:
        day.dew_point = units::Temperature::from_si(si);
        break;
    }
  }

  CsvRows rows_;
  WeatherProblems& problems_;
  WeatherFile& file_;
  std::size_t cell_count_ = 0;
  std::size_t date_ = 0;
  std::vector<WeatherColumn> columns_;
  std::vector<const DayColumn*> values_;
  std::vector<weather::Day> days_;
};

}  // namespace

bool is_days_header(const std::vector<CsvCell>& cells) {
  const auto has = [&](std::string_view name) {
    return std::ranges::find(cells, name, &CsvCell::text) != cells.end();
  };
  return has(date_name) && (has("temp_max_c") || has("temp_min_c") || has("rain_mm"));
}

void read_days(WeatherReading& reading) {
  reading.file.form = WeatherForm::days;
  DaysReader(reading).read();
}

}  // namespace basinwright::readers
