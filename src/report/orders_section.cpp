#include <fmt/format.h>
#include <algorithm>

#include "order_words.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/price.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::Section;
using document::Table;

constexpr const char* how_computed = say::area_anywhere_within_the_tapes;

Cell chance_cell(double chance) {
  const bool none = chance <= 0.0;
  return {none ? "none" : units::show(units::fraction(chance), 1),
          Value(chance),
          none ? Role::plain : Role::caution};
}

Table choices_table(const Subject& s) {
  const coverage::KitOrder& order = s.plan.quantities.order;
  const auto coats = static_cast<std::int64_t>(s.plan.quantities.coats.size());
  Table table;
  table.key = "choices";
  table.columns = {{"kits_a_coat", say::kits_a_coat, Align::right},
                   {"kits", say::in_all, Align::right},
                   {"short_chance", say::chance_of_running_short, Align::right},
                   {"ordered", say::choice}};
  for (const coverage::KitChoice& choice : order.choices) {
    const bool ordered = choice.kits == order.ordered;
    table.rows.push_back({{Cells::count(choice.kits),
                           Cells::count(choice.kits * coats),
                           chance_cell(choice.short_chance),
                           {ordered ? "ordered" : "", Value(ordered), Role::plain}}});
  }
  return table;
}

Facts range_facts(const Subject& s) {
  const coverage::KitOrder& order = s.plan.quantities.order;
  const auto coats = static_cast<std::int64_t>(s.plan.quantities.coats.size());
  const units::Fraction wanted = s.rates.order_confidence.value;
  Cell ordered = Cells::count(order.ordered * coats);
  if (order.ordered > order.expected) {
    ordered.text += fmt::format(say::of_them_in_case, (order.ordered - order.expected) * coats);
  }
  return {
      {{"confidence",
        say::confidence_wanted,
        {units::show(wanted, 0), Value(wanted.share()), Role::plain}},
       {"kits_best", say::kits_least_area_and_most_cover, Cells::count(order.best * coats)},
       {"kits_expected", say::kits_as_measured_and_expected, Cells::count(order.expected * coats)},
       {"kits_worst", say::kits_most_area_and_least_cover, Cells::count(order.worst * coats)},
       {"kits_ordered", say::ordered, std::move(ordered)},
       {"short_chance", say::chance_of_running_short, chance_cell(order.short_chance)}}};
}

Cell day_or(const std::optional<dates::Date>& day, const char* none, bool late = false) {
  if (!day) return Cells::nothing(none);
  return {fmt::format("{}{}", dates::short_day(*day), late ? say::late_after : ""),
          Value(dates::iso(*day)),
          late ? Role::caution : Role::plain};
}

document::Array packs_of(const job::Order& order, const Cells& c) {
  document::Array packs;
  for (const job::Ordered& one : order.packs) {
    const std::string& batch = one.packs.batch;
    packs.push_back(document::Object{{"item", Value(one.item)},
                                     {"size", Value(in_key_unit(one.measure, one.packs.size))},
                                     {"unit", Value(unit_of(one.measure))},
                                     {"count", Value(one.packs.count)},
                                     {"batch", batch.empty() ? Value(nullptr) : Value(batch)},
                                     {"total", c.money(one.packs.total).value}});
  }
  return packs;
}

/// Packs alike are one line, whatever they are bought for.
std::vector<job::Ordered> packs_together(const std::vector<job::Ordered>& packs) {
  std::vector<job::Ordered> lines;
  for (const job::Ordered& one : packs) {
    const auto same = std::ranges::find_if(lines, [&](const job::Ordered& line) {
      return line.item == one.item && line.measure == one.measure &&
             line.packs.size == one.packs.size && line.packs.batch == one.packs.batch;
    });
    if (same == lines.end()) {
      lines.push_back(one);
    } else {
      same->packs.count += one.packs.count;
    }
  }
  return lines;
}

std::string order_words(const job::Order& order, units::System system) {
  std::string text;
  for (const job::Ordered& one : packs_together(order.packs)) {
    text += fmt::format("{}{} {} × {}",
                        text.empty() ? "" : "\n",
                        one.item,
                        one.packs.count,
                        amount(one.measure, one.packs.size, system));
    if (!one.packs.batch.empty()) text += fmt::format(say::batch_after, one.packs.batch);
  }
  return text;
}

Table suppliers_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "suppliers";
  table.caption = say::orders;
  table.columns = {{"supplier", say::supplier},
                   {"order_by", say::order_by},
                   {"lead_days", say::lead},
                   {"needed", say::on_the_yard},
                   {"packs", say::packs},
                   {"total", say::sum, Align::right}};
  for (const job::Order& order : s.plan.orders) {
    const bool named = !order.supplier.empty();
    const Cell lead =
        order.lead
            ? Cell{units::show(*order.lead, 1), Value(order.lead->in(units::days)), Role::quantity}
            : Cells::nothing(say::not_known);
    table.rows.push_back({{named ? Cells::words(order.supplier) : Cells::nothing(say::none_named),
                           day_or(order.by, say::lead_not_known, order.late),
                           lead,
                           day_or(order.needed, say::no_dates),
                           {order_words(order, s.units), Value(packs_of(order, c)), Role::plain},
                           c.money(order.total)}});
  }
  return table;
}

void add_list(Section& section,
              const std::string& key,
              const std::string& title,
              const std::vector<std::string>& lines) {
  document::List list;
  document::Array values;
  for (const std::string& line : lines) {
    list.items.push_back(Cells::words(line));
    values.emplace_back(line);
  }
  if (!lines.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", fmt::format("{}:", title), {}, Role::heading, true});
    section.blocks.emplace_back(std::move(list));
  }
  section.blocks.emplace_back(
      Facts{{{key, "", {"", Value(std::move(values)), Role::plain}, false}}});
}

}  // namespace

Section orders_section(const Subject& s) {
  Section section{"orders", say::what_to_order_and_by_when, {}, !s.plan.orders.empty()};
  if (s.plan.stopped()) {
    section.blocks.emplace_back(Facts{{{"suppliers", "", Cells::nothing(""), false}}});
    return section;
  }
  const Cells c(s.units, s.rates.currency);
  section.blocks.emplace_back(range_facts(s));
  section.blocks.emplace_back(choices_table(s));
  section.blocks.emplace_back(
      document::Paragraph{"how", how_computed, Value(how_computed), Role::muted, true});
  section.blocks.emplace_back(suppliers_table(s, c));
  add_list(section, "on_delivery", say::on_delivery, delivery_checks(s.plan));
  add_list(section, "storage", say::where_it_stands, storage(s.plan));
  add_list(section, "left_over", say::what_is_left, left_over_words(s.plan));
  return section;
}

}  // namespace basinwright::report
