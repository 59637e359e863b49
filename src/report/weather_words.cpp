#include "weather_words.hpp"

#include <fmt/format.h>
#include <array>

#include "basinwright/units/show.hpp"

namespace basinwright::report {
namespace {

using sequence::Constraint;
using sequence::Hardener;
using sequence::WayOut;
using sequence::WeatherBasis;
using weather::Rule;

struct RuleWords {
  std::string_view what;
  std::string_view limit;  ///< How the limit is said; empty: it is not.
};

RuleWords gate_words(Rule rule) {
  switch (rule) {
    case Rule::air_min:
      return {"air", "at least"};
    case Rule::air_max:
      return {"air", "at most"};
    case Rule::shell_min:
      return {"shell", "at least"};
    case Rule::shell_max:
      return {"shell", "at most"};
    case Rule::dew_margin:
      return {"dew margin", "at least"};
    case Rule::humidity:
      return {"humidity", "at most"};
    case Rule::rain:
      return {"rain", ""};
    case Rule::dry_before:
      return {"not yet dry after rain", ""};
    case Rule::wind:
      return {"wind", "at most"};
  }
  return {};
}

struct Shower {
  units::System system;
  int decimals;

  std::string operator()(std::monostate) const { return ""; }
  std::string operator()(units::Temperature t) const { return units::show(t, system, decimals); }
  std::string operator()(units::TemperatureDifference d) const {
    return units::show(d, system, decimals);
  }
  std::string operator()(units::Fraction f) const { return units::show(f, decimals); }
  std::string operator()(units::Length l) const {
    return system == units::System::us ? units::show_in(l, units::inches, decimals + 1)
                                       : units::show_in(l, units::millimetres, decimals);
  }
  std::string operator()(units::Speed s) const {
    return system == units::System::us ? units::show_in(s, units::miles_per_hour, decimals)
                                       : units::show_in(s, units::metres_per_second, decimals);
  }
};

std::string moment_said(dates::Moment m) {
  return dates::short_day(m.date()) + " " + dates::clock(m);
}

template <class Key, std::size_t N>
std::string_view find(const std::array<std::pair<Key, std::string_view>, N>& table, Key key) {
  for (const auto& [known, words] : table) {
    if (known == key) return words;
  }
  return "";
}

constexpr std::array<std::pair<Constraint, std::string_view>, 10> constraint_codes{{
    {Constraint::painting_hours, "painting-hours"},
    {Constraint::air, "air"},
    {Constraint::shell, "shell"},
    {Constraint::dew_margin, "dew-margin"},
    {Constraint::humidity, "humidity"},
    {Constraint::rain, "rain"},
    {Constraint::wind, "wind"},
    {Constraint::frost, "frost"},
    {Constraint::recoat_window, "recoat-window"},
    {Constraint::etch_validity, "etch-validity"},
}};
constexpr std::array<std::pair<Constraint, std::string_view>, 10> constraint_words{{
    {Constraint::painting_hours, "working days and painting hours"},
    {Constraint::air, "air temperature"},
    {Constraint::shell, "shell temperature"},
    {Constraint::dew_margin, "dew margin"},
    {Constraint::humidity, "humidity"},
    {Constraint::rain, "rain and drying"},
    {Constraint::wind, "wind"},
    {Constraint::frost, "frost at the etch"},
    {Constraint::recoat_window, "end of the recoat window"},
    {Constraint::etch_validity, "days an etch holds"},
}};
constexpr std::array<std::pair<WayOut::How, std::string_view>, 4> way_codes{{
    {WayOut::How::saturday_work, "saturday-work"},
    {WayOut::How::one_more_painter, "one-more-painter"},
    {WayOut::How::hour_earlier, "hour-earlier"},
    {WayOut::How::first_light, "first-light"},
}};
constexpr std::array<std::pair<WayOut::How, std::string_view>, 4> way_words{{
    {WayOut::How::saturday_work, "with Saturday work"},
    {WayOut::How::one_more_painter, "with one more painter"},
    {WayOut::How::hour_earlier, "starting an hour earlier"},
    {WayOut::How::first_light, "painting from first light"},
}};

}  // namespace

dates::Moment moment_of(weather::HourNumber hour) {
  constexpr std::int64_t quarters = 4;
  return dates::Moment::of_quarters(hour * quarters);
}

std::string closed_by(const weather::Verdict& verdict, units::System system) {
  if (!verdict.closed_by) return "";
  const RuleWords rule = gate_words(*verdict.closed_by);
  const std::string when = moment_said(moment_of(verdict.hour));
  if (verdict.unknown) return fmt::format("{} {}, unknown", rule.what, when);
  std::string figure = std::visit(Shower{system, 1}, verdict.measured);
  std::string limit = std::visit(Shower{system, 1}, verdict.limit);
  if (figure == limit) {
    figure = std::visit(Shower{system, 2}, verdict.measured);
    limit = std::visit(Shower{system, 2}, verdict.limit);
  }
  const bool of_shell = verdict.closed_by == Rule::shell_min ||
                        verdict.closed_by == Rule::shell_max ||
                        verdict.closed_by == Rule::dew_margin;
  std::string text = fmt::format("{} {}, {}", rule.what, when, figure);
  if (!rule.limit.empty()) text += fmt::format(" ({} {})", rule.limit, limit);
  if (of_shell && verdict.shell_estimated) text += ", shell estimated";
  return text;
}

std::string_view rests_on(weather::Quality quality) {
  switch (quality) {
    case weather::Quality::observed:
      return "observed";
    case weather::Quality::forecast:
      return "forecast";
    case weather::Quality::climatology:
      return "climatology";
    case weather::Quality::missing:
      break;
  }
  return "calendar";
}

std::string_view code(WeatherBasis basis) {
  switch (basis) {
    case WeatherBasis::forecast:
      return "forecast";
    case WeatherBasis::replayed:
      return "replayed";
    case WeatherBasis::none:
      break;
  }
  return "none";
}

std::string basis(const sequence::Programme& p) {
  const std::string_view beyond =
      p.climatology_beyond ? "a usual year beyond it" : "the calendar alone beyond it";
  switch (p.weather) {
    case WeatherBasis::forecast:
      return fmt::format("forecast read, until {}; {}", moment_said(p.weather_until), beyond);
    case WeatherBasis::replayed:
      return p.weather_until == dates::Moment()
                 ? "a usual year"
                 : fmt::format(
                       "weather of the past, until {}; {}", moment_said(p.weather_until), beyond);
    case WeatherBasis::none:
      break;
  }
  return "none read: calendar only";
}

std::string_view code(Hardener::Kind kind) {
  switch (kind) {
    case Hardener::Kind::cool:
      return "cool";
    case Hardener::Kind::standard:
      return "standard";
    case Hardener::Kind::straddles:
      break;
  }
  return "straddles";
}

std::string hardener(const Hardener& h, units::System system) {
  const std::string range = fmt::format("air {} to {} while painting and in first cure",
                                        units::show(h.low, system, 1),
                                        units::show(h.high, system, 1));
  switch (h.kind) {
    case Hardener::Kind::cool:
      return "cool-weather kind: " + range;
    case Hardener::Kind::standard:
      return "standard kind: " + range;
    case Hardener::Kind::straddles:
      break;
  }
  return "ask the maker, the range of both kinds is crossed: " + range;
}

std::string_view code(Constraint constraint) {
  return find(constraint_codes, constraint);
}
std::string_view words(Constraint constraint) {
  return find(constraint_words, constraint);
}
std::string_view code(WayOut::How how) {
  return find(way_codes, how);
}

std::string way_out(const WayOut& way) {
  return fmt::format("{}: full {} {}",
                     find(way_words, way.how),
                     dates::short_day(way.refill_done.date()),
                     dates::year(way.refill_done.date()));
}

}  // namespace basinwright::report
