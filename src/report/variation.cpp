#include <algorithm>

#include "basinwright/report/pages.hpp"
#include "changes.hpp"
#include "client_parts.hpp"
#include "client_words.hpp"
#include "sections.hpp"
#include "wording/client.hpp"
#include "wording/common.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Section;
using document::Table;

Table scope_change(const Subject& before, const Subject& now) {
  const Cells c(now.units, now.rates.currency);
  Table table;
  table.key = "scope";
  table.columns = {
      {"what", say::what}, {"one", say::quoted, Align::right}, {"other", say::now, Align::right}};
  const auto row = [&](const char* key, const char* what, Cell first, Cell second) {
    table.rows.push_back({{Cells::coded(what, key), std::move(first), std::move(second)}});
  };
  const auto coats = [](const Subject& s) {
    return Cells::count(static_cast<std::int64_t>(s.plan.quantities.coats.size()));
  };
  row("painted_area",
      say::painted_area,
      c.area(before.plan.take_off.painted),
      c.area(now.plan.take_off.painted));
  row("coats", say::coats, coats(before), coats(now));
  row("refill_done",
      say::full_again,
      day_cell(before.plan.programme, before.plan.programme.refill_done.date()),
      day_cell(now.plan.programme, now.plan.programme.refill_done.date()));
  return table;
}

// Steps that only one of the two has, in the client's words.
std::vector<std::string> steps_beyond(const Subject& more, const Subject& less) {
  const bool water = more.job.refill.water_price.has_value();
  const std::vector<std::string> had = included(less.plan, water);
  std::vector<std::string> out;
  for (const std::string& line : included(more.plan, water)) {
    if (std::ranges::find(had, line) == had.end()) out.push_back(line);
  }
  return out;
}

// The tax of each rate in both prices.
std::vector<std::pair<std::string, std::pair<money::Money, money::Money>>> taxes_of(
    const quote::Price& one, const quote::Price& other) {
  std::vector<std::pair<std::string, std::pair<money::Money, money::Money>>> rows;
  const auto at = [&](const quote::Taxed& tax) -> auto& {
    const std::string words =
        (tax.name.empty() ? say::tax : tax.name) + " " + percent_text(tax.rate);
    const auto it = std::ranges::find(rows, words, [](const auto& row) { return row.first; });
    return it != rows.end()
               ? it->second
               : rows.emplace_back(words, std::pair<money::Money, money::Money>()).second;
  };
  for (const quote::Taxed& tax : one.taxes) at(tax).first += tax.amount;
  for (const quote::Taxed& tax : other.taxes) at(tax).second += tax.amount;
  if (rows.empty()) rows.emplace_back(say::tax_none, std::pair<money::Money, money::Money>());
  return rows;
}

Section price_change(const Subject& before, const Subject& now) {
  const Cells c(now.units, now.rates.currency);
  Section section{
      "variation", say::price_before + std::string(now.rates.currency.name()), {}, true};
  Table table;
  table.key = "price";
  table.columns = {{"what", say::what},
                   {"one", say::quoted, Align::right},
                   {"other", say::now, Align::right},
                   {"change", say::change, Align::right}};
  if (before.plan.price && now.plan.price) {
    const quote::Price& one = *before.plan.price;
    const quote::Price& other = *now.plan.price;
    const auto row = [&](std::string what, money::Money first, money::Money second, Role role) {
      table.rows.push_back({{{what, Value(what), role},
                             c.money(first),
                             c.money(second),
                             change_cell(c, second - first)},
                            role});
    };
    row(say::without_tax, one.net, other.net, Role::plain);
    for (const auto& [words, taxes] : taxes_of(one, other))
      row(words, taxes.first, taxes.second, Role::plain);
    row(say::total, one.total, other.total, Role::total);
  }
  section.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

}  // namespace

document::Document variation(const Subject& before, const Subject& now) {
  const Cells c(now.units, now.rates.currency);
  document::Document d;
  d.title = say::variation;
  d.subtitle = now.job.heading.number +
               (now.job.heading.client.name.empty() ? "" : " · " + now.job.heading.client.name);
  if (now.rates.demonstration) d.notices.emplace_back(say::demonstration_rates_every_price_on);
  d.sections = {version_section()};
  Section scope{"variation", say::what_changes_since_the_quotation, {}, true};
  scope.blocks.emplace_back(scope_change(before, now));
  d.sections.push_back(std::move(scope));
  Section added = list_section("added", say::added, steps_beyond(now, before));
  Section dropped = list_section("dropped", say::left_out, steps_beyond(before, now));
  for (Section* section : {&added, &dropped}) {
    section->key = "variation";
    d.sections.push_back(std::move(*section));
  }
  d.sections.push_back(price_change(before, now));
  d.sections.push_back(acceptance("variation", "variation"));
  d.bottom_line = {change_line(before, now, c), {}, Role::total};
  return d;
}

}  // namespace basinwright::report
