#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/materials.hpp"
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
  cell.text += say::at_worst;
  return cell;
}

Table waters_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "waters";
  table.columns = {{"what", say::water_of_the},
                   {"volume_l", say::with_rinses, Align::right},
                   {"ph", "pH", Align::right},
                   {"ph_source", "", Align::left, false},
                   {"verdict", say::sewer},
                   {"first", say::first}};
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
  return fmt::format(say::ph_to_never_under_5_0,
                     units::fixed(limits.lowest.value.value(), 1),
                     units::fixed(limits.highest.value.value(), 1),
                     assumed ? say::assumed_ask_the_authority : "");
}

document::Facts wash_water_facts(const Subject& s, const Cells& c) {
  const job::Discharge& d = s.plan.discharge;
  document::Facts facts;
  const auto add = [&](const char* key, const char* label, Cell cell, bool shown = true) {
    facts.facts.push_back({key, label, std::move(cell), shown});
  };
  add("", say::sewer_takes, Cells::words(limits_text(d.limits)));
  add("sewer.ph_min", "", ph_cell(d.limits.lowest.value), false);
  add("sewer.ph_max", "", ph_cell(d.limits.highest.value), false);
  add("", say::storm_drain, {say::never_none_of_it, {}, Role::caution});
  for (const job::WashWaterOut& out : d.waters) {
    if (out.water.wash != Wash::chlorine) continue;
    Cell dose = c.small(out.dechlorinator);
    dose.text = say::up_to + dose.text + say::of_sodium_thiosulfate_a_fifth_more;
    add("thiosulfate_kg", say::chlorine_out_of_the_wash, std::move(dose));
  }
  Cell pool = c.small(d.pool_dechlorinator);
  pool.text += say::of_sodium_thiosulfate_for_each_mg_l;
  add("pool_thiosulfate_kg_per_mg_l", say::chlorine_out_of_the_pool_water, std::move(pool));
  return facts;
}

Table sump_table(const Subject& s, const Cells& c) {
  const job::Discharge& d = s.plan.discharge;
  Table table;
  table.key = "sump";
  table.caption =
      fmt::format(say::bicarbonate_for_the_etch_water_in_the, units::fixed(d.target.value(), 1));
  table.columns = {{"ph", say::reads, Align::right},
                   {"still_kg", say::still, Align::right},
                   {"fizzing_kg", say::fizzing, Align::right},
                   {"aerated_kg", say::aerated, Align::right},
                   {"carbon_dioxide_l", say::gas_given_off, Align::right},
                   {"of_shell", say::of_the_shell, Align::right}};
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
      return fmt::format(say::the_sump_reads_ph_the_first_line_is, units::fixed(ph, 1));
    case job::SumpReading::little_by_little:
      return fmt::format(say::the_sump_reads_ph_where_a_reading_no, units::fixed(ph, 1));
    case job::SumpReading::inside:
      return fmt::format(say::the_sump_reads_ph_inside_the_limits, units::fixed(ph, 1));
    case job::SumpReading::too_alkaline:
      break;
  }
  return fmt::format(say::the_sump_reads_ph_above_what_the_sewer, units::fixed(ph, 1));
}

void add_order(const Subject& s, document::Section& section) {
  if (!s.plan.quantities.chlorine_wash || !s.plan.quantities.etch) return;
  section.blocks.emplace_back(document::Paragraph{
      "", say::one_wash_water_at_a_time_sump_pump_and, {}, Role::caution, true});
}

void add_readings(const Subject& s, document::Section& section) {
  const std::string text = reading_text(s);
  if (!text.empty()) {
    section.blocks.emplace_back(document::Paragraph{"reading", text, {}, Role::plain, true});
  }
  if (s.plan.discharge.beyond_bicarbonate) {
    section.blocks.emplace_back(
        document::Paragraph{"", say::sewer_above_bicarbonates_ph, {}, Role::caution, true});
  }
}

}  // namespace

document::Section wash_water_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Discharge& d = s.plan.discharge;
  document::Section section;
  section.key = "wash_water";
  section.title = say::water_of_the_washes_and_the_sump;
  section.blocks.emplace_back(waters_table(s, c));
  section.blocks.emplace_back(wash_water_facts(s, c));
  add_order(s, section);
  section.blocks.emplace_back(sump_table(s, c));
  add_readings(s, section);
  if (d.carbon_dioxide_worst > units::Volume()) {
    section.blocks.emplace_back(document::Paragraph{
        "carbon_dioxide",
        fmt::format(say::neutralising_all_the_acid_gives_off_up,
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
