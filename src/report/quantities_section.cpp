#include <fmt/format.h>

#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/materials.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Fact;
using document::Facts;
using document::Table;

void add_fact(Facts& facts, std::string key, std::string label, Cell cell, bool shown = true) {
  facts.facts.push_back({std::move(key), std::move(label), std::move(cell), shown});
}

void add_washes(const job::Quantities& q, const Cells& c, Facts& facts) {
  if (q.chlorine_wash) {
    if (q.chlorine_wash->granules > units::Mass()) {
      add_fact(facts,
               "chlorine_wash.granules_kg",
               say::chlorine_wash_granules,
               c.mass(q.chlorine_wash->granules, 2));
    } else {
      add_fact(facts,
               "chlorine_wash.liquid_l",
               say::chlorine_wash_liquid,
               c.litres(q.chlorine_wash->liquid));
    }
    add_fact(facts,
             "chlorine_wash.water_l",
             say::chlorine_wash_water_first,
             c.litres(q.chlorine_wash->water));
    add_fact(facts, "chlorine_wash.solution_l", "", c.litres(q.chlorine_wash->solution), false);
  } else {
    add_fact(facts,
             "chlorine_wash",
             say::chlorine_wash,
             Cells::nothing(say::not_needed_no_algae),
             false);
  }
  if (q.degrease) {
    add_fact(facts,
             "degrease.concentrate_l",
             say::degreaser_concentrate,
             c.small(q.degrease->concentrate));
    add_fact(facts, "degrease.water_l", say::degreaser_warm_water, c.litres(q.degrease->water));
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
    add_fact(facts, "etch", say::etch, Cells::nothing(say::none), false);
    add_fact(facts, "neutralise", say::neutralise, Cells::nothing(say::none), false);
    return;
  }
  add_fact(facts, "etch.acid_l", say::etch_acid, c.litres(q.etch->acid));
  add_fact(facts, "etch.water_l", say::etch_water_put_in_first, c.litres(q.etch->water));
  add_fact(facts, "etch.solution_l", say::etch_solution, c.litres(q.etch->solution));
  add_fact(
      facts, "etch.wall_solution_l", say::etch_on_the_walls_first, c.litres(q.etch->wall_solution));
  add_fact(
      facts, "etch.floor_solution_l", say::etch_on_the_floor, c.litres(q.etch->floor_solution));
  for (const chemistry::EtchMix& m : q.etch->mixes) {
    const std::string where = m.where == "all" ? "" : " (" + m.where + ")";
    std::string text = fmt::format(
        say::acid_to_water_by_weight, ratio(m.ratio.parts), units::show(m.mixed.strength, 1));
    text += m.above_published ? say::published_practice_5_to_10_percent
                              : say::inside_published_5_to_10_percent;
    add_fact(facts,
             "",
             say::etch_mix + where,
             {text, {}, m.above_published ? Role::caution : Role::plain});
    if (m.ratio.milder_than_rule) add_fact(facts, "", "", {m.ratio.reason, {}, Role::caution});
  }
  add_fact(facts, "etch.mixes", "", mixes_cell(*q.etch), false);
  add_fact(facts,
           "neutralise.surface_kg",
           say::bicarbonate_surface_wash,
           c.mass(q.neutralise->surface.bicarbonate));
  add_fact(facts,
           "neutralise.water_l",
           say::bicarbonate_warm_water,
           c.litres(q.neutralise->surface.water));
  Cell sump = c.mass(q.neutralise->sump_worst);
  sump.text = say::up_to + sump.text + say::no_acid_spent_then_by_the_measured_ph;
  add_fact(facts, "neutralise.sump_worst_kg", say::bicarbonate_sump, std::move(sump));
}

