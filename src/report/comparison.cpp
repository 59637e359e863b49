#include <fmt/format.h>
#include <algorithm>

#include "basinwright/quote/bridge.hpp"
#include "basinwright/report/pages.hpp"
#include "changes.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/comparison.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::Section;
using document::Table;

// A figure of both jobs, and how far they are apart.
struct Figure {
  std::string key, what;
  double one = 0.0, other = 0.0;
  int decimals = 0;
  std::string unit;
};

std::vector<Figure> figures_of(const Subject& a, const Subject& b) {
  const bool us = a.units == units::System::us;
  const auto area = [&](const Subject& s) {
    return s.plan.take_off.painted.in(us ? units::square_feet : units::square_metres);
  };
  const auto hours = [](const Subject& s) {
    units::Duration sum;
    for (const quote::LabourLine& line : s.plan.labour) sum += line.person_hours;
    return sum.in(units::hours);
  };
  const auto coats = [](const Subject& s) {
    return static_cast<double>(s.plan.quantities.coats.size());
  };
  const auto kits = [](const Subject& s) { return static_cast<double>(s.plan.quantities.kits); };
  const auto days = [](const Subject& s) {
    return static_cast<double>(s.plan.programme.days_on_site);
  };
  const char* const square = us ? "ft²" : "m²";
  const auto part = [&](const Subject& s, units::Area shell::TakeOff::*which) {
    return (s.plan.take_off.total.*which).in(us ? units::square_feet : units::square_metres);
  };
  const auto floor = &shell::TakeOff::floor_area;
  const auto walls = &shell::TakeOff::wall_area;
  return {{"floor_area", say::floor, part(a, floor), part(b, floor), 1, square},
          {"wall_area", say::walls, part(a, walls), part(b, walls), 1, square},
          {"painted_area", say::painted_area, area(a), area(b), 1, square},
          {"coats", say::coats, coats(a), coats(b), 0, ""},
          {"kits", say::kits, kits(a), kits(b), 0, ""},
          {"person_hours", say::person_hours, hours(a), hours(b), 1, "h"},
          {"days_on_site", say::days_on_site, days(a), days(b), 0, ""}};
}

std::string signed_text(double value, int decimals) {
  const std::string text = grouped(units::fixed(value, decimals));
  const bool nothing = text.find_first_not_of("-0.") == std::string::npos;
  return nothing ? "0" : (value > 0 ? "+" + text : text);
}

Table figures_table(const std::vector<Figure>& figures) {
  Table table;
  table.key = "figures";
  table.columns = {{"what", say::what},
                   {"one", say::first, Align::right},
                   {"other", say::second, Align::right},
                   {"difference", say::difference, Align::right}};
  for (const Figure& f : figures) {
    const std::string unit = f.unit.empty() ? "" : " " + f.unit;
    const auto cell = [&](double v) {
      return Cell{grouped(units::fixed(v, f.decimals)) + unit, Value(v), Role::quantity};
    };
    table.rows.push_back({{Cells::coded(f.what, f.key),
                           cell(f.one),
                           cell(f.other),
                           {signed_text(f.other - f.one, f.decimals) + unit,
                            Value(f.other - f.one),
                            Role::quantity}}});
  }
  return table;
}

std::string life_text(const Subject& s) {
  const auto life = materials::expected_life(s.plan.quantities.coats.size());
  return life ? fmt::format(say::to_years, life->from, life->to) : say::not_known;
}

Table dates_table(const Subject& a, const Subject& b) {
  const sequence::Programme& one = a.plan.programme;
  const sequence::Programme& other = b.plan.programme;
  Table table;
  table.key = "dates";
  table.columns = {{"what", say::what}, {"one", say::first}, {"other", say::second}};
  const auto add = [&](const char* key, const char* what, Cell first, Cell second) {
    table.rows.push_back({{Cells::coded(what, key), std::move(first), std::move(second)}});
  };
  add("start", say::start, day_cell(one, one.start.date()), day_cell(other, other.start.date()));
  add("refill_done",
      say::full_again,
      day_cell(one, one.refill_done.date()),
      day_cell(other, other.refill_done.date()));
  add("first_swim",
      say::first_swim_compared,
      day_cell(one, one.first_swim),
      day_cell(other, other.first_swim));
  add("life", say::life_with_good_care, Cells::words(life_text(a)), Cells::words(life_text(b)));
  return table;
}

Table bridge_table(const Subject& a, const Subject& b, const Cells& c) {
  const quote::Bridge bridge = quote::bridge(*a.plan.price, *b.plan.price);
  Table table;
  table.key = "bridge";
  table.columns = {{"what", say::what},
                   {"one", say::first, Align::right},
                   {"other", say::second, Align::right},
                   {"change", say::change, Align::right}};
  for (const quote::BridgeLine& line : bridge.lines) {
    table.rows.push_back({{Cells::words(line.what),
                           c.money(line.before),
                           c.money(line.after),
                           change_cell(c, line.change())}});
  }
  table.rows.push_back({{{say::total, {}, Role::total},
                         c.money(bridge.before),
                         c.money(bridge.after),
                         change_cell(c, bridge.after - bridge.before)},
                        Role::total,
                        false});
  return table;
}

void add_totals(const Subject& a, const Subject& b, const Cells& c, Section& section) {
  const bool priced = a.plan.price && b.plan.price;
  const auto cell = [&](money::Money m) { return priced ? c.money(m) : Cells::nothing(""); };
  const money::Money one = priced ? a.plan.price->total : money::Money();
  const money::Money other = priced ? b.plan.price->total : money::Money();
  section.blocks.emplace_back(Facts{{{"total_one", "", cell(one), false},
                                     {"total_other", "", cell(other), false},
                                     {"total_change", "", cell(other - one), false}}});
}

}  // namespace

document::Document comparison(const Subject& a, const Subject& b, const Names& names) {
  const Cells c(a.units, a.rates.currency);
  document::Document d;
  d.title = say::comparison;
  // Two jobs have two names; they stand at the top of the figures.
  if (subtitle_of(a.job) == subtitle_of(b.job)) d.subtitle = subtitle_of(a.job);
  d.notices = notices(a);
  for (const std::string& notice : notices(b)) {
    const bool known = std::ranges::find(d.notices, notice) != d.notices.end();
    if (!known) d.notices.push_back(say::second_before + notice);
  }
  d.sections = {version_section()};
  Section figures{"comparison", say::side_by_side, {}, true};
  figures.blocks.emplace_back(Facts{{{"one", say::first, Cells::words(names.one), true},
                                     {"other", say::second, Cells::words(names.other), true}}});
  figures.blocks.emplace_back(figures_table(figures_of(a, b)));
  figures.blocks.emplace_back(dates_table(a, b));
  d.sections.push_back(std::move(figures));
  Section price{"comparison", say::from_one_price_to_the_other, {}, true};
  if (a.plan.price && b.plan.price) price.blocks.emplace_back(bridge_table(a, b, c));
  price.shown = !price.blocks.empty();
  price.own_page = true;  // Torn, a sum would stand without what it sums.
  add_totals(a, b, c, price);
  d.sections.push_back(std::move(price));
  d.bottom_line = {change_line(a, b, c), {}, Role::total};
  return d;
}

}  // namespace basinwright::report
