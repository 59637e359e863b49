#include <fmt/format.h>
#include <cmath>

#include "basinwright/dates/minute.hpp"
#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/explain.hpp"

namespace basinwright::report {
namespace {

using units::Dimensions;

bool is(const trace::Amount& a, int l, int m, int t) {
  return a.dimensions == Dimensions{static_cast<std::int8_t>(l),
                                    static_cast<std::int8_t>(m),
                                    static_cast<std::int8_t>(t),
                                    0};
}

// "Mon 3 May 2027 13:45"; a midnight is the day.
std::string moment_text(double seconds) {
  constexpr double seconds_in_minute = 60.0;
  const dates::Minute at(std::llround(seconds / seconds_in_minute));
  const dates::Date day = at.date();
  const std::string date = fmt::format("{} {}", dates::short_day(day), dates::year(day));
  return at == dates::Minute(dates::Moment(day, 0)) ? date
                                                    : fmt::format("{} {}", date, dates::clock(at));
}

std::string plain_number(double v) {
  return fmt::format("{:.10g}", v);
}

std::string measured(const trace::Amount& a, std::string_view name, units::System system) {
  using namespace units;
  if (a.is_share) return show(fraction(a.si), 2);
  if (a.is_point && is(a, 0, 0, 1)) return moment_text(a.si);
  if (a.is_point) return show(Temperature::from_si(a.si), system, 1);
  if (is(a, 1, 0, 0)) {
    // A volume on an area has the dimension of a length; its name tells the two apart.
    if (name.ends_with("rate") || name.ends_with("rinse"))
      return show_application(ApplicationRate::from_si(a.si), system, 3);
    const bool fine = a.si != 0.0 && std::abs(a.si) < 0.01;
    return fine ? show_in(Length::from_si(a.si), millimetres, 2)
                : show(Length::from_si(a.si), system, 3);
  }
  if (is(a, 2, 0, 0)) return show(Area::from_si(a.si), system, 3);
  if (is(a, 3, 0, 0)) {
    const Volume v = Volume::from_si(a.si);
    return std::abs(a.si) >= 1.0 ? show_bulk(v, system, 3) : show(v, system, 3);
  }
  if (is(a, 0, 1, 0)) return show(Mass::from_si(a.si), system, 3);
  if (is(a, 0, 0, 1)) {
    const bool short_time = std::abs(a.si) < hours(1).si();
    return short_time ? fixed(a.si / minutes(1).si(), 0) + say::min
                      : show(Duration::from_si(a.si), 2);
  }
  if (is(a, -1, 0, 0)) return show(SpreadingRate::from_si(a.si), system, 2);
  if (is(a, 2, 0, -1)) return show(WorkRate::from_si(a.si), system, 1);
  if (is(a, 1, 0, -1)) return show(EdgeRate::from_si(a.si), system, 1);
  if (is(a, 3, 0, -1)) return show(Flow::from_si(a.si), system, 1);
  if (is(a, -3, 1, 0)) return show(Concentration::from_si(a.si), 1);
  if (is(a, -2, 1, 0)) return say::one_kilogram_per + show(square_metres(1.0 / a.si), system, 1);
  if (a.dimensions == Dimensions{0, 0, 0, 1}) {
    return show(TemperatureDifference::from_si(a.si), system, 1);
  }
  return plain_number(a.si);
}

std::string in_currency(double units, const money::Currency& currency) {
  const double minor = units * std::pow(10.0, currency.decimals);
  return fmt::format("{} {}",
                     money::plain(money::Money::of_minor(std::llround(minor)), currency),
                     currency.name());
}

}  // namespace

// As the job file and the rate book take it, so without marks between thousands.
std::string shown(const trace::Amount& amount, std::string_view name, const Subject& s) {
  if (amount.is_money) return in_currency(amount.si, s.rates.currency);
  return measured(amount, name, s.units);
}

document::Section defaults_section(const Subject& s) {
  document::Section section;
  section.key = "defaults_used";
  section.title = say::defaults_used_nobody_gave_these_each;
  document::Table table;
  table.columns = {{"key", say::key}, {"value", say::value}, {"source", say::source}};
  for (const trace::Used& used : s.plan.trace.used()) {
    const sources::Kind kind = used.source.kind;
    if (kind == sources::Kind::given || kind == sources::Kind::data_sheet) continue;
    std::string value = shown(used.value, used.key, s);
    if (used.key == "crew.hours" || used.key == "crew.working_days" || used.key == "surfaces")
      value = std::string(used.source.place);
    std::string source = fmt::format("{}: {}", sources::name(kind), used.source.key);
    if (!used.source.place.empty()) source += fmt::format(", {}", used.source.place);
    Cell cell{value, Value(value), Role::assumed};
    table.rows.push_back({{Cells::words(used.key), std::move(cell), Cells::words(source)}});
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

}  // namespace basinwright::report
