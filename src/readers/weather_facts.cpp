#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "weather_forms.hpp"

namespace basinwright::readers {
namespace {

template <class T>
void raise(weather::Quality& best, const std::optional<weather::Reading<T>>& reading) {
  if (reading) best = std::max(best, reading->quality);
}

std::string short_number(double value) {
  std::string text = std::to_string(std::lround(value));
  return text;
}

}  // namespace

weather::Quality best_quality(const std::vector<WeatherHour>& hours) {
  weather::Quality best = weather::Quality::missing;
  for (const WeatherHour& hour : hours) {
    raise(best, hour.known.air);
    raise(best, hour.known.dew_point);
    raise(best, hour.known.shell);
    raise(best, hour.known.humidity);
    raise(best, hour.known.rain);
    raise(best, hour.known.wind);
    raise(best, hour.known.cloud);
  }
  return best;
}

bool is_whole_row(const CsvRows& rows, std::size_t cells, WeatherProblems& problems) {
  if (rows.bad_quote()) {
    problems.tell({.code = codes::broken_quotes,
                   .at = *rows.bad_quote(),
                   .message = "A quotation mark is not closed or stands where none may",
                   .hint = "A cell is quoted whole or not at all; a mark inside is doubled."});
    return false;
  }
  const std::size_t found = rows.cells().size();
  if (found == cells) return true;
  problems.tell({.code = codes::wrong_number_of_values,
                 .at = rows.row(),
                 .message = "This row has " + grouped(found) + " values, but " + grouped(cells) +
                            " belong here",
                 .hint = "Is it cut off, or are decimals written with a comma?"});
  return false;
}

std::optional<double> read_fact(const Fact& fact, const Stamp& written, WeatherProblems& problems) {
  const auto value = finite_number(written.text);
  if (value && *value >= fact.low && *value <= fact.high) return value;
  const std::string words(fact.words);
  problems.tell({.code = value ? codes::out_of_range : codes::not_a_number,
                 .at = written.at,
                 .pointer = written.pointer(),
                 .message = value ? words + " lies between " + short_number(fact.low) + " and " +
                                        short_number(fact.high)
                                  : words + " is a number"});
  return {};
}

void check_clock(const WeatherFile& file, const Stamp& offset, WeatherProblems& problems) {
  if (!file.longitude || !file.ahead_of_utc) return;
  // The sun moves 15 degrees in an hour. Clocks kept on land differ from it by three hours at most
  // (common practice: the far west of China, Galicia in summer).
  constexpr double degrees_in_hour = 15.0;
  constexpr double most_hours = 3.5;
  const double by_clock = file.ahead_of_utc->in(units::hours);
  if (std::abs(by_clock - *file.longitude / degrees_in_hour) <= most_hours) return;
  problems.tell({.code = codes::offset_unlikely,
                 .at = offset.at,
                 .pointer = offset.pointer(),
                 .message = "No clock at this longitude is so far from the sun",
                 .hint = "Ask for the hours in local time, not in UTC.",
                 .severity = diagnostics::Severity::warning});
}

}  // namespace basinwright::readers
