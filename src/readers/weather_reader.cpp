#include <algorithm>

#include "weather_forms.hpp"

namespace basinwright::readers {
namespace {

constexpr std::size_t most_mebibytes = 64;

// Forty years of hours in one list.
constexpr JsonLimits forecast_limits{.bytes = most_mebibytes << 20U, .items = 400'000};

/// Whether the file can be looked into at all.
bool is_text(const SourceText& source, WeatherProblems& problems) {
  const std::string& bytes = source.bytes();
  const auto bad = first_bad_byte(bytes);
  if (!bad) return true;
  problems.tell(
      {.code = codes::not_text,
       .at = {*bad, *bad + 1},
       .message = bytes[*bad] == '\0' ? "A NUL byte stands in the file" : "This is not valid UTF-8",
       .hint = "Save the file as UTF-8 text."});
  return false;
}

void refuse_form(const SourceText& source, WeatherProblems& problems) {
  const std::string_view bytes = source.bytes();
  const std::size_t begin = std::min(mark_size(bytes), bytes.size());
  const std::size_t end = std::min(bytes.find_first_of("\r\n", begin), bytes.size());
  const bool is_empty = bytes.find_first_not_of(" \t\r\n", begin) == std::string_view::npos;
  const bool has_semicolons = bytes.substr(begin, end - begin).find(';') != std::string_view::npos;
  problems.tell(
      {.code = codes::not_a_weather_file,
       .at = {begin, end},
       .message = is_empty ? "The file is empty" : "This is no weather file that is known",
       .hint = has_semicolons ? "Separate values by commas and write decimals with a point."
                              : "Known: hourly forecast (JSON), CSV that begins time,air_temp_c, "
                                "or date,temp_max_c, "
                                "EPW, TMY3."});
}

void read_json(WeatherReading& reading, diagnostics::Problems& problems) {
  Node root;
  if (parse_json(reading.source, root, problems, forecast_limits)) read_forecast(root, reading);
}

void read_form(WeatherReading& reading, diagnostics::Problems& problems) {
  const std::string_view bytes = reading.source.bytes();
  const std::size_t begin = mark_size(bytes);
  const std::size_t first = bytes.find_first_not_of(" \t\r\n", begin);
  if (first != std::string_view::npos && (bytes[first] == '{' || bytes[first] == '[')) {
    return read_json(reading, problems);
  }
  if (bytes.substr(begin).starts_with("LOCATION,")) return read_epw(reading);
  CsvRows rows(bytes, begin);
  if (rows.next()) {
    if (is_days_header(rows.cells())) return read_days(reading);
    if (is_table_header(rows.cells())) return read_table(reading);
  }
  if (rows.next() && is_tmy3_header(rows.cells())) return read_tmy3(reading);
  refuse_form(reading.source, reading.problems);
}

}  // namespace

std::string_view name(WeatherForm form) {
  switch (form) {
    case WeatherForm::columns:
      return "an hourly forecast (JSON)";
    case WeatherForm::table:
      return "a table of hours (CSV)";
    case WeatherForm::days:
      return "a table of days (CSV)";
    case WeatherForm::epw:
      return "a typical year (EPW)";
    case WeatherForm::tmy3:
      return "a typical year (TMY3)";
  }
  return "";
}

std::optional<WeatherFile> read_weather(const Input& input, diagnostics::Problems& problems) {
  const bool is_too_large = input.bytes.size() > most_mebibytes << 20U;
  const SourceText source(input.name, is_too_large ? std::string() : input.bytes);
  diagnostics::Problems found;
  WeatherProblems told(source, found);
  WeatherFile file;
  file.name = input.name;
  WeatherReading reading{source, told, file};
  if (is_too_large) {
    told.tell(
        {.code = codes::too_large, .at = {0, 0}, .message = "The file is larger than 64 MiB"});
  } else if (is_text(source, told)) {
    read_form(reading, found);
  }
  told.finish();
  problems.append(found);
  if (found.has_errors()) return {};
  file.quality = best_quality(file.hours);
  return file;
}

std::optional<WeatherFile> read_past_weather(const Input& input, diagnostics::Problems& problems) {
  diagnostics::Problems found;
  auto file = read_weather(input, found);
  if (!file || !file->is_typical_year()) {
    problems.append(found);
    return file;
  }
  const SourceText source(input.name, input.bytes);
  WeatherProblems(source, problems)
      .tell({.code = codes::typical_year,
             .at = {0, std::min(input.bytes.find_first_of("\r\n"), input.bytes.size())},
             .message = "A typical year cannot be replayed as a past one",
             .hint = "Give --years files of hours or days with their own dates."});
  return {};
}

}  // namespace basinwright::readers
