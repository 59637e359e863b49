#include <fmt/format.h>
#include <algorithm>
#include <cctype>
#include <cmath>
#include <stdexcept>
#include <type_traits>

#include "basinwright/units/bare.hpp"
#include "basinwright/units/spellings.hpp"
#include "measures.hpp"
#include "view.hpp"

namespace basinwright::readers {
namespace {

// Which parser reads a quantity with its unit, and what a bare number of it means.
template <class Q>
struct Reading;

template <class Q, units::Parsed<Q> (*Parse)(std::string_view), Q (*Bare)(double, units::System)>
struct ReadingOf {
  static units::Parsed<Q> parse(std::string_view text) { return Parse(text); }
  static Q bare(double v, units::System s) { return Bare(v, s); }
};

units::Duration bare_hours(double v, units::System) {
  return units::hours(v);
}
units::Fraction bare_share(double v, units::System) {
  return units::fraction(v);
}
units::EdgeRate bare_edge_rate(double v, units::System s) {
  return s == units::System::us ? units::feet(v) / units::hours(1) : units::metres_per_hour(v);
}
units::Speed bare_speed(double v, units::System s) {
  return s == units::System::us ? units::miles_per_hour(v) : units::metres_per_second(v);
}
units::SpreadingRate bare_spreading(double v, units::System s) {
  return s == units::System::us ? units::square_feet_per_us_gallon(v)
                                : units::square_metres_per_litre(v);
}
units::ApplicationRate bare_application(double v, units::System s) {
  return s == units::System::us ? units::us_gallons_per_square_foot(v)
                                : units::litres_per_square_metre(v);
}
units::Concentration bare_concentration(double v, units::System) {
  return units::grams_per_litre(v);
}

using namespace units;
template <>
struct Reading<Length> : ReadingOf<Length, parse_length, bare_length> {};
template <>
struct Reading<Area> : ReadingOf<Area, parse_area, bare_area> {};
template <>
struct Reading<Volume> : ReadingOf<Volume, parse_volume, bare_volume> {};
template <>
struct Reading<Mass> : ReadingOf<Mass, parse_mass, bare_mass> {};
template <>
struct Reading<Duration> : ReadingOf<Duration, parse_duration, bare_hours> {};
template <>
struct Reading<Flow> : ReadingOf<Flow, parse_flow, bare_flow> {};
template <>
struct Reading<Temperature> : ReadingOf<Temperature, parse_temperature, bare_temperature> {};
template <>
struct Reading<TemperatureDifference>
    : ReadingOf<TemperatureDifference, parse_temperature_difference, bare_temperature_difference> {
};
template <>
struct Reading<WorkRate> : ReadingOf<WorkRate, parse_work_rate, bare_work_rate> {};
template <>
struct Reading<EdgeRate> : ReadingOf<EdgeRate, parse_edge_rate, bare_edge_rate> {};
template <>
struct Reading<SpreadingRate> : ReadingOf<SpreadingRate, parse_spreading_rate, bare_spreading> {};
template <>
struct Reading<Concentration> : ReadingOf<Concentration, parse_concentration, bare_concentration> {
};
template <>
struct Reading<Fraction> : ReadingOf<Fraction, parse_fraction, bare_share> {};

// A volume on an area has the dimension of a length, a speed that of an edge rate; the row says
// which of the two is meant.
template <class Q>
Q bare_of(const Field& field, double v, System s) {
  if constexpr (std::is_same_v<Q, Length>) {
    if (field.type == Type::application_rate) return bare_application(v, s);
  }
  if constexpr (std::is_same_v<Q, Speed>) {
    if (field.type == Type::speed) return bare_speed(v, s);
  }
  return Reading<Q>::bare(v, s);
}

template <class Q>
Parsed<Q> parse_of(const Field& field, std::string_view text) {
  if constexpr (std::is_same_v<Q, Length>) {
    if (field.type == Type::application_rate) return parse_application_rate(text);
  }
  if constexpr (std::is_same_v<Q, Speed>) {
    if (field.type == Type::speed) return parse_speed(text);
  }
  return Reading<Q>::parse(text);
}

// The unit that was meant: the nearest spelling with which the text can be read.
template <class Q>
std::string meant_unit(const Field& field, const std::string& text, const ParseError& error) {
  const std::size_t begin = std::min(error.offset, text.size());
  const std::size_t end = std::min(text.find_first_of(" /", begin), text.size());
  if (begin == end) return "";
  const std::string before = text.substr(0, begin);
  const std::string after = text.substr(end);
  std::vector<std::string_view> known;
  for (const std::string_view spelling : unit_spellings()) {
    const auto read = parse_of<Q>(field, before + std::string(spelling) + after);
    if (std::holds_alternative<Q>(read)) known.push_back(spelling);
  }
  return std::string(diagnostics::nearest(text.substr(begin, end - begin), known));
}

template <class Q>
double si_of(const Q& q) {
  if constexpr (std::is_same_v<Q, Fraction>) {
    return q.share();
  } else {
    return q.si();
  }
}

// NaN and infinity are texts people's programs write; they deserve their own word.
bool names_no_number(std::string_view text) {
  std::string low;
  for (const char c : text) low += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  if (low.starts_with('-') || low.starts_with('+')) low.erase(0, 1);
  return low.starts_with("nan") || low.starts_with("inf");
}

}  // namespace

double least_of(const Field& field) {
  if (!field.above_low || field.low != 0.0) return field.low;
  switch (field.type == Type::list ? field.element : field.type) {
    case Type::length:
      return 1e-5;
    case Type::area:
      return 1e-4;
    case Type::volume:
      return 1e-6;
    case Type::duration:
      return 36.0;
    case Type::flow:
      return litres_per_minute(0.1).si();
    case Type::fraction:
      return 1e-4;
    case Type::work_rate:
      return square_metres_per_hour(0.01).si();
    case Type::edge_rate:
      return metres_per_hour(0.01).si();
    case Type::speed:
      return 0.1;
    case Type::spreading_rate:
      return square_metres_per_litre(0.1).si();
    case Type::application_rate:
      return litres_per_square_metre(0.001).si();
    case Type::concentration:
      return grams_per_litre(0.01).si();
    case Type::number:
      return 1e-3;
    default:
      return 0.0;
  }
}

std::string limit_words(const Field& field, double si) {
  switch (field.type) {
    case Type::length:
      return si > 0.0 && si < 1e-3 ? fmt::format("{:g} mm", si * 1e3) : fmt::format("{:g} m", si);
    case Type::area:
      return fmt::format("{:g} m2", si);
    case Type::volume:
      return fmt::format("{:g} L", si * 1000.0);
    case Type::temperature:
      return fmt::format("{:g} C", si - celsius(0).si());
    case Type::temperature_difference:
      return fmt::format("{:g} C", si);
    case Type::duration:
      return fmt::format("{:g} h", si / hours(1).si());
    case Type::flow:
      return fmt::format("{:g} L/min", Flow::from_si(si).in(litres_per_minute));
    case Type::fraction:
      return fmt::format("{:g} %", fraction(si).in_percent());
    case Type::work_rate:
      return fmt::format("{:g} m2/h", WorkRate::from_si(si).in(square_metres_per_hour));
    case Type::edge_rate:
      return fmt::format("{:g} m/h", EdgeRate::from_si(si).in(metres_per_hour));
    case Type::speed:
      return fmt::format("{:g} m/s", si);
    case Type::spreading_rate:
      return fmt::format("{:g} m2/L", SpreadingRate::from_si(si).in(square_metres_per_litre));
    case Type::application_rate:
      return fmt::format("{:g} L/m2", ApplicationRate::from_si(si).in(litres_per_square_metre));
    case Type::concentration:
      return fmt::format("{:g} g/L", Concentration::from_si(si).in(grams_per_litre));
    case Type::list:
      return fmt::format("{:g} m", si);
    default:
      return fmt::format("{:g}", si);
  }
}

std::pair<Code, std::string> outside(const Field& field, double si) {
  if (field.low == 0.0 && field.above_low && si <= 0.0) {
    return {codes::not_positive, fmt::format("\"{}\" must be more than 0", field.key)};
  }
  if (field.low == 0.0 && si < 0.0) {
    return {codes::negative, fmt::format("\"{}\" must not be negative", field.key)};
  }
  if (si <= field.low || si < least_of(field)) {
    return {codes::out_of_range,
            fmt::format("\"{}\" is at least {}", field.key, limit_words(field, least_of(field)))};
  }
  return {codes::out_of_range,
          fmt::format("\"{}\" is at most {}", field.key, limit_words(field, field.high))};
}

template <class Q>
std::optional<Q> View::parse(const Field& field, const Node& at, const Where& where) {
  const auto parsed = parse_of<Q>(field, at.text);
  if (const Q* value = std::get_if<Q>(&parsed)) return *value;
  const auto& error = std::get<ParseError>(parsed);
  const bool no_number = names_no_number(at.text);
  const Code code = no_number          ? codes::not_finite
                    : error.wrong_unit ? codes::wrong_unit
                                       : codes::not_a_measure;
  const std::string meant = error.wrong_unit ? meant_unit<Q>(field, at.text, error) : std::string();
  context_->report(
      code,
      at,
      where.pointer(),
      fmt::format("\"{}\": {}", at.text, no_number ? "this is no number" : error.reason),
      meant.empty() ? error.hint : fmt::format("did you mean {}? {}", meant, error.hint));
  return {};
}

template <class Q>
std::optional<Q> View::read(const Field& field, const Node& at, const Where& where) {
  std::optional<Q> value;
  if (at.kind == Node::Kind::number) {
    if (const auto number = number_of(at, where))
      value = bare_of<Q>(field, *number, context_->system);
  } else if (at.kind == Node::Kind::text) {
    value = parse<Q>(field, at, where);
  } else {
    context_->report(
        codes::wrong_type,
        at,
        where.pointer(),
        fmt::format("\"{}\" is {}, but a measure belongs here", field.key, words(at.kind)),
        "Write a number, or a text with its unit such as \"9.2 m\".");
  }
  if (!value || !within(field, si_of(*value), at, where)) return {};
  return value;
}

template <class Q>
std::optional<Q> View::measure(std::string_view key) {
  const Field& field = row(key);
  const Node* at = node_->find(key);
  return at == nullptr ? std::nullopt : read<Q>(field, *at, Where(*this, key));
}

template <class Q>
void View::set(std::string_view key, sources::Sourced<Q>& target) {
  if (const auto value = measure<Q>(key)) {
    target = {*value, {sources::Kind::given, "", context_->keep(pointer(key))}};
  }
}

template <class Q>
std::vector<Q> View::measures(std::string_view key) {
  std::vector<Q> out;
  const Node* at = of_kind(key, Node::Kind::list);
  if (at == nullptr) return out;
  for (std::size_t i = 0; i < at->items.size(); ++i) {
    const auto value = read<Q>(row(key), at->items[i], Where(*this, key, i));
    if (value) out.push_back(*value);
  }
  return out;
}

std::optional<money::Percentage> View::percentage(std::string_view key) {
  const auto share = measure<Fraction>(key);
  if (!share) return {};
  const double count = share->share() * static_cast<double>(money::whole);
  if (std::abs(count - std::round(count)) > 1e-6) {
    fail(*node(key),
         key,
         codes::out_of_range,
         fmt::format("\"{}\" goes down to ten-thousandths of a percent", key),
         fmt::format("Write {:.4f} %.", count * 100.0 / money::whole));
    return {};
  }
  return money::Percentage{std::llround(count)};
}

#define BASINWRIGHT_READS(Q)                                          \
  template std::optional<Q> View::measure<Q>(std::string_view);       \
  template void View::set<Q>(std::string_view, sources::Sourced<Q>&); \
  template std::vector<Q> View::measures<Q>(std::string_view);

BASINWRIGHT_READS(Length)
BASINWRIGHT_READS(Area)
BASINWRIGHT_READS(Volume)
BASINWRIGHT_READS(Mass)
BASINWRIGHT_READS(Duration)
BASINWRIGHT_READS(Flow)
BASINWRIGHT_READS(Temperature)
BASINWRIGHT_READS(TemperatureDifference)
BASINWRIGHT_READS(WorkRate)
BASINWRIGHT_READS(EdgeRate)
BASINWRIGHT_READS(SpreadingRate)
BASINWRIGHT_READS(Concentration)
BASINWRIGHT_READS(Fraction)

#undef BASINWRIGHT_READS

}  // namespace basinwright::readers
