#include "basinwright/units/parse.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "basinwright/units/unit.hpp"
#include "scan.hpp"

namespace basinwright::units {
namespace {

constexpr Measure length{"length", Kind::length, Kind::none, "", "9.2 m"};
constexpr Measure area{"area", Kind::area, Kind::none, "", "42 m2"};
constexpr Measure volume{"volume", Kind::volume, Kind::none, "", "20 L"};
constexpr Measure mass{"mass", Kind::mass, Kind::none, "", "25 kg"};
constexpr Measure duration{"time", Kind::duration, Kind::none, "", "24 h"};
constexpr Measure temperature{"temperature", Kind::degree, Kind::none, "", "18 C"};
constexpr Measure temperature_difference{
    "temperature difference", Kind::degree, Kind::none, "", "3 K"};
constexpr Measure share{"share", Kind::share, Kind::none, "", "12 %"};
constexpr Measure flow{
    "flow", Kind::volume, Kind::duration, "L/min, m3/h or US gal/min", "20 L/min"};
constexpr Measure work_rate{"work rate", Kind::area, Kind::duration, "m2/h or ft2/h", "25 m2/h"};
constexpr Measure edge_rate{"edge rate", Kind::length, Kind::duration, "m/h or ft/h", "30 m/h"};
constexpr Measure speed{"speed", Kind::length, Kind::duration, "m/s, km/h or mi/h", "8 m/s"};
constexpr Measure spreading_rate{
    "spreading rate", Kind::area, Kind::volume, "m2/L or ft2/US gal", "6 m2/L"};
constexpr Measure application_rate{
    "application rate", Kind::volume, Kind::area, "L/m2 or US gal/ft2", "0.2 L/m2"};
constexpr Measure concentration{
    "concentration", Kind::mass, Kind::volume, "g/L, mg/L or kg/m3", "120 g/L"};

/// A quantity in SI, and its last unit when that stands in a table.
struct Reading {
  double si = 0.0;
  const UnitName* name = nullptr;
};

ParseError trailing(const Scanner& scanner) {
  const std::string_view rest = scanner.rest();
  const bool sign = rest.starts_with('-') || rest.starts_with('+');
  return {scanner.offset(),
          "unexpected text after the unit",
          sign ? "only the first part may carry a sign" : "",
          false};
}

/// The parts of one quantity, each in a smaller unit than the part before.
class Parts {
 public:
  explicit Parts(const Measure& measure) : measure_(measure) {}

  /// Reads one part; whether there may be another.
  [[nodiscard]] Parsed<bool> add(Scanner& scanner) {
    const std::size_t start = scanner.offset();
    if (count_ > 0 && !scanner.at_number()) return trailing(scanner);
    const auto number = scanner.number();
    if (const auto* error = std::get_if<ParseError>(&number)) return *error;
    scanner.skip_blanks();
    const auto unit = read_unit(scanner, measure_);
    if (const auto* error = std::get_if<ParseError>(&unit)) return *error;
    const UnitRead& read = std::get<UnitRead>(unit);
    if (!(read.factor < smallest_)) {
      return ParseError{start, "parts run from the larger unit to the smaller", "", false};
    }
    const auto& [magnitude, negative] = std::get<Scanner::Number>(number);
    if (count_++ == 0) negative_ = negative;
    smallest_ = read.factor;
    sum_ += magnitude * read.factor;
    name_ = read.name;
    scanner.skip_blanks();
    return !scanner.rest().empty();
  }

  [[nodiscard]] Reading reading() const { return {negative_ ? 0.0 - sum_ : sum_, name_}; }

 private:
  const Measure& measure_;
  double sum_ = 0.0;
  double smallest_ = std::numeric_limits<double>::infinity();
  bool negative_ = false;
  int count_ = 0;
  const UnitName* name_ = nullptr;
};

Parsed<Reading> read(std::string_view text, const Measure& measure) {
  Scanner scanner(text);
  scanner.skip_blanks();
  Parts parts(measure);
  const bool single = measure.kind == Kind::degree || measure.kind == Kind::share;
  for (bool more = true; more;) {
    const auto part = parts.add(scanner);
    if (const auto* error = std::get_if<ParseError>(&part)) return *error;
    more = std::get<bool>(part);
    if (more && single) return trailing(scanner);
  }
  const Reading out = parts.reading();
  if (!std::isfinite(out.si)) return ParseError{0, "the number is too large", "", false};
  return out;
}

template <class Q>
Parsed<Q> quantity(std::string_view text, const Measure& measure) {
  const auto reading = read(text, measure);
  if (const auto* error = std::get_if<ParseError>(&reading)) return *error;
  return Q::from_si(std::get<Reading>(reading).si);
}

}  // namespace

Parsed<double> parse_number(std::string_view text) {
  Scanner scanner(text);
  const auto number = scanner.number();
  if (const auto* error = std::get_if<ParseError>(&number)) return *error;
  if (!scanner.rest().empty()) {
    return ParseError{scanner.offset(), "unexpected text after the number", "", false};
  }
  const auto& [magnitude, negative] = std::get<Scanner::Number>(number);
  return negative ? 0.0 - magnitude : magnitude;
}

Parsed<Length> parse_length(std::string_view text) {
  return quantity<Length>(text, length);
}

Parsed<Area> parse_area(std::string_view text) {
  return quantity<Area>(text, area);
}

Parsed<Volume> parse_volume(std::string_view text) {
  return quantity<Volume>(text, volume);
}

Parsed<Mass> parse_mass(std::string_view text) {
  return quantity<Mass>(text, mass);
}

Parsed<Duration> parse_duration(std::string_view text) {
  return quantity<Duration>(text, duration);
}

Parsed<Flow> parse_flow(std::string_view text) {
  return quantity<Flow>(text, flow);
}

Parsed<Temperature> parse_temperature(std::string_view text) {
  const auto reading = read(text, temperature);
  if (const auto* error = std::get_if<ParseError>(&reading)) return *error;
  const auto& [si, name] = std::get<Reading>(reading);
  const double zero = name->symbol == celsius.symbol      ? celsius.zero
                      : name->symbol == fahrenheit.symbol ? fahrenheit.zero
                                                          : 0.0;
  const Temperature point = Temperature::from_si(zero + si);
  if (point < Temperature::from_si(0.0)) {
    return ParseError{0, "a temperature below absolute zero", "", false};
  }
  return point;
}

Parsed<TemperatureDifference> parse_temperature_difference(std::string_view text) {
  return quantity<TemperatureDifference>(text, temperature_difference);
}

Parsed<WorkRate> parse_work_rate(std::string_view text) {
  return quantity<WorkRate>(text, work_rate);
}

Parsed<EdgeRate> parse_edge_rate(std::string_view text) {
  return quantity<EdgeRate>(text, edge_rate);
}

Parsed<Speed> parse_speed(std::string_view text) {
  return quantity<Speed>(text, speed);
}

Parsed<SpreadingRate> parse_spreading_rate(std::string_view text) {
  return quantity<SpreadingRate>(text, spreading_rate);
}

Parsed<ApplicationRate> parse_application_rate(std::string_view text) {
  return quantity<ApplicationRate>(text, application_rate);
}

Parsed<Concentration> parse_concentration(std::string_view text) {
  return quantity<Concentration>(text, concentration);
}

Parsed<Fraction> parse_fraction(std::string_view text) {
  const auto reading = read(text, share);
  if (const auto* error = std::get_if<ParseError>(&reading)) return *error;
  return percent(std::get<Reading>(reading).si);
}

}  // namespace basinwright::units
