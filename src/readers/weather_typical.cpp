#include "weather_typical.hpp"

#include <charconv>

#include "basinwright/units/unit.hpp"

namespace basinwright::readers {
namespace {

using weather::HourNumber;

std::optional<int> whole_number(std::string_view text) {
  int value = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc() || stop != end) return {};
  return value;
}

std::optional<HourNumber> hour_of(const TypicalTime& time, WeatherProblems& problems) {
  constexpr int hours_in_day = 24;
  const auto month = whole_number(time.month);
  const auto day = whole_number(time.day);
  const auto hour = whole_number(time.hour);
  if (month && day && hour && *hour >= 1 && *hour <= hours_in_day && *month >= 1 && *day >= 1) {
    const std::chrono::year_month_day date{std::chrono::year{typical_calendar_year},
                                           std::chrono::month{static_cast<unsigned>(*month)},
                                           std::chrono::day{static_cast<unsigned>(*day)}};
    if (date.ok()) {
      return hour_of_typical(static_cast<unsigned>(*month), static_cast<unsigned>(*day), *hour - 1);
    }
  }
  problems.tell({.code = codes::not_a_date,
                 .at = time.at,
                 .message = "This is no hour of a typical year",
                 .hint = "A month, a day of it and an hour from 1 to 24 belong here."});
  return {};
}

}  // namespace

void read_heading(const Heading& heading, WeatherReading& reading) {
  const auto fact = [&](const Fact& kind, const CsvCell& cell) {
    return read_fact(kind, {cell.text, cell.at}, reading.problems);
  };
  reading.file.latitude = fact(latitude_fact, heading.latitude);
  reading.file.longitude = fact(longitude_fact, heading.longitude);
  const auto hours = fact(hours_ahead_fact, heading.hours_ahead);
  if (hours) reading.file.ahead_of_utc = units::hours(*hours);
  const auto metres = fact(elevation_fact, heading.elevation);
  if (metres) reading.file.elevation = units::metres(*metres);
  check_clock(reading.file, {heading.hours_ahead.text, heading.hours_ahead.at}, reading.problems);
}

void TypicalRows::add(const CsvRows& rows, const TypicalTime& time) {
  ++count_;
  weather::Hour known;
  const std::optional<double> gathered = period_of(rows);
  ever_gathered_ = ever_gathered_ || gathered.has_value();
  for (WeatherColumn& column : columns_) {
    const CsvCell& cell = rows.cells()[column.place];
    const auto si = read_value(column, {cell.text, cell.at}, problems_);
    if (!si) continue;
    const bool is_rain = column.variable == Variable::rain;
    ever_rained_ = ever_rained_ || (is_rain && *si > 0.0);
    // A depth gathered over many hours is the rain of none of them.
    if (is_rain && gathered.value_or(1.0) > 1.0) {
      --column.known;
      if (column.unknown++ == 0) column.first_unknown = cell.at;
      continue;
    }
    set(known, column.variable, *si, weather::Quality::climatology);
  }
  check_dew_point(known, rows.row(), problems_);
  if (const auto at = hour_of(time, problems_)) {
    run_.add(*at, known, {{}, time.at});
  } else {
    run_.skip();
  }
}

void TypicalRows::skip() {
  ++count_;
  run_.skip();
}

std::vector<WeatherHour> TypicalRows::finish(Span heading) {
  std::vector<WeatherHour> hours = run_.finish();
  if (count_ == 0) {
    problems_.tell(
        {.code = codes::empty_list, .at = heading, .message = "There is not one hour in the file"});
  } else if (period_.place && !ever_rained_ && !ever_gathered_) {
    forget_rain(hours, heading);
  }
  tell_unknown(columns_, heading, problems_);
  return hours;
}

// Nothing when nobody noted it.
std::optional<double> TypicalRows::period_of(const CsvRows& rows) const {
  if (!period_.place) return {};
  const auto hours = finite_number(rows.cells()[*period_.place].text);
  const bool is_noted = hours && *hours > 0.0 && *hours < period_.missing_from;
  return is_noted ? hours : std::nullopt;
}

// Not a drop in any hour and no hour in which it was gathered: nobody measured it.
void TypicalRows::forget_rain(std::vector<WeatherHour>& hours, Span heading) {
  for (WeatherHour& hour : hours) hour.known.rain.reset();
  for (WeatherColumn& column : columns_) {
    if (column.variable != Variable::rain || column.known == 0) continue;
    column.unknown += column.known;
    column.known = 0;
    column.first_unknown = heading;
  }
}

}  // namespace basinwright::readers
