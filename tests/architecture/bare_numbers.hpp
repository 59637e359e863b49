// No number of the trade without its source: in the rooms that calculate, a measure or a named
// constant stands inside a `Sourced`, or is listed here with what it is instead.
#pragma once

#include <regex>
#include <set>

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

/// Constants that are no numbers of the trade: what they are, then their names.
struct PlainConstants {
  std::string_view what, names;
};
inline constexpr PlainConstants plain_constants[] = {
    {"a unit, or how many of one make another",
     "atmosphere days_a_week days_in_century grams_in_a_percent hours_a_day hours_in_day "
     "hours_of_day "
     "hundred_cubic_feet "
     "kilojoules kilolitres litres_in_cubic_metre microseconds_in_hour million seconds_in_hour "
     "seconds_in_quarter "
     "minutes_in_day minutes_in_degree quarter quarters_in_hour quarters_of_an_hour steps_in_hour "
     "tenths "
     "thousand_us_gallons"},
    {"of a printed list", "decimals most_choices"},
    {"the middle of a range, and the days of a week", "half week"},
    {"bound of a search or a guard against absurd input",
     "days_looked_at halvings hope horizons largest_cost largest_table long_horizon long_look most "
     "most_apart most_groups quarters_apart "
     "most_hours most_jobs most_kits most_listed most_painters most_people most_parts most_proven "
     "most_quarters most_tried most_tries most_weeks most_years usual_room "
     "never_done of_begun "
     "nearest_pole rounds short_horizon shorter steps"},
    {"of a machine word or its store",
     "aligned bits bytes_a_bucket digit_bits first_bytes leading more usual usual_bytes "
     "usual_steps"},
    {"where a formula or table ends",
     "formula_high formula_low least_humidity most_acid most_alkaline "
     "strong_acid_reads_to strongest strongest_liquid"},
    {"forgives the last bits of a sum",
     "chance_slack hair hair_of_kit hair_of_share hair_of_warmth no_range rounding slack splash "
     "whole_kit_slack"},
    {"of the published equations that its file names", "j2000 light_zenith rise_zenith"},
    {"a daily mean of fewer hours is none", "least_hours_of_a_day"},
    {"pH of pure water, the definition of neutral", "neutral"},
    {"tells a face across the pool from a slice of it", "hairline least_face thin"},
    {"a rule of the odds, said on their page",
     "least_years_for_p90 most_missing usual_forecast_hours"},
    {"of the clock, or of a gauge", "slots_in_day slots_in_hour tenths_in_millimetre"},
    {"a quantile of the normal distribution", "normal_975"},
    {"an index", "paint_calendar saturday work_calendar"},
    {"a way out that is tried, told with what it gives", "quarters_earlier"},
    {"20 C, at which gas volumes are stated", "room_temperature"},
};

inline bool is_plain(const std::string& name) {
  const std::string wanted = ' ' + name + ' ';
  for (const PlainConstants& group : plain_constants) {
    if ((' ' + std::string(group.names) + ' ').find(wanted) != std::string::npos) return true;
  }
  return false;
}

inline bool calculates(std::string_view path) {
  static const std::set<std::string> rooms{"materials",
                                           "weather",
                                           "preparation",
                                           "coverage",
                                           "chemistry",
                                           "purchase",
                                           "sequence",
                                           "quote",
                                           "odds",
                                           "job"};
  const auto parts = split(path, '/');
  return (parts.size() > 2 && parts[0] == "src" && rooms.contains(parts[1])) ||
         (parts.size() > 3 && parts[0] == "include" && rooms.contains(parts[2]));
}

/// Whether what follows, up to the end of the statement, names a source.
inline bool sourced_from(std::string_view code, std::size_t at) {
  const std::string_view rest = code.substr(at, code.find(';', at) - at);
  for (const std::string_view mark : {"Kind::", "usual_sheet(", "assumed_rate(", "assumed_hours("})
    if (rest.find(mark) != std::string_view::npos) return true;
  return false;
}

