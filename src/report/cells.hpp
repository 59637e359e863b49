// Values into cells: rounded and worded here, once, for every format.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "basinwright/dates/date.hpp"
#include "basinwright/document/document.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::report {

using document::Cell;
using document::Role;
using document::Value;

/// Thousands apart in the number that a text begins with: "21316.1 US gal" becomes
/// "21,316.1 US gal".
[[nodiscard]] std::string grouped(std::string_view text);

/// Makes cells in one unit system and currency. JSON values stay in the unit that their key names
/// (m2, L, kg, h), whatever people read.
class Cells {
 public:
  Cells(units::System system, money::Currency currency) : system_(system), currency_(currency) {}

  [[nodiscard]] Cell area(units::Area a, int decimals = 1) const {
    return quantity(units::show(a, system_, decimals), a.in(units::square_metres));
  }
  [[nodiscard]] Cell length(units::Length l, int decimals = 2) const {
    return quantity(units::show(l, system_, decimals), l.in(units::metres));
  }
  [[nodiscard]] Cell litres(units::Volume v, int decimals = 1) const {
    return quantity(units::show(v, system_, decimals), v.in(units::litres));
  }
  [[nodiscard]] Cell bulk(units::Volume v, int decimals = 1) const {
    return quantity(units::show_bulk(v, system_, decimals), v.in(units::cubic_metres));
  }
  [[nodiscard]] Cell mass(units::Mass m, int decimals = 1) const {
    return quantity(units::show(m, system_, decimals), m.in(units::kilograms));
  }
  /// What is measured out by hand: millilitres, fluid ounces, grams or ounces where it is little.
  [[nodiscard]] Cell small(units::Volume v) const {
    const bool us = system_ == units::System::us;
    constexpr double little = 1.0;
    constexpr double little_gallons = 0.25;
    if (us && v.in(units::us_gallons) < little_gallons)
      return quantity(units::show_in(v, units::us_fluid_ounces, 1), v.in(units::litres));
    if (!us && v.in(units::litres) < little)
      return quantity(units::show_in(v, units::millilitres, 0), v.in(units::litres));
    return litres(v, 2);
  }
  [[nodiscard]] Cell small(units::Mass m) const {
    const bool us = system_ == units::System::us;
    constexpr double little = 1.0;
    if (us && m.in(units::pounds) < little)
      return quantity(units::show_in(m, units::ounces, 1), m.in(units::kilograms));
    if (!us && m.in(units::kilograms) < little)
      return quantity(units::show_in(m, units::grams, 0), m.in(units::kilograms));
    return mass(m, 2);
  }
  /// Nobody says gallons of gas.
  [[nodiscard]] Cell gas(units::Volume v, int decimals = 0) const {
    if (system_ != units::System::us) return litres(v, decimals);
    return quantity(units::show_in(v, units::cubic_feet, 1), v.in(units::litres));
  }
  [[nodiscard]] Cell hours(units::Duration d, int decimals = 1) const {
    return quantity(units::fixed(d.in(units::hours), decimals) + " h", d.in(units::hours));
  }
  [[nodiscard]] static Cell count(std::int64_t n) {
    return {grouped(std::to_string(n)), Value(n), Role::quantity};
  }
  [[nodiscard]] static Cell number(double v, int decimals) {
    return quantity(units::fixed(v, decimals), v);
  }
  [[nodiscard]] Cell money(money::Money m) const {
    return {grouped(money::plain(m, currency_)), Value(money::plain(m, currency_)), Role::money};
  }
  /// With the currency's code, for sentences.
  [[nodiscard]] std::string price(money::Money m) const {
    return grouped(money::plain(m, currency_)) + " " + std::string(currency_.name());
  }
  [[nodiscard]] static Cell words(const std::string& text) {
    return {text, Value(text), Role::plain};
  }
  /// Words for people, a code for machines.
  [[nodiscard]] static Cell coded(std::string text, std::string code) {
    return {std::move(text), Value(std::move(code)), Role::plain};
  }
  [[nodiscard]] static Cell moment(dates::Moment m) {
    return {dates::short_day(m.date()) + " " + dates::clock(m), Value(dates::iso(m)), Role::plain};
  }
  [[nodiscard]] static Cell date(dates::Date d) {
    return {dates::short_day(d) + " " + std::to_string(dates::year(d)),
            Value(dates::iso(d)),
            Role::plain};
  }
  [[nodiscard]] static Cell nothing(std::string text) {
    return {std::move(text), Value(nullptr), Role::muted};
  }
  /// Room to write in, with the unit of what is written.
  [[nodiscard]] static Cell blank(std::string unit = "") {
    return {std::move(unit), Value(nullptr), Role::blank};
  }
  /// A box to tick.
  [[nodiscard]] static Cell tick(std::string text = "") {
    return {std::move(text), Value(nullptr), Role::tick};
  }
  [[nodiscard]] units::System system() const { return system_; }

 private:
  [[nodiscard]] static Cell quantity(std::string_view text, double value) {
    return {grouped(text), Value(value), Role::quantity};
  }

  units::System system_;
  money::Currency currency_;
};

}  // namespace basinwright::report
