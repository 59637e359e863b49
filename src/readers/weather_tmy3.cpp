// Third typical meteorological year: a heading line, a line of column names, then rows.
#include <algorithm>
#include <array>

#include "weather_typical.hpp"

namespace basinwright::readers {
namespace {

// TMY3: columns by their names (users manual of the TMY3 data sets, from memory).
struct Tmy3Column {
  std::string_view name;
  Variable variable;
  std::string_view unit;
};

constexpr std::string_view tmy3_date = "Date (MM/DD/YYYY)";
constexpr std::string_view tmy3_time = "Time (HH:MM)";
constexpr std::string_view tmy3_rain_period = "Lprecip quantity (hr)";
constexpr std::array<Tmy3Column, 6> tmy3_values{{{"Dry-bulb (C)", Variable::air, "\u00B0C"},
                                                 {"Dew-point (C)", Variable::dew_point, "\u00B0C"},
                                                 {"RHum (%)", Variable::humidity, "%"},
                                                 {"Wspd (m/s)", Variable::wind, "m/s"},
                                                 {"TotCld (tenths)", Variable::cloud, "tenths"},
                                                 {"Lprecip depth (mm)", Variable::rain, "mm"}}};

std::optional<std::size_t> column_of(const CsvRows& rows, std::string_view name) {
  const auto it = std::ranges::find(rows.cells(), name, &CsvCell::text);
  if (it == rows.cells().end()) return {};
  return static_cast<std::size_t>(it - rows.cells().begin());
}

std::vector<WeatherColumn> tmy3_columns(const CsvRows& rows) {
  constexpr double missing = -9900.0;
  std::vector<WeatherColumn> columns;
  for (const Tmy3Column& named : tmy3_values) {
    const auto place = column_of(rows, named.name);
    if (!place) continue;
    WeatherColumn column{
        named.variable, std::string(named.name), unit_named(named.variable, named.unit), *place};
    column.missing_to = missing;
    columns.push_back(std::move(column));
  }
  return columns;
}

/// `MM/DD/YYYY` and `HH:MM`; what is not so is left to be refused.
TypicalTime tmy3_time_of(const CsvCell& date, const CsvCell& time) {
  constexpr std::size_t date_size = 10;
  constexpr std::size_t time_size = 5;
  TypicalTime out;
  out.at = date.at;
  if (date.text.size() != date_size || time.text.size() != time_size) return out;
  if (time.text.substr(2) != ":00") return out;
  out.month = date.text.substr(0, 2);
  out.day = date.text.substr(3, 2);
  out.hour = time.text.substr(0, 2);
  return out;
}

}  // namespace

bool is_tmy3_header(const std::vector<CsvCell>& cells) {
  const auto has = [&](std::string_view name) {
    return std::ranges::find(cells, name, &CsvCell::text) != cells.end();
  };
  return has(tmy3_date) && has(tmy3_time);
}

void read_tmy3(WeatherReading& reading) {
  constexpr std::size_t heading_cells = 7;
  constexpr double no_period = 1e9;
  reading.file.form = WeatherForm::tmy3;
  CsvRows rows(reading.source.bytes(), mark_size(reading.source.bytes()));
  if (!rows.next()) return;
  if (is_whole_row(rows, heading_cells, reading.problems)) {
    const auto& cells = rows.cells();
    reading.file.place = std::string(cells[1].text) + ", " + std::string(cells[2].text);
    read_heading({cells[4], cells[5], cells[3], cells[6]}, reading);
  }
  if (!rows.next()) return;
  const Span heading = rows.row();
  const std::size_t count = rows.cells().size();
  const std::size_t date = column_of(rows, tmy3_date).value_or(0);
  const std::size_t time = column_of(rows, tmy3_time).value_or(0);
  TypicalRows hours(
      tmy3_columns(rows), {column_of(rows, tmy3_rain_period), no_period}, reading.problems);
  while (!reading.problems.is_hopeless() && rows.next()) {
    if (is_whole_row(rows, count, reading.problems)) {
      hours.add(rows, tmy3_time_of(rows.cells()[date], rows.cells()[time]));
    } else {
      hours.skip();
    }
  }
  reading.file.hours = hours.finish(heading);
}

}  // namespace basinwright::readers
