#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using chemistry::FirstStep;
using chemistry::Verdict;
using chemistry::Wash;
using document::Align;
using document::Fact;
using document::Table;

std::string wash_code(Wash wash) {
  switch (wash) {
    case Wash::chlorine:
      return "chlorine-wash";
    case Wash::degrease:
      return "degreasing-wash";
    case Wash::etch:
      return "etch-wash";
    case Wash::neutralise:
    case Wash::rinse:
      break;
  }
  return "neutralising-wash";
}

std::string verdict_code(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "fits";
    case Verdict::treat:
      return "treat";
    case Verdict::refused:
      return "refused";
    case Verdict::hazardous:
      break;
  }
  return "hazardous";
}

std::string first_code(FirstStep first) {
  switch (first) {
    case FirstStep::ask_leave:
      return "ask-leave";
    case FirstStep::take_out_chlorine:
      return "take-out-chlorine";
    case FirstStep::add_bicarbonate:
      return "add-bicarbonate";
    case FirstStep::lower_ph:
      break;
  }
  return "lower-ph";
}

Cell ph_cell(chemistry::Ph ph) {
  return {units::fixed(ph.value(), 1), Value(ph.value()), Role::quantity};
}

Table waters_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "waters";
  table.columns = {{"what", "Water of the"},
                   {"volume_l", "With rinses", Align::right},
                   {"ph", "pH", Align::right},
                   {"ph_source", "", Align::left, false},
                   {"verdict", "Sewer"},
                   {"first", "First"}};
  for (const job::WashWaterOut& out : s.plan.discharge.waters) {
    const chemistry::WasteWater& w = out.water;
    const std::string code = wash_code(w.wash);
    const std::string name(waste(code).substr(0, waste(code).find(',')));
    const std::string verdict_is = verdict_code(w.verdict);
    const Role role = w.verdict == Verdict::fits ? Role::good : Role::caution;
    const std::string first = first_code(w.first);
    table.rows.push_back(
        {{Cells::coded(name, code),
          c.litres(w.volume, 0),
          ph_cell(w.ph.value),
          Cells::words(fmt::format("{}: {}", sources::name(w.ph.source.kind), w.ph.source.key)),
          {std::string(verdict(verdict_is)), Value(verdict_is), role},
          Cells::coded(std::string(first_step(first)), first)}});
  }
  return table;
}

std::string limits_text(const chemistry::SewerLimits& limits) {
  const bool assumed = limits.lowest.source.kind == sources::Kind::assumed ||
                       limits.highest.source.kind == sources::Kind::assumed;
  return fmt::format("pH {} to {}{}; never under 5.0",
                     units::fixed(limits.lowest.value.value(), 1),
                     units::fixed(limits.highest.value.value(), 1),
                     assumed ? ", assumed: ask the authority" : "");
}

document::Facts facts_of(const Subject& s, const Cells& c) {
  const job::Discharge& d = s.plan.discharge;
  document::Facts facts;
  const auto add = [&](const char* key, const char* label, Cell cell, bool shown = true) {
    facts.facts.push_back({key, label, std::move(cell), shown});
  };
  add("", "Sewer takes", Cells::words(limits_text(d.limits)));
  add("sewer.ph_min", "", ph_cell(d.limits.lowest.value), false);
  add("sewer.ph_max", "", ph_cell(d.limits.highest.value), false);
  add("", "Storm drain", {"never, none of it", {}, Role::caution});
  for (const job::WashWaterOut& out : d.waters) {
    if (out.water.wash != Wash::chlorine) continue;
    Cell dose = c.mass(out.dechlorinator, 2);
    dose.text = "up to " + dose.text + " of sodium thiosulfate, a fifth of it in hand";
    add("thiosulfate_kg", "Chlorine out of the wash", std::move(dose));
  }
  Cell pool = c.mass(d.pool_dechlorinator, 3);
  pool.text += " of sodium thiosulfate for each mg/L read";
  add("pool_thiosulfate_kg_per_mg_l", "Chlorine out of the pool water", std::move(pool));
  return facts;
}

Table sump_table(const Subject& s, const Cells& c) {
  const job::Discharge& d = s.plan.discharge;
  Table table;
  table.key = "sump";
  table.caption = fmt::format(
      "Bicarbonate for the etch water in the sump to reach pH {}, by the pH it reads: still, "
      "fizzing or blown with air; under 1 the upper bound holds; measure again before pumping",
      units::fixed(d.target.value(), 1));
  table.columns = {{"ph", "Reads", Align::right},
                   {"still_kg", "Still", Align::right},
                   {"fizzing_kg", "Fizzing", Align::right},
                   {"aerated_kg", "Aerated", Align::right},
                   {"carbon_dioxide_l", "Gas given off", Align::right},
                   {"of_shell", "Of the shell", Align::right}};
  for (const job::SumpRow& row : d.sump) {
    table.rows.push_back(
        {{ph_cell(row.measured),
          c.mass(row.still, 3),
          c.mass(row.fizzing, 3),
          c.mass(row.aerated, 3),
          c.litres(row.carbon_dioxide, 0),
          {units::show(row.of_shell, 2), Value(row.of_shell.share()), Role::quantity}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

}  // namespace

document::Section wash_water_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Discharge& d = s.plan.discharge;
  document::Section section;
  section.key = "wash_water";
  section.title = "Water of the washes, and the sump";
  section.blocks.emplace_back(waters_table(s, c));
  section.blocks.emplace_back(facts_of(s, c));
  section.blocks.emplace_back(sump_table(s, c));
  if (d.carbon_dioxide_worst > units::Volume()) {
    section.blocks.emplace_back(document::Paragraph{
        "carbon_dioxide",
        fmt::format("Neutralising all the acid gives off up to {} of carbon dioxide, {} of the "
                    "shell were it to stay. It is heavier than air and lies in the deep end, where "
                    "1.5 % is the most for a quarter of an hour: draw air from the lowest point, "
                    "nobody at the sump alone.",
                    c.litres(d.carbon_dioxide_worst, 0).text,
                    units::show(d.of_shell_worst, 1)),
        Value(document::Object{{"worst_l", Value(d.carbon_dioxide_worst.in(units::litres))},
                               {"of_shell", Value(d.of_shell_worst.share())}}),
        Role::caution,
        true});
  }
  return section;
}

}  // namespace basinwright::report
