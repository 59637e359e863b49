#include "scan.hpp"

#include <algorithm>
#include <charconv>
#include <string>
#include <system_error>

namespace basinwright::units {
namespace {

constexpr std::string_view minus_sign = "\u2212";

bool begins_number(std::string_view text) {
  if (text.starts_with('.')) text.remove_prefix(1);
  return !text.empty() && digit(text.front());
}

std::string joined(std::span<const UnitName> names) {
  constexpr std::size_t most = 5;
  std::string out;
  std::size_t count = 0;
  for (const UnitName& name : names) {
    if (!name.instead.empty() || count == most) continue;
    out += (count++ == 0 ? "" : ", ");
    out += name.symbol;
  }
  const std::size_t comma = out.rfind(", ");
  return comma == std::string::npos ? out : out.replace(comma, 2, " or ");
}

std::string unit_hint(const Measure& wanted) {
  const std::string units =
      wanted.per == Kind::none ? joined(names_of(wanted.kind)) : std::string(wanted.units);
  return "write it like " + std::string(wanted.example) + " (units: " + units + ")";
}

std::string_view noun(Kind kind) {
  switch (kind) {
    case Kind::length:
      return "length";
    case Kind::area:
      return "area";
    case Kind::volume:
      return "volume";
    case Kind::mass:
      return "mass";
    case Kind::duration:
      return "time";
    case Kind::degree:
      return "temperature";
    case Kind::share:
      return "share";
    case Kind::none:
      break;
  }
  return "";
}

/// The piece of text at which a reader would point: up to the next blank.
std::string word(std::string_view rest) {
  constexpr std::size_t longest = 24;
  std::size_t end = 0;
  while (end < rest.size() && blank_length(rest.substr(end)) == 0) ++end;
  if (end <= longest) return std::string(rest.substr(0, end));
  end = longest;
  const auto inside = [&] { return (static_cast<unsigned char>(rest[end]) & 0xC0U) == 0x80U; };
  while (end > 0 && inside()) --end;
  return std::string(rest.substr(0, end)) + "...";
}

ParseError missing_unit(std::string_view rest, std::size_t offset, const Measure& measure) {
  const std::string hint = rest.empty() ? unit_hint(measure)
                                        : "write a unit after every number, thousands without a "
                                          "blank and fractions as decimals (6.5 in)";
  return {offset, "the unit is missing", hint, true};
}

ParseError unknown_unit(const Scanner& scanner, Kind wanted, const Measure& measure) {
  const std::string_view rest = scanner.rest();
  if (rest.empty() || begins_number(rest)) return missing_unit(rest, scanner.offset(), measure);
  const NameMatch similar = match_name(rest, wanted, Case::ignored);
  // The unit below a bar may be of any kind, and then nothing similar is of that kind either.
  const bool known = similar.name != nullptr && similar.kind == wanted;
  const std::string hint = known
                               ? "capitals matter here: write " + std::string(similar.name->symbol)
                               : unit_hint(measure);
  return {scanner.offset(), "unknown unit '" + word(rest) + "'", hint, true};
}

ParseError wrong_kind(std::string_view name, std::size_t offset, Kind kind, const Measure& wanted) {
  const std::string quoted = std::string("'").append(name).append("'");
  const std::string wanted_noun(wanted.noun);
  const std::string reason =
      kind == Kind::none
          ? quoted + " is no unit of " + wanted_noun
          : quoted + " is a unit of " + std::string(noun(kind)) + ", not of " + wanted_noun;
  return {offset, reason, unit_hint(wanted), true};
}

/// One unit name; an ambiguous or unknown one is an error.
Parsed<NameMatch> read_name(Scanner& scanner, Kind wanted, const Measure& measure) {
  const std::size_t offset = scanner.offset();
  const NameMatch match = match_name(scanner.rest(), wanted, Case::as_listed);
  if (match.name == nullptr) return unknown_unit(scanner, wanted, measure);
  if (!match.name->instead.empty()) {
    const std::string said(scanner.rest().substr(0, match.length));
    return ParseError{offset,
                      "'" + said + "' alone has several meanings",
                      "write " + std::string(match.name->instead),
                      true};
  }
  scanner.skip(match.length);
  return match;
}

/// Moves past `/` or `per` between two unit names.
bool read_bar(Scanner& scanner) {
  Scanner ahead = scanner;
  ahead.skip_blanks();
  const bool slash = ahead.rest().starts_with('/');
  const bool per = ahead.rest().starts_with("per") && blank_length(ahead.rest().substr(3)) > 0;
  if (!slash && !per) return false;
  ahead.skip(slash ? 1 : 3);
  ahead.skip_blanks();
  scanner = ahead;
  return true;
}

}  // namespace

void Scanner::skip_blanks() {
  while (const std::size_t blank = blank_length(rest())) skip(blank);
}

bool Scanner::at_number() const {
  return begins_number(rest());
}

Parsed<Scanner::Number> Scanner::number() {
  Number out;
  const std::size_t start = at_;
  if (rest().starts_with('-') || rest().starts_with('+')) {
    out.negative = rest().front() == '-';
    skip(1);
  }
  if (!at_number()) {
    at_ = start;
    const bool typeset = rest().starts_with(minus_sign);
    return ParseError{start,
                      rest().empty() ? "a number is missing" : "a number is expected here",
                      typeset ? "write the minus sign as -" : "begin with a number such as 12.5",
                      false};
  }
  const char* const first = rest().data();
  const char* const last = first + rest().size();
  const auto [end, fault] = std::from_chars(first, last, out.magnitude);
  if (fault != std::errc{}) {
    return ParseError{start, "the number is too large or too small", "", false};
  }
  skip(static_cast<std::size_t>(end - first));
  const bool comma = rest().starts_with(',');
  if (comma) {
    return ParseError{at_,
                      "a comma within a number",
                      "write decimals with a point (9.2) and thousands without a mark (1200)",
                      false};
  }
  return out;
}

Parsed<UnitRead> read_unit(Scanner& scanner, const Measure& wanted) {
  const std::size_t offset = scanner.offset();
  const std::string_view from = scanner.rest();
  const auto upper = read_name(scanner, wanted.kind, wanted);
  if (const auto* error = std::get_if<ParseError>(&upper)) return *error;
  const NameMatch& over = std::get<NameMatch>(upper);
  UnitRead out{over.name->factor, over.name};
  Kind per = Kind::none;
  if (read_bar(scanner)) {
    const auto lower = read_name(scanner, wanted.per, wanted);
    if (const auto* error = std::get_if<ParseError>(&lower)) return *error;
    per = std::get<NameMatch>(lower).kind;
    out = {out.factor / std::get<NameMatch>(lower).name->factor, nullptr};
  }
  if (over.kind == wanted.kind && per == wanted.per) return out;
  const std::string_view said = from.substr(0, scanner.offset() - offset);
  return wrong_kind(said, offset, per == Kind::none ? over.kind : Kind::none, wanted);
}

}  // namespace basinwright::units