/// Measures written out as `hours(48)` with no source beside them. Nought, one of a unit, the
/// quarter of an hour of the grid and hairs under a millionth are no numbers of the trade.
inline Findings bare_measures(const File& file) {
  static const std::regex maker(
      R"(\b((?:milli|centi|kilo|square_|cubic_|us_|milli)?(?:metres?|litres?|grams?|feet|inches|gallons|ounces|pounds)(?:_per_\w+)?|seconds|minutes|hours|days|celsius|fahrenheit|kelvins|percent|moles_per_litre|ph)\(\s*(-?[0-9][0-9.'e+-]*))");
  const std::string code = code_only(file.text, Literals::blanked);
  Findings findings;
  for (std::sregex_iterator it(code.begin(), code.end(), maker), end; it != end; ++it) {
    std::string digits = (*it)[2].str();
    std::erase(digits, '\'');
    const double value = std::stod(digits);
    const bool grid = (*it)[1].str() == "minutes" && value == 15.0;
    if (value == 0.0 || value == 1.0 || grid || (value > 0.0 && value < 1e-6)) continue;
    const auto at = static_cast<std::size_t>(it->position());
    if (sourced_from(code, at)) continue;
    findings.push_back(file.path + ":" + std::to_string(line_at(code, at)) + ": " + (*it)[1].str() +
                       "(" + digits + ") has no source; make it a Sourced");
  }
  return findings;
}

/// Named constants of plain type that `plain_constants` does not list.
inline Findings bare_constants(const File& file) {
  static const std::regex constant(
      R"(\bconstexpr\s+(?:std::)?(?:double|float|int|auto|size_t|u?int(?:8|16|32|64)_t|HourNumber|array|(?:units::)?[A-Z]\w+(?:<[^=;{]*>)?)\s+(\w+)\s*(?:=|\{)\s*[-0-9(uTl])");
  const std::string code = code_only(file.text, Literals::blanked);
  Findings findings;
  for (std::sregex_iterator it(code.begin(), code.end(), constant), end; it != end; ++it) {
    const auto at = static_cast<std::size_t>(it->position());
    if (sourced_from(code, at) || is_plain((*it)[1].str())) continue;
    findings.push_back(file.path + ":" + std::to_string(line_at(code, at)) + ": " + (*it)[1].str() +
                       " is a constant without a source; make it a Sourced, or say in "
                       "tests/architecture/bare_numbers.hpp what else it is");
  }
  return findings;
}

inline Findings bare_numbers(const fs::path& root) {
  Findings findings;
  for (const File& file : room_code(root)) {
    if (!calculates(file.path)) continue;
    add(findings, bare_measures(file));
    add(findings, bare_constants(file));
  }
  return findings;
}

/// Figures written out in the sentences of the crew and the client.
inline Findings numbers_in_sentences(const fs::path& root) {
  static const std::set<std::string> sentences{
      "src/report/checklist_words.cpp", "src/report/client_words.cpp", "src/report/handover.cpp"};
  static const std::regex figure(R"("(?:(?:[^"\\\n]|\\.)*[ (])?[0-9](?:[^"\\\n]|\\.)*")");
  Findings findings;
  std::size_t seen = 0;
  for (const File& file : room_code(root)) {
    if (!sentences.contains(file.path)) continue;
    ++seen;
    const std::string code = code_only(file.text, Literals::kept);
    for (std::sregex_iterator it(code.begin(), code.end(), figure), end; it != end; ++it) {
      const auto at = static_cast<std::size_t>(it->position());
      findings.push_back(file.path + ":" + std::to_string(line_at(code, at)) + ": " + it->str() +
                         " holds a figure; make it a Sourced in src/report/word_figures.hpp");
    }
  }
  if (seen != sentences.size()) findings.emplace_back("a file of sentences is not where it was");
  return findings;
}

}  // namespace architecture
