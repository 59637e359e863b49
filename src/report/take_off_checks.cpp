// What stands beside the take-off: the check against floating, and both unit systems at once.
#include <fmt/format.h>
#include <cmath>

#include "basinwright/shell/flotation.hpp"
#include "basinwright/units/unit.hpp"
#include "take_off_facts.hpp"
#include "wording/common.hpp"
#include "wording/take_off.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Paragraph;
using document::Table;
using shell::FlotationVerdict;

std::string_view code_of(FlotationVerdict verdict) {
  switch (verdict) {
    case FlotationVerdict::stop:
      return "stop";
    case FlotationVerdict::hold:
      return "hold";
    case FlotationVerdict::clear:
      return "clear";
  }
  return "";
}

Role role_of(FlotationVerdict verdict) {
  if (verdict == FlotationVerdict::stop) return Role::stop;
  return verdict == FlotationVerdict::hold ? Role::caution : Role::good;
}

document::Row body_row(const job::BodyResult& body, const Subject& s, const Cells& c) {
  const shell::Flotation& f = *body.flotation;
  const bool finite = std::isfinite(f.factor);
  return {{Cells::words(body.name),
           c.length(s.job.site.groundwater->below_rim),
           finite ? Cells::number(f.factor, 2) : Cells::nothing(say::no_lift),
           {std::string(flotation_verdict(code_of(f.verdict))),
            Value(std::string(code_of(f.verdict))),
            role_of(f.verdict)},
           f.neutral ? c.length(*f.neutral) : Cells::nothing(say::never),
           c.mass(f.shell, 0),
           c.mass(f.displaced, 0)}};
}

// Half of what the check needs is no check: say what is missing.
std::string_view missing(const Subject& s) {
  bool thick = false;
  for (const job::Body& body : s.job.bodies) {
    thick = thick || (body.pool.wall_thickness && body.pool.slab_thickness);
  }
  if (s.job.site.groundwater) return thick ? "" : "no-thickness";
  return thick ? "no-groundwater" : "";
}

// The value in US units of a figure whose key names its metric unit.
Value in_us(const std::string& key, const Value& value) {
  const auto* metric = std::get_if<double>(&value.data());
  if (metric == nullptr) return value;
  if (key.ends_with("_m2")) return units::square_metres(*metric).in(units::square_feet);
  if (key.ends_with("_m3")) return units::cubic_metres(*metric).in(units::us_gallons);
  if (key.ends_with("_m")) return units::metres(*metric).in(units::feet);
  return value;
}

std::string us_unit(const std::string& key) {
  if (key.ends_with("_m2")) return "ft2";
  if (key.ends_with("_m3")) return say::us_gal;
  return key.ends_with("_m") ? "ft" : "";
}

}  // namespace

void add_flotation(const Subject& s, const Cells& c, document::Section& section) {
  Table table;
  table.key = "flotation";
  table.caption = say::empty_shell_against_groundwater;
  table.columns = {{"body", say::body, Align::left, s.job.bodies.size() > 1},
                   {"groundwater_below_rim_m", say::water_at, Align::right},
                   {"factor", say::factor, Align::right},
                   {"verdict", say::verdict},
                   {"neutral_below_rim_m", say::floats_from, Align::right},
                   {"shell_kg", say::shell, Align::right},
                   {"displaced_kg", say::displaces, Align::right}};
  for (const job::BodyResult& body : s.plan.take_off.bodies) {
    if (body.flotation) table.rows.push_back(body_row(body, s, c));
  }
  const bool checked = !table.rows.empty();
  table.shown = checked;
  section.blocks.emplace_back(std::move(table));
  const std::string convention(shell::flotation_convention);
  section.blocks.emplace_back(Paragraph{"flotation_convention",
                                        std::string(note("flotation-convention")),
                                        checked ? Value(convention) : Value(nullptr),
                                        Role::muted,
                                        checked});
  if (const std::string_view what = missing(s); !what.empty()) {
    section.blocks.emplace_back(Paragraph{"", std::string(note(what)), {}, Role::caution, true});
  }
}

Table totals_table(const document::Facts& metric, const document::Facts& us) {
  Table table;
  table.key = "totals";
  table.columns = {{"quantity", say::quantity},
                   {"metric", say::metric, Align::right},
                   {"us", "US", Align::right},
                   {"us_unit", "", Align::left, false}};
  for (std::size_t i = 0; i < metric.facts.size(); ++i) {
    const document::Fact& fact = metric.facts[i];
    if (!fact.shown) continue;
    Cell us_cell = us.facts[i].cell;
    us_cell.value = in_us(fact.key, fact.cell.value);
    const std::string name = fact.key.empty() ? fact.label : fact.key;
    table.rows.push_back({{{fact.label, Value(name), Role::plain},
                           fact.cell,
                           std::move(us_cell),
                           Cells::words(us_unit(fact.key))},
                          fact.cell.role == Role::total ? Role::total : Role::plain,
                          !fact.key.empty()});
  }
  return table;
}

}  // namespace basinwright::report
