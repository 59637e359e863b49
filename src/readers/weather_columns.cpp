#include "weather_columns.hpp"

#include <algorithm>

#include "basinwright/units/unit.hpp"

namespace basinwright::readers {
namespace {

constexpr double most_oversaturation = 1.1;  // The form allows 110 %.

std::string pointer_of(const WeatherColumn& column, const WrittenValue& written) {
  return column.pointer.empty() ? "" : column.pointer + "/" + std::to_string(written.index);
}

void refuse_value(const WeatherColumn& column,
                  const WrittenValue& written,
                  Complaint complaint,
                  WeatherProblems& problems) {
  complaint.at = written.at;
  complaint.pointer = pointer_of(column, written);
  problems.tell(std::move(complaint));
}

void refuse_text(const WeatherColumn& column,
                 const WrittenValue& written,
                 WeatherProblems& problems) {
  refuse_value(
      column,
      written,
      {.code = codes::not_a_number,
       .message = "\"" + std::string(written.text.substr(0, 40)) + "\" is not a number",
       .hint = "Write a number with a point for its decimals, or nothing when it is not known."},
      problems);
}

const WeatherColumn* find(const std::vector<WeatherColumn>& columns, Variable variable) {
  const auto it = std::ranges::find(columns, variable, &WeatherColumn::variable);
  return it == columns.end() ? nullptr : &*it;
}

void tell_missing(std::string_view words, Span heading, WeatherProblems& problems) {
  problems.tell({.code = codes::missing_column,
                 .at = heading,
                 .message = "The file says nothing of the " + std::string(words),
                 .hint = "Hours of which it is not known are closed for painting.",
                 .severity = diagnostics::Severity::warning});
}

void tell_holes(const WeatherColumn& column, WeatherProblems& problems) {
  if (column.unknown == 0) return;
  const std::string all = grouped(column.known + column.unknown);
  problems.tell({.code = codes::no_value,
                 .at = column.first_unknown,
                 .message = "\"" + column.name + "\" has no value in " +
                            (column.known == 0 ? "any of " : grouped(column.unknown) + " of ") +
                            all + " hours, here first",
                 .hint = "What is not known is never taken for dry or mild.",
                 .severity = diagnostics::Severity::warning});
}

}  // namespace

std::optional<double> read_value(WeatherColumn& column,
                                 const WrittenValue& written,
                                 WeatherProblems& problems) {
  const auto value = finite_number(written.text);
  if (!value && !written.text.empty()) {
    refuse_text(column, written, problems);
    return {};
  }
  if (!value || *value >= column.missing_from || *value <= column.missing_to) {
    if (column.unknown++ == 0) column.first_unknown = written.at;
    return {};
  }
  ++column.known;
  if (column.unit == nullptr) return {};
  const VariableRow& row = row_of(column.variable);
  const double si = column.unit->to_si(*value);
  if (si >= row.low && si <= row.high) return si;
  if (column.may_oversaturate && si > row.high && si <= most_oversaturation) return row.high;
  refuse_value(
      column,
      written,
      {.code = codes::out_of_range,
       .message = "The " + std::string(row.words) + " lies between " + std::string(row.limits),
       .hint = "Is this the right column, and the right unit?"},
      problems);
  return {};
}

void check_dew_point(const weather::Hour& hour, Span at, WeatherProblems& problems) {
  constexpr auto rounding = units::kelvins(1.0);
  if (!hour.air || !hour.dew_point) return;
  if (hour.dew_point->value - hour.air->value <= rounding) return;
  problems.tell({.code = codes::dew_above_air,
                 .at = at,
                 .message = "The dew point lies more than a degree above the air temperature",
                 .hint = "Are the two columns the right way round?",
                 .severity = diagnostics::Severity::warning});
}

void tell_unknown(const std::vector<WeatherColumn>& columns,
                  Span heading,
                  WeatherProblems& problems) {
  const WeatherColumn* air = find(columns, Variable::air);
  const WeatherColumn* rain = find(columns, Variable::rain);
  const WeatherColumn* humidity = find(columns, Variable::humidity);
  const WeatherColumn* dew_point = find(columns, Variable::dew_point);
  const bool is_weather = air != nullptr || rain != nullptr || humidity != nullptr;
  // A file of shell readings alone belongs beside another one.
  if (!is_weather && dew_point == nullptr) return;
  if (air == nullptr) tell_missing("air temperature", heading, problems);
  if (rain == nullptr) tell_missing("rain", heading, problems);
  if (humidity == nullptr && dew_point == nullptr) tell_missing("humidity", heading, problems);
  if (air != nullptr) tell_holes(*air, problems);
  if (rain != nullptr) tell_holes(*rain, problems);
  // Either of the two is enough.
  if (humidity != nullptr && (dew_point == nullptr || dew_point->unknown > 0))
    tell_holes(*humidity, problems);
  if (dew_point != nullptr && humidity == nullptr) tell_holes(*dew_point, problems);
}

}  // namespace basinwright::readers
