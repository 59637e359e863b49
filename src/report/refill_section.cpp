#include <fmt/format.h>
#include <array>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/refill.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Table;

constexpr std::array meters{"m3", "kL", "HCF", say::thousand_us_gallons};

document::Facts refill_facts(const Subject& s, const Cells& c) {
  const job::WaterPlan& w = s.plan.water;
  const std::string unit = meters[static_cast<std::size_t>(w.unit)];
  document::Facts facts;
  facts.facts = {
      {"water_m3", say::water, c.bulk(w.water), true},
      {"tap_l_min",
       say::tap,
       {units::show(w.tap, s.units, 1), Value(w.tap.in(units::litres_per_minute)), Role::quantity},
       true},
      {"hours", say::hours_at_that_rate, c.hours(w.fill_time), true},
      {"billed_units",
       say::on_the_meter,
       {fmt::format("{} {}", units::fixed(w.billed, 2), unit), Value(w.billed), Role::quantity},
       true},
      {"billed_unit", "", Cells::words(unit), false}};
  facts.facts.push_back({"cost",
                         say::water_at_cost,
                         w.cost ? c.money(*w.cost) : Cells::nothing(say::no_price_given),
                         w.cost.has_value()});
  const auto date = [](const std::optional<dates::Date>& day) {
    return day ? Cells::date(*day) : Cells::nothing(say::no_dates);
  };
  facts.facts.push_back({"full", say::full, date(w.full), true});
  facts.facts.push_back(
      {"quiet_until", say::nothing_but_salt_or_chlorine_before, date(w.quiet_until), true});
  return facts;
}

Cell amount_cell(const job::Addition& a, const Cells& c) {
  Cell cell = a.mass > units::Mass() ? c.small(a.mass) : c.small(a.volume);
  if (a.part > 1) cell.text = say::at_most + cell.text;
  return cell;
}

std::string level(const job::Addition& a, double value) {
  return a.figure == "ph" ? units::fixed(value, 1) : fmt::format("{}", units::fixed(value, 0));
}

std::string how_text(const job::Addition& a) {
  std::string how(addition(a.what).how);
  if (a.of == 1) return how;
  return a.part == 1 ? how : say::after_six_hours_read_again_then_by_the;
}

Table additions_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "additions";
  table.caption = say::one_chemical_a_working_day_in_this;
  table.columns = {{"day", say::day},
                   {"what", say::what},
                   {"part", "", Align::right, false},
                   {"of", "", Align::right, false},
                   {"amount", say::how_much, Align::right},
                   {"unit", "", Align::left, false},
                   {"figure", "", Align::left, false},
                   {"from", "", Align::right, false},
                   {"to", say::changes},
                   {"how", say::how}};
  for (const job::Addition& a : s.plan.water.additions) {
    const std::string change = fmt::format(say::dose_from_to,
                                           figure(a.figure),
                                           level(a, a.from),
                                           level(a, a.to),
                                           a.figure == "ph" ? "" : say::mg_l);
    table.rows.push_back({{a.day ? Cells::date(*a.day) : Cells::nothing(say::no_dates),
                           Cells::coded(std::string(addition(a.what).what), a.what),
                           Cells::count(a.part),
                           Cells::count(a.of),
                           amount_cell(a, c),
                           Cells::words(a.mass > units::Mass() ? "kg" : "L"),
                           Cells::words(a.figure),
                           Cells::number(a.from, 2),
                           {change, Value(a.to), Role::plain},
                           Cells::words(how_text(a))}});
  }
  return table;
}

Table indices_table(const Subject& s) {
  Table table;
  table.key = "saturation";
  table.caption = say::saturation_index_above_0_the_water;
  table.columns = {{"water", say::water},
                   {"method", say::method},
                   {"index", say::index, Align::right},
                   {"reason", "", Align::left, false}};
  for (const job::IndexLine& line : s.plan.water.indices) {
    const bool fill = line.water == "fill";
    Cell index = Cells::nothing(line.reason);
    if (line.value) {
      index = {fmt::format("{:+.2f}", *line.value + 0.0), Value(*line.value), Role::quantity};
    }
    table.rows.push_back({{Cells::coded(fill ? say::as_it_fills : say::at_its_targets, line.water),
                           Cells::coded(std::string(index_method(line.method)), line.method),
                           std::move(index),
                           line.value ? Cells::nothing("") : Cells::words(line.reason)}});
  }
  return table;
}

void add_words(const job::WaterPlan& w, document::Section& section) {
  document::Array missing;
  std::string list;
  for (const std::string& name : w.measure_first) {
    missing.emplace_back(name);
    list += (list.empty() ? "" : ", ") + std::string(figure(name));
  }
  const std::string text =
      list.empty() ? "" : fmt::format(say::measure_the_fill_water_first_without, list);
  section.blocks.emplace_back(document::Paragraph{
      "measure_first", text, Value(std::move(missing)), Role::caution, !list.empty()});
  for (const std::string& code : w.advice) {
    section.blocks.emplace_back(
        document::Paragraph{"", std::string(advice(code)), {}, Role::plain, true});
  }
}

}  // namespace

document::Section refill_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "refill";
  section.title = say::refill_and_start_up;
  section.blocks.emplace_back(refill_facts(s, c));
  add_words(s.plan.water, section);
  section.blocks.emplace_back(additions_table(s, c));
  section.blocks.emplace_back(indices_table(s));
  return section;
}

}  // namespace basinwright::report
