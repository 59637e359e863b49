#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "basinwright/units/unit.hpp"
#include "client_parts.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/price.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Row;
using document::Section;
using document::Table;

Section section_of(std::string key, std::string title, Table table) {
  Section section;
  section.key = std::move(key);
  section.title = std::move(title);
  section.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

constexpr std::size_t left_over_value_column = 5;

std::string suppliers_of(const quote::Purchase& p) {
  std::string all;
  for (const quote::Bought& b : p.packs) {
    if (b.supplier.empty() || all.find(b.supplier) != std::string::npos) continue;
    all += (all.empty() ? "" : ", ") + b.supplier;
  }
  return all;
}

}  // namespace

std::string amount(quote::Measure measure, std::int64_t n, units::System system) {
  const auto value = static_cast<double>(n);
  const int decimals = n % 1000 == 0 ? 0 : (n % 100 == 0 ? 1 : 2);
  if (measure == quote::Measure::volume)
    return grouped(units::show(units::millilitres(value), system, decimals));
  if (measure == quote::Measure::mass)
    return grouped(units::show(units::grams(value), system, decimals));
  return grouped(std::to_string(n));
}

double in_key_unit(quote::Measure measure, std::int64_t n) {
  return measure == quote::Measure::pieces ? static_cast<double>(n)
                                           : static_cast<double>(n) / 1000.0;
}

const char* unit_of(quote::Measure measure) {
  if (measure == quote::Measure::volume) return "L";
  return measure == quote::Measure::mass ? "kg" : "pieces";
}

// "bicarbonate, for the sump, at most".
std::string item_text(const quote::Purchase& p) {
  return p.use.empty() ? p.item : fmt::format("{}, {}", p.item, purchase_use(p.use));
}

namespace {

Cell packs_cell(const quote::Purchase& p, const Cells& c, units::System system) {
  std::string text;
  document::Array packs;
  packs.reserve(p.packs.size());
  for (const quote::Bought& b : p.packs) {
    text += fmt::format(
        "{}{} × {}", text.empty() ? "" : " + ", b.count, amount(p.measure, b.size, system));
    packs.push_back(document::Object{{"size", Value(in_key_unit(p.measure, b.size))},
                                     {"count", Value(b.count)},
                                     {"unit_price", c.money(b.unit_price).value},
                                     {"total", c.money(b.total).value}});
  }
  if (p.unpriced) text = p.short_stock ? say::stock_does_not_reach : say::no_price;
  return {text, Value(std::move(packs)), p.unpriced ? Role::caution : Role::plain};
}

void total_row(Table& table, std::size_t columns, const Cells& c, money::Money sum) {
  Row row;
  row.machine = false;
  row.role = Role::total;
  row.cells.assign(columns, Cell{});
  row.cells.front() = {say::sum, {}, Role::total};
  row.cells.back() = c.money(sum);
  table.rows.push_back(std::move(row));
}

// "0.31 per m2 abraded", in the unit of the page.
std::string rule_words(const quote::Rule& rule, units::System system) {
  struct Basis {
    std::string_view dimension, of;
  };
  constexpr std::array per{Basis{"", "job"},
                           Basis{"", "day"},
                           Basis{"", "person"},
                           Basis{"", "painter"},
                           Basis{"area", say::painted_after},
                           Basis{"area", say::abraded},
                           Basis{"area", say::etched},
                           Basis{"length", say::of_edge},
                           Basis{"", say::coat_session},
                           Basis{"", "kit"},
                           Basis{"area", say::of_tread},
                           Basis{"length", say::of_step_edge}};
  const bool us = system == units::System::us;
  const Basis& basis = per.at(static_cast<std::size_t>(rule.per));
  if (basis.dimension == "area") {
    const double rate = us ? rule.rate * units::square_feet.factor : rule.rate;
    return fmt::format(say::per_of, rate, us ? "ft²" : "m²", basis.of);
  }
  if (basis.dimension == "length") {
    const double rate = us ? rule.rate * units::feet.factor : rule.rate;
    return fmt::format(say::per_of, rate, us ? "ft" : "m", basis.of);
  }
  return fmt::format(say::per, rule.rate, basis.of);
}

Table counted_table(const std::vector<quote::Counted>& all, const Cells& c) {
  Table table;
  table.columns = {{"item", say::item},
                   {"count", say::count, Align::right},
                   {"rule", say::rule},
                   {"total", say::price, Align::right}};
  money::Money sum;
  for (const quote::Counted& one : all) {
    table.rows.push_back({{Cells::words(one.rule.item),
                           Cells::count(one.count),
                           Cells::words(rule_words(one.rule, c.system())),
                           c.money(one.total)}});
    sum += one.total;
  }
  if (!all.empty()) total_row(table, table.columns.size(), c, sum);
  return table;
}

}  // namespace

