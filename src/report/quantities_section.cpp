#include <fmt/format.h>

#include "sections.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Fact;
using document::Facts;
using document::Table;

void add(Facts& facts, std::string key, std::string label, Cell cell, bool shown = true) {
  facts.facts.push_back({std::move(key), std::move(label), std::move(cell), shown});
}

void add_washes(const job::Quantities& q, const Cells& c, Facts& facts) {
  if (q.chlorine_wash) {
    if (q.chlorine_wash->granules > units::Mass()) {
      add(facts,
          "chlorine_wash.granules_kg",
          "Chlorine wash: granules",
          c.mass(q.chlorine_wash->granules, 2));
    } else {
      add(facts,
          "chlorine_wash.liquid_l",
          "Chlorine wash: liquid",
          c.litres(q.chlorine_wash->liquid));
    }
    add(facts,
        "chlorine_wash.water_l",
        "Chlorine wash: water first",
        c.litres(q.chlorine_wash->water));
    add(facts, "chlorine_wash.solution_l", "", c.litres(q.chlorine_wash->solution), false);
  } else {
    add(facts, "chlorine_wash", "Chlorine wash", Cells::nothing("not needed: no algae"), false);
  }
  if (q.degrease) {
    add(facts, "degrease.concentrate_l", "Degreaser concentrate", c.small(q.degrease->concentrate));
    add(facts, "degrease.water_l", "Degreaser: warm water", c.litres(q.degrease->water));
  }
}

std::string ratio(chemistry::Parts parts) {
  if (parts.water <= 0.0) return "neat";
  return fmt::format("{:g} : {:g}", parts.acid, parts.water);
}

Cell mixes_cell(const chemistry::Etch& etch) {
  document::Array mixes;
  mixes.reserve(etch.mixes.size());
  for (const chemistry::EtchMix& m : etch.mixes) {
    mixes.push_back(document::Object{{"where", Value(m.where)},
                                     {"acid_parts", Value(m.ratio.parts.acid)},
                                     {"water_parts", Value(m.ratio.parts.water)},
                                     {"acid_l", Value(m.acid.in(units::litres))},
                                     {"water_l", Value(m.water.in(units::litres))},
                                     {"mass_percent", Value(m.mixed.strength.in_percent())},
                                     {"above_published", Value(m.above_published)}});
  }
  return {"", Value(std::move(mixes)), Role::plain};
}

void add_etch(const job::Quantities& q, const Cells& c, Facts& facts) {
  if (!q.etch) {
    add(facts, "etch", "Etch", Cells::nothing("none"), false);
    add(facts, "neutralise", "Neutralise", Cells::nothing("none"), false);
    return;
  }
  add(facts, "etch.acid_l", "Etch: acid", c.litres(q.etch->acid));
  add(facts, "etch.water_l", "Etch: water, put in first", c.litres(q.etch->water));
  add(facts, "etch.solution_l", "Etch: solution", c.litres(q.etch->solution));
  add(facts, "etch.wall_solution_l", "Etch: on the walls, first", c.litres(q.etch->wall_solution));
  add(facts, "etch.floor_solution_l", "Etch: on the floor", c.litres(q.etch->floor_solution));
  for (const chemistry::EtchMix& m : q.etch->mixes) {
    const std::string where = m.where == "all" ? "" : " (" + m.where + ")";
    std::string text = fmt::format(
        "{} acid to water, {} by weight", ratio(m.ratio.parts), units::show(m.mixed.strength, 1));
    text += m.above_published ? "; published practice 5 to 10 %" : "; inside published 5 to 10 %";
    add(facts,
        "",
        "Etch: mix" + where,
        {text, {}, m.above_published ? Role::caution : Role::plain});
    if (m.ratio.milder_than_rule) add(facts, "", "", {m.ratio.reason, {}, Role::caution});
  }
  add(facts, "etch.mixes", "", mixes_cell(*q.etch), false);
  add(facts,
      "neutralise.surface_kg",
      "Bicarbonate, surface wash",
      c.mass(q.neutralise->surface.bicarbonate));
  add(facts,
      "neutralise.water_l",
      "Bicarbonate: warm water",
      c.litres(q.neutralise->surface.water));
  Cell sump = c.mass(q.neutralise->sump_worst);
  sump.text = "up to " + sump.text + " (no acid spent); then by the measured pH";
  add(facts, "neutralise.sump_worst_kg", "Bicarbonate, sump", std::move(sump));
}

