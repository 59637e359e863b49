// No number of the trade without its source: in the rooms that calculate, a measure or a named
// constant stands inside a `Sourced`, or is listed here with what it is instead.
#pragma once

#include <map>
#include <regex>
#include <set>

#include "code.hpp"
#include "tree.hpp"

namespace architecture {

/// Constants that are no numbers of the trade, by name.
inline const std::map<std::string, std::string>& plain_constants() {
  static const std::string limit = "bound of a search or a guard against absurd input";
  static const std::string slack = "forgives the last bits of a sum";
  static const std::string unit = "a unit, or how many of one make another";
  static const std::string range = "where a formula or table ends";
  static const std::string equation = "of the published equations that its file names";
  static const std::map<std::string, std::string> names{
      {"atmosphere", unit},
      {"days_in_century", unit},
      {"decimals", "of a printed list"},
      {"days_looked_at", limit},
      {"digit_bits", "of a machine word"},
      {"formula_high", range},
      {"formula_low", range},
      {"grams_in_a_percent", unit},
      {"hair", slack},
      {"halvings", limit},
      {"hope", limit},
      {"horizons", limit},
      {"hours_in_day", unit},
      {"hundred_cubic_feet", unit},
      {"j2000", equation},
      {"kilojoules", unit},
      {"kilolitres", unit},
      {"largest_cost", limit},
      {"largest_table", limit},
      {"least_hours_of_a_day", "a daily mean of fewer hours is none"},
      {"least_humidity", range},
      {"light_zenith", equation},
      {"litres_in_cubic_metre", unit},
      {"leading", "of a machine word"},
      {"microseconds_in_hour", unit},
      {"million", unit},
      {"minutes_in_day", unit},
      {"minutes_in_degree", unit},
      {"most", limit},
      {"most_acid", range},
      {"most_alkaline", range},
      {"most_groups", limit},
      {"most_hours", limit},
      {"most_kits", limit},
      {"most_listed", limit},
      {"most_painters", limit},
      {"most_parts", limit},
      {"most_tries", limit},
      {"most_years", limit},
      {"nearest_pole", limit},
      {"neutral", "pH of pure water, the definition of neutral"},
      {"normal_975", "a quantile of the normal distribution"},
      {"paint_calendar", "an index"},
      {"quarters_earlier", "a way out that is tried, told with what it gives"},
      {"quarters_in_hour", unit},
      {"quarters_of_an_hour", unit},
      {"rise_zenith", equation},
      {"room_temperature", "20 C, at which gas volumes are stated"},
      {"rounding", slack},
      {"rounds", limit},
      {"saturday", "an index"},
      {"shorter", limit},
      {"slack", slack},
      {"steps", limit},
      {"steps_in_hour", unit},
      {"strong_acid_reads_to", range},
      {"strongest", range},
      {"strongest_liquid", range},
      {"thousand_us_gallons", unit},
      {"whole_kit_slack", slack},
      {"work_calendar", "an index"}};
  return names;
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

/// Named constants of plain type that `plain_constants` does not know.
inline Findings bare_constants(const File& file) {
  static const std::regex constant(
      R"(\bconstexpr\s+(?:std::)?(?:double|float|int|auto|size_t|u?int(?:8|16|32|64)_t|HourNumber|array|(?:units::)?[A-Z]\w+(?:<[^=;{]*>)?)\s+(\w+)\s*(?:=|\{)\s*[-0-9(uTl])");
  const std::string code = code_only(file.text, Literals::blanked);
  Findings findings;
  for (std::sregex_iterator it(code.begin(), code.end(), constant), end; it != end; ++it) {
    const auto at = static_cast<std::size_t>(it->position());
    if (sourced_from(code, at) || plain_constants().contains((*it)[1].str())) continue;
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

}  // namespace architecture