Section purchases_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.columns = {{"item", say::item},
                   {"use", "", Align::left, false},
                   {"need", say::need, Align::right},
                   {"unit", "", Align::left, false},
                   {"packs", say::packs},
                   {"left_over", say::left_over, Align::right},
                   {"left_over_value", say::worth, Align::right},
                   {"supplier", say::supplier, Align::left, false},
                   {"order_by", say::order_by, Align::left, false},
                   {"total", say::price, Align::right}};
  money::Money sum;
  money::Money left;
  for (std::size_t i = 0; i < s.plan.purchases.size(); ++i) {
    const quote::Purchase& p = s.plan.purchases[i];
    const std::string suppliers = suppliers_of(p);
    Cell order_by = Cells::nothing("");
    if (const auto& day = s.plan.order_by[i])
      order_by = {dates::short_day(*day), Value(dates::iso(*day)), Role::plain};
    table.rows.push_back({{Cells::coded(item_text(p), p.item),
                           p.use.empty() ? Cells::nothing("") : Cells::words(p.use),
                           {amount(p.measure, p.need, s.units),
                            Value(in_key_unit(p.measure, p.need)),
                            Role::quantity},
                           Cells::words(unit_of(p.measure)),
                           packs_cell(p, c, s.units),
                           {p.unpriced ? "" : amount(p.measure, p.left_over, s.units),
                            Value(in_key_unit(p.measure, p.left_over)),
                            Role::quantity},
                           p.unpriced ? Cells::nothing("") : c.money(p.left_over_value),
                           suppliers.empty() ? Cells::nothing("") : Cells::words(suppliers),
                           std::move(order_by),
                           c.money(p.total)}});
    sum += p.total;
    left += p.left_over_value;
  }
  total_row(table, table.columns.size(), c, sum);
  table.rows.back().cells[left_over_value_column] = c.money(left);
  return section_of("purchases", say::materials_whole_packs, std::move(table));
}

Section consumables_section(const Subject& s) {
  return section_of("consumables",
                    say::consumables,
                    counted_table(s.plan.consumables, Cells(s.units, s.rates.currency)));
}
Section protection_section(const Subject& s) {
  return section_of("protection",
                    say::protection,
                    counted_table(s.plan.protection, Cells(s.units, s.rates.currency)));
}

Section hire_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.columns = {
      {"item", say::item}, {"days", say::days, Align::right}, {"total", say::price, Align::right}};
  money::Money sum;
  for (const quote::Hired& h : s.plan.hire) {
    table.rows.push_back({{Cells::words(h.item), Cells::count(h.days), c.money(h.total)}});
    sum += h.total;
  }
  if (!s.plan.hire.empty()) total_row(table, table.columns.size(), c, sum);
  return section_of("hire", say::hire, std::move(table));
}

Section labour_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.columns = {{"task", say::task},
                   {"person_hours", say::person_hours, Align::right},
                   {"crew_hours", say::crew_hours, Align::right},
                   {"total", say::wages, Align::right}};
  money::Money sum;
  for (const quote::LabourLine& line : s.plan.labour) {
    table.rows.push_back({{Cells::coded(task(line.task), line.task),
                           c.hours(line.person_hours, 2),
                           c.hours(line.crew_hours, 2),
                           c.money(line.total)}});
    sum += line.total;
  }
  total_row(table, table.columns.size(), c, sum);
  return section_of("labour", say::labour, std::move(table));
}

// "17.00 %", and "8.875 %" where two decimals do not hold it.
std::string percent_text(money::Percentage rate) {
  constexpr std::int64_t of_a_percent = money::whole / 100;
  constexpr int most = 4;
  int decimals = 2;
  std::int64_t step = of_a_percent / 100;
  for (; decimals < most && rate.millionths % step != 0; ++decimals) step /= 10;
  return units::fixed(static_cast<double>(rate.millionths) / of_a_percent, decimals) + " %";
}

namespace {

void add_branches(const Subject& s, const Cells& c, Section& section) {
  if (s.plan.either.empty()) {
    section.blocks.emplace_back(document::Facts{{{"either", "", Cells::nothing(""), false}}});
    return;
  }
  Table either;
  either.key = "either";
  either.caption = say::until_the_test_is_made_one_of_these;
  either.columns = {{"if", say::if_word},
                    {"total", say::total, Align::right},
                    {"refill_done", say::full_again},
                    {"steps", "", Align::left, false}};
  for (const job::Branch& b : s.plan.either) {
    either.rows.push_back(
        {{Cells::coded(std::string(branch(b.code)), b.code),
          b.total ? c.money(*b.total) : Cells::nothing(say::open),
          b.refill_done ? Cells::moment(*b.refill_done) : Cells::nothing(say::no_dates),
          {"", Value(document::Array(b.steps.begin(), b.steps.end())), Role::plain}}});
  }
  section.blocks.emplace_back(std::move(either));
}

}  // namespace

Section price_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const quote::Price& price = s.plan.price.value();
  Section section;
  section.key = "price";
  section.title = fmt::format(say::price_of, s.rates.currency.name());
  section.blocks.emplace_back(document::Facts{
      {{"currency", "", Cells::words(std::string(s.rates.currency.name())), false}}});
  Table lines;
  lines.key = "lines";
  lines.columns = {{"what", say::what}, {"amount", say::amount, Align::right}};
  for (const quote::Line& line : price.lines)
    lines.rows.push_back({{Cells::words(line.what), c.money(line.amount)}});
  const auto sum = [&](std::string what, money::Money amount) {
    lines.rows.push_back(
        {{{std::move(what), {}, Role::total}, c.money(amount)}, Role::total, false});
  };
  sum(say::net, price.net);
  if (price.taxes.empty()) sum(say::tax_none_in_the_rate_book, price.tax);
  for (const quote::Taxed& one : price.taxes) sum(tax_words(c, price, one), one.amount);
  sum(say::total, price.total);
  section.blocks.emplace_back(std::move(lines));
  section.blocks.emplace_back(
      document::Facts{{{"net", say::net, c.money(price.net), false},
                       {"tax", say::tax, c.money(price.tax), false},
                       {"total", say::total, c.money(price.total), false}}});
  section.blocks.emplace_back(taxes_table(c, price, "taxes"));
  Table stages;
  stages.key = "stages";
  stages.caption = say::payments;
  stages.columns = {{"event", say::when}, {"amount", say::amount, Align::right}};
  for (const quote::Due& due : price.stages)
    stages.rows.push_back({{Cells::words(due.event), c.money(due.amount)}});
  section.blocks.emplace_back(std::move(stages));
  add_branches(s, c, section);
  return section;
}

}  // namespace basinwright::report