void add_repairs(const Subject& s, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  const job::FillerNeed& filler = q.filler;
  if (filler.batches > 0) {
    add(facts, "filler.litres", "Two-part filler", c.small(filler.litres));
    Cell batches = Cells::count(filler.batches);
    batches.text =
        fmt::format("{} of {}, equal volumes of A and B, used within {}",
                    filler.batches,
                    c.small(filler.batch).text,
                    units::show_in(s.rates.thresholds.filler_work.value, units::minutes, 0));
    add(facts, "filler.batches", "Filler: batches", std::move(batches));
    add(facts, "filler.batch_l", "", c.litres(filler.batch, 2), false);
    add(facts,
        "filler.cure_h",
        "Filler: cure before sanding",
        c.hours(s.rates.waits.filler_cure.value, 0));
  } else {
    add(facts, "filler", "Filler", Cells::nothing("none"), false);
  }
  if (q.mortar > units::Mass()) {
    add(facts, "mortar_kg", "Sand and cement mortar", c.mass(q.mortar));
    add(facts,
        "mortar_wait_days",
        "Mortar: wait before acid",
        {units::show(s.rates.thresholds.cement_age.value, 0),
         Value(s.rates.thresholds.cement_age.value.in(units::days)),
         Role::quantity});
  }
  if (q.dust > units::Mass()) add(facts, "dust_kg", "Dust of the old coat", c.mass(q.dust));
  add(facts, "readings.surface_ph", "Surface pH readings", Cells::count(q.readings.surface_ph));
  add(facts,
      "readings.dryness_sheets",
      "Plastic sheets, dryness",
      Cells::count(q.readings.dryness_sheets));
}

}  // namespace

document::Section quantities_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Quantities& q = s.plan.quantities;
  document::Section section;
  section.key = "quantities";
  section.title = "Quantities";
  Facts facts;
  add_washes(q, c, facts);
  add_etch(q, c, facts);
  add_repairs(s, c, facts);
  if (q.primer) {
    add(facts, "primer.area_m2", "Primer: area", c.area(q.primer->area));
    add(facts, "primer.kits", "Primer: kits", Cells::count(q.primer->kits));
    add(facts, "primer.litres", "", c.litres(q.primer->litres), false);
  } else {
    add(facts, "primer", "Primer", Cells::nothing("none"), false);
  }
  add(facts, "kits", "Kits in all", Cells::count(q.kits));
  section.blocks.emplace_back(std::move(facts));
  return section;
}

document::Section coats_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Plan& plan = s.plan;
  document::Section section;
  section.key = "quantities";
  section.title = "Coats";
  const auto& system = plan.system;
  const std::string name = system.name.empty() ? "no system named; usual values" : system.name;
  section.blocks.emplace_back(Facts{{
      {"", "System", Cells::words(name)},
      {"", "Kit", c.litres(system.kit.value)},
      {"",
       "Cover of a kit",
       Cells::words(fmt::format("{} to {}, {} expected",
                                units::show(system.cover_low.value, s.units, 1),
                                units::show(system.cover_high.value, s.units, 1),
                                units::show(system.expected_cover().value, s.units, 1)))},
  }});
  Table table;
  table.key = "coats";
  table.columns = {{"number", "Coat", Align::right},
                   {"area_m2", "Area", Align::right},
                   {"litres", "Paint", Align::right},
                   {"kits", "Kits", Align::right},
                   {"thinner_l", "Thinner", Align::right}};
  for (const coverage::Coat& coat : plan.quantities.coats) {
    table.rows.push_back({{Cells::count(coat.number),
                           c.area(coat.area),
                           c.litres(coat.paint),
                           Cells::count(coat.kits),
                           c.litres(coat.thinner, 2)}});
  }
  section.blocks.emplace_back(std::move(table));
  const auto& cut = plan.quantities.cut;
  if (cut.sections.size() > 1) {
    Table sections;
    sections.key = "sections";
    sections.caption =
        fmt::format("{}, deep end first; {} painters would do a coat in one morning",
                    cut.names.empty() ? fmt::format("Cut over {} mornings", cut.sections.size())
                                      : std::string("Cut at the sections that the job file names"),
                    cut.painters_for_one);
    sections.columns = {{"section", "Section"},
                        {"area_m2", "Area", Align::right},
                        {"kits", "Kits a coat", Align::right}};
    for (std::size_t i = 0; i < cut.sections.size(); ++i) {
      const std::string called = cut.names.empty() ? std::to_string(i + 1) : cut.names[i];
      sections.rows.push_back(
          {{Cells::words(called), c.area(cut.sections[i]), Cells::count(cut.kits[i])}});
    }
    section.blocks.emplace_back(std::move(sections));
  }
  return section;
}

}  // namespace basinwright::report
