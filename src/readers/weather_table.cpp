// The table: CSV with a header of our own names in any order.
#include <algorithm>
#include <array>

#include "weather_forms.hpp"

namespace basinwright::readers {
namespace {

using weather::Quality;

struct TableColumn {
  std::string_view name;
  Variable variable;
  std::string_view unit;
};

constexpr std::array<TableColumn, 7> value_columns{{{"air_temp_c", Variable::air, "\u00B0C"},
                                                    {"rh_pct", Variable::humidity, "%"},
                                                    {"dew_point_c", Variable::dew_point, "\u00B0C"},
                                                    {"rain_mm", Variable::rain, "mm"},
                                                    {"wind_ms", Variable::wind, "m/s"},
                                                    {"cloud_pct", Variable::cloud, "%"},
                                                    {"shell_temp_c", Variable::shell, "\u00B0C"}}};

constexpr std::string_view time_name = "time";
constexpr std::string_view quality_name = "quality";

struct QualityWord {
  std::string_view word;
  Quality quality;
};
constexpr std::array<QualityWord, 4> quality_words{{{"observed", Quality::observed},
                                                    {"forecast", Quality::forecast},
                                                    {"climatology", Quality::climatology},
                                                    {"missing", Quality::missing}}};

std::vector<std::string_view> known_names() {
  std::vector<std::string_view> names{time_name};
  for (const TableColumn& column : value_columns) names.push_back(column.name);
  names.push_back(quality_name);
  return names;
}

class TableReader {
 public:
  explicit TableReader(WeatherReading& reading)
      : rows_(reading.source.bytes(), mark_size(reading.source.bytes())),
        problems_(reading.problems),
        file_(reading.file) {}

  void read() {
    if (!rows_.next()) return;
    const Span header = rows_.row();
    read_header();
    HourRun run(false, problems_);
    while (!problems_.is_hopeless() && rows_.next()) read_row(run);
    file_.hours = run.finish();
    tell_unknown(columns_, header, problems_);
    if (row_count_ > 0) return;
    problems_.tell(
        {.code = codes::empty_list, .at = header, .message = "There is not one hour in the file"});
  }

 private:
  void read_header() {
    const auto& cells = rows_.cells();
    cell_count_ = cells.size();
    static_cast<void>(is_whole_row(rows_, cell_count_, problems_));
    std::vector<std::string_view> seen;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (std::ranges::find(seen, cells[i].text) != seen.end()) {
        problems_.tell({.code = codes::repeated_column,
                        .at = cells[i].at,
                        .message = "The column \"" + std::string(cells[i].text) + "\" stands twice",
                        .hint = "Keep one of the two."});
        continue;
      }
      seen.push_back(cells[i].text);
      read_name(cells[i], i);
    }
    if (time_) return;
    problems_.tell({.code = codes::missing_column,
                    .at = rows_.row(),
                    .message = "The column \"time\" is missing",
                    .hint = "It holds local times such as 2027-05-31T08:00."});
  }

  void read_name(const CsvCell& cell, std::size_t place) {
    if (cell.text == time_name)
      time_ = place;
    else if (cell.text == quality_name)
      quality_ = place;
    else if (const auto it = std::ranges::find(value_columns, cell.text, &TableColumn::name);
             it != value_columns.end()) {
      columns_.push_back(
          {it->variable, std::string(it->name), unit_named(it->variable, it->unit), place});
    } else {
      tell_unknown_name(cell);
    }
  }

  void tell_unknown_name(const CsvCell& cell) {
    const std::string_view near = diagnostics::nearest(cell.text, known_names());
    std::string known;
    for (const std::string_view name : known_names())
      known += (known.empty() ? "" : ", ") + std::string(name);
    problems_.tell(
        {.code = codes::unknown_column,
         .at = cell.at,
         .message = "Nobody reads the column \"" + std::string(cell.text.substr(0, 40)) + "\"",
         .hint =
             near.empty() ? "Known: " + known + "." : "Did you mean \"" + std::string(near) + "\"?",
         .severity = diagnostics::Severity::warning});
  }

  void read_row(HourRun& run) {
    ++row_count_;
    if (!is_whole_row(rows_, cell_count_, problems_)) return run.skip();
    const auto& cells = rows_.cells();
    const Quality quality = quality_ ? quality_of(cells[*quality_]) : Quality::forecast;
    weather::Hour known;
    for (WeatherColumn& column : columns_) {
      const CsvCell& cell = cells[column.place];
      const auto si = read_value(column, {cell.text, cell.at}, problems_);
      if (si && quality != Quality::missing) set(known, column.variable, *si, quality);
    }
    check_dew_point(known, rows_.row(), problems_);
    if (!time_) return;
    const Stamp stamp{cells[*time_].text, cells[*time_].at};
    if (const auto at = hour_of(stamp, problems_))
      run.add(*at, known, stamp);
    else
      run.skip();
  }

  Quality quality_of(const CsvCell& cell) {
    if (cell.text.empty()) return Quality::forecast;
    const auto it = std::ranges::find(quality_words, cell.text, &QualityWord::word);
    if (it != quality_words.end()) return it->quality;
    problems_.tell({.code = codes::not_a_choice,
                    .at = cell.at,
                    .message = "\"" + std::string(cell.text.substr(0, 40)) +
                               "\" is none of: observed, forecast, climatology, missing"});
    return Quality::missing;
  }

  CsvRows rows_;
  WeatherProblems& problems_;
  WeatherFile& file_;
  std::size_t cell_count_ = 0;
  std::size_t row_count_ = 0;
  std::optional<std::size_t> time_, quality_;
  std::vector<WeatherColumn> columns_;
};

}  // namespace

bool is_table_header(const std::vector<CsvCell>& cells) {
  const auto names = known_names();
  return std::ranges::any_of(cells, [&](const CsvCell& cell) {
    return cell.text != quality_name && std::ranges::find(names, cell.text) != names.end();
  });
}

void read_table(WeatherReading& reading) {
  reading.file.form = WeatherForm::table;
  TableReader(reading).read();
}

}  // namespace basinwright::readers
