// EnergyPlus weather: 8 heading lines, then 35 fields a row.
#include <array>

#include "weather_typical.hpp"

namespace basinwright::readers {
namespace {

// EPW: places of the fields, from 0; values from `missing` up say that nothing was measured
// (auxiliary programs manual of EnergyPlus, weather data format, from memory).
struct EpwField {
  std::string_view name;
  Variable variable;
  std::string_view unit;
  std::size_t place;
  double missing;
};

constexpr std::size_t epw_fields = 35;
constexpr std::size_t epw_rain_period = 34;
constexpr double epw_no_period = 99.0;
constexpr std::array<EpwField, 6> epw_values{
    {{"dry bulb", Variable::air, "\u00B0C", 6, 99.9},
     {"dew point", Variable::dew_point, "\u00B0C", 7, 99.9},
     {"relative humidity", Variable::humidity, "%", 8, 999.0},
     {"wind speed", Variable::wind, "m/s", 21, 999.0},
     {"total sky cover", Variable::cloud, "tenths", 22, 99.0},
     {"liquid precipitation depth", Variable::rain, "mm", 33, 999.0}}};

std::vector<WeatherColumn> epw_columns() {
  std::vector<WeatherColumn> columns;
  for (const EpwField& field : epw_values) {
    WeatherColumn column{field.variable,
                         std::string(field.name),
                         unit_named(field.variable, field.unit),
                         field.place};
    column.missing_from = field.missing;
    column.may_oversaturate = field.variable == Variable::humidity;
    columns.push_back(std::move(column));
  }
  return columns;
}

void read_location(const CsvRows& rows, WeatherReading& reading) {
  constexpr std::size_t location_cells = 10;
  if (!is_whole_row(rows, location_cells, reading.problems)) return;
  const auto& cells = rows.cells();
  reading.file.place = std::string(cells[1].text) + ", " + std::string(cells[3].text);
  read_heading({cells[6], cells[7], cells[8], cells[9]}, reading);
}

}  // namespace

void read_epw(WeatherReading& reading) {
  constexpr int other_headings = 7;
  reading.file.form = WeatherForm::epw;
  CsvRows rows(reading.source.bytes(), mark_size(reading.source.bytes()));
  if (!rows.next()) return;
  const Span heading = rows.row();
  read_location(rows, reading);
  for (int i = 0; i < other_headings; ++i) rows.skip_line();
  TypicalRows hours(epw_columns(), {epw_rain_period, epw_no_period}, reading.problems);
  while (!reading.problems.is_hopeless() && rows.next()) {
    const auto& cells = rows.cells();
    if (is_whole_row(rows, epw_fields, reading.problems)) {
      hours.add(
          rows,
          {cells[1].text, cells[2].text, cells[3].text, {cells[1].at.begin, cells[3].at.end}});
    } else {
      hours.skip();
    }
  }
  reading.file.hours = hours.finish(heading);
}

}  // namespace basinwright::readers