void add_repairs(const Subject& s, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  const job::FillerNeed& filler = q.filler;
  if (filler.batches > 0) {
    add_fact(facts, "filler.litres", say::two_part_filler, c.small(filler.litres));
    Cell batches = Cells::count(filler.batches);
    batches.text =
        fmt::format(say::of_equal_volumes_of_a_and_b_used,
                    filler.batches,
                    c.small(filler.batch).text,
                    units::show_in(s.rates.thresholds.filler_work.value, units::minutes, 0));
    add_fact(facts, "filler.batches", say::filler_batches, std::move(batches));
    add_fact(facts, "filler.batch_l", "", c.litres(filler.batch, 2), false);
    add_fact(facts,
             "filler.cure_h",
             say::filler_cure_before_sanding,
             c.hours(s.rates.waits.filler_cure.value, 0));
  } else {
    add_fact(facts, "filler", say::filler, Cells::nothing(say::none), false);
  }
  if (q.mortar > units::Mass()) {
    add_fact(facts, "mortar_kg", say::sand_and_cement_mortar, c.mass(q.mortar));
    add_fact(facts,
             "mortar_wait_days",
             say::mortar_wait_before_acid,
             {units::show(s.rates.thresholds.cement_age.value, 0),
              Value(s.rates.thresholds.cement_age.value.in(units::days)),
              Role::quantity});
  }
  if (q.dust > units::Mass()) add_fact(facts, "dust_kg", say::dust_of_the_old_coat, c.mass(q.dust));
  add_fact(
      facts, "readings.surface_ph", say::surface_ph_readings, Cells::count(q.readings.surface_ph));
  add_fact(facts,
           "readings.dryness_sheets",
           say::plastic_sheets_dryness,
           Cells::count(q.readings.dryness_sheets));
}

}  // namespace

document::Section quantities_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Quantities& q = s.plan.quantities;
  document::Section section;
  section.key = "quantities";
  section.title = say::quantities;
  Facts facts;
  add_washes(q, c, facts);
  add_etch(q, c, facts);
  add_repairs(s, c, facts);
  if (q.primer) {
    add_fact(facts, "primer.area_m2", say::primer_area, c.area(q.primer->area));
    add_fact(facts, "primer.kits", say::kits_of_primer, Cells::count(q.primer->kits));
    add_fact(facts, "primer.litres", "", c.litres(q.primer->litres), false);
  } else {
    add_fact(facts, "primer", say::primer, Cells::nothing(say::none), false);
  }
  add_fact(facts, "kits", say::kits_in_all, Cells::count(q.kits));
  section.blocks.emplace_back(std::move(facts));
  return section;
}

document::Section coats_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Plan& plan = s.plan;
  document::Section section;
  section.key = "quantities";
  section.title = say::coats;
  const auto& system = plan.system;
  const std::string name = system.name.empty() ? say::no_system_named_usual_values : system.name;
  section.blocks.emplace_back(Facts{{
      {"", say::system, Cells::words(name)},
      {"", say::kit, c.litres(system.kit.value)},
      {"",
       say::cover_of_a_kit,
       Cells::words(fmt::format(say::to_expected,
                                units::show(system.cover_low.value, s.units, 1),
                                units::show(system.cover_high.value, s.units, 1),
                                units::show(system.expected_cover().value, s.units, 1)))},
  }});
  Table table;
  table.key = "coats";
  table.columns = {{"number", say::coat, Align::right},
                   {"area_m2", say::area, Align::right},
                   {"litres", say::paint, Align::right},
                   {"kits", say::kits, Align::right},
                   {"thinner_l", say::thinner, Align::right}};
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
        fmt::format(say::deep_end_first_painters_would_do_a,
                    cut.names.empty() ? fmt::format(say::cut_over_mornings, cut.sections.size())
                                      : std::string(say::cut_at_the_sections_that_the_job_file),
                    cut.painters_for_one);
    sections.columns = {{"section", say::section},
                        {"area_m2", say::area, Align::right},
                        {"kits", say::kits_a_coat, Align::right}};
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
