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

// No acid spent on the shell.
Cell at_worst(chemistry::Ph ph) {
  Cell cell = ph_cell(ph);
  cell.text += " at worst";
  return cell;
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
          w.wash == Wash::etch ? at_worst(w.ph.value) : ph_cell(w.ph.value),
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
    Cell dose = c.small(out.dechlorinator);
    dose.text = "up to " + dose.text +
                " of sodium thiosulfate, a fifth more than it takes; never into acid";
    add("thiosulfate_kg", "Chlorine out of the wash", std::move(dose));
  }
  Cell pool = c.small(d.pool_dechlorinator);
  pool.text += " of sodium thiosulfate for each mg/L read";
  add("pool_thiosulfate_kg_per_mg_l", "Chlorine out of the pool water", std::move(pool));
  return facts;
}

Table sump_table(const Subject& s, const Cells& c) {
  const job::Discharge& d = s.plan.discharge;
  Table table;
  table.key = "sump";
  table.caption = fmt::format(
      "Bicarbonate for the etch water in the sump to reach pH {}, by the pH it reads: closed or "
      "still, fizzing, or blown with air; under 1 the upper bound holds; half of it, then measure "
      "again; never pumped by the table alone",
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
          c.small(row.still),
          c.small(row.fizzing),
          c.small(row.aerated),
          c.gas(row.carbon_dioxide),
          {units::show(row.of_shell, 2), Value(row.of_shell.share()), Role::quantity}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

// What the reading somebody took means.
std::string reading_text(const Subject& s) {
  const double ph = s.job.site.sump_ph.value_or(0.0);
  switch (s.plan.discharge.reading) {
    case job::SumpReading::none:
      return "";
    case job::SumpReading::dosed:
      return fmt::format("The sump reads pH {}: the first line is for it.", units::fixed(ph, 1));
    case job::SumpReading::little_by_little:
      return fmt::format(
          "The sump reads pH {}, where a reading no longer tells how much acid is left: air, a "
          "little bicarbonate, and measure again.",
          units::fixed(ph, 1));
    case job::SumpReading::inside:
      return fmt::format("The sump reads pH {}: inside the limits, nothing to add.",
                         units::fixed(ph, 1));
    case job::SumpReading::too_alkaline:
      break;
  }
  return fmt::format(
      "The sump reads pH {}, above what the sewer takes: no acid into it; with leave only, or "
      "tanked away.",
      units::fixed(ph, 1));
}

void add_order(const Subject& s, document::Section& section) {
  if (!s.plan.quantities.chlorine_wash || !s.plan.quantities.etch) return;
  section.blocks.emplace_back(document::Paragraph{
      "",
      "One wash water at a time: sump, pump and hose are emptied and rinsed between the chlorine "
      "wash and the etch; the two never meet there either.",
      {},
      Role::caution,
      true});
}

void add_readings(const Subject& s, document::Section& section) {
  const std::string text = reading_text(s);
  if (!text.empty()) {
    section.blocks.emplace_back(document::Paragraph{"reading", text, {}, Role::plain, true});
  }
  if (s.plan.discharge.beyond_bicarbonate) {
    section.blocks.emplace_back(document::Paragraph{
        "",
        "The sewer asks for more than pH 8.3, which bicarbonate alone does not reach: ask the "
        "authority before any stronger alkali.",
        {},
        Role::caution,
        true});
  }
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
  add_order(s, section);
  section.blocks.emplace_back(sump_table(s, c));
  add_readings(s, section);
  if (d.carbon_dioxide_worst > units::Volume()) {
    section.blocks.emplace_back(document::Paragraph{
        "carbon_dioxide",
        fmt::format("Neutralising all the acid gives off up to {} of carbon dioxide, {} of the "
                    "shell were it to stay. It is heavier than air and lies in the deep end, where "
                    "1.5 % is the most for a quarter of an hour: draw air from the lowest point, "
                    "nobody at the sump alone.",
                    c.gas(d.carbon_dioxide_worst).text,
                    units::show(d.of_shell_worst, 1)),
        Value(document::Object{{"worst_l", Value(d.carbon_dioxide_worst.in(units::litres))},
                               {"of_shell", Value(d.of_shell_worst.share())}}),
        Role::caution,
        true});
  }
  return section;
}

}  // namespace basinwright::report
