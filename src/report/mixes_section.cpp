#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/materials.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Row;
using document::Table;

std::string vessel_name(const job::VesselMix& mix) {
  if (mix.wash != "etch") return std::string(waste(mix.wash)).substr(0, waste(mix.wash).find(','));
  return mix.where.empty() || mix.where == "all" ? say::etch : fmt::format(say::etch_of, mix.where);
}

// What is added to the water: a volume of liquid or a mass of solid.
Cell agent_cell(const Cells& c, units::Volume volume, units::Mass mass) {
  return mass > units::Mass() ? c.small(mass) : c.small(volume);
}

Row mix_row(const job::VesselMix& mix, bool last, const Cells& c) {
  Row row;
  const std::int64_t count = last ? 1 : mix.full;
  row.cells = {Cells::coded(vessel_name(mix), mix.wash),
               mix.where.empty() ? Cells::nothing("") : Cells::words(mix.where),
               Cells::words(mix.vessel),
               Cells::count(count),
               c.small(last ? mix.last_water : mix.water),
               last ? agent_cell(c, mix.last_agent, mix.last_mass)
                    : agent_cell(c, mix.agent, mix.agent_mass)};
  const bool solid = mix.agent_mass > units::Mass();
  row.cells.push_back(Cells::words(solid ? "kg" : "L"));
  return row;
}

std::string parts_text(const std::optional<chemistry::Parts>& parts) {
  if (!parts) return say::the_acid_is_no_stronger;
  return fmt::format("1 : {}", units::fixed(parts->water / parts->acid, 1));
}

Cell parts_cell(const std::optional<chemistry::Parts>& parts) {
  Cell cell = Cells::words(parts_text(parts));
  cell.value = parts ? Value(parts->water / parts->acid) : Value(nullptr);
  return cell;
}

std::string vapour_text(const chemistry::Vapour& vapour) {
  const char* bound = vapour.bound == chemistry::Bound::at_most    ? say::at_most
                      : vapour.bound == chemistry::Bound::at_least ? say::at_least
                                                                   : say::about;
  // Two figures are what a table of partial pressures is good for.
  constexpr double figures = 100.0;
  double ppm = vapour.by_volume.count();
  double step = 1.0;
  while (ppm / step >= figures) step *= 10.0;
  ppm = std::round(ppm / step) * step;
  return bound + grouped(units::fixed(ppm, 0));
}

Cell vapour_cell(const chemistry::Vapour& vapour) {
  return {vapour_text(vapour), Value(vapour.by_volume.count()), Role::plain};
}

Table strengths_table(const Subject& s) {
  Table table;
  table.key = "etch";
  table.caption = say::acid_to_water_by_volume_the_trades_mix;
  table.columns = {{"where", say::etch},
                   {"water_parts", say::trade, Align::right},
                   {"mass_percent", say::by_weight, Align::right},
                   {"published_10_water_parts", "10 %", Align::right},
                   {"published_5_water_parts", "5 %", Align::right},
                   {"bucket_rise_k", say::bucket_warms, Align::right},
                   {"vapour_ppm", say::fume_over_it, Align::right},
                   {"undiluted_vapour_ppm", say::over_neat_acid, Align::right}};
  for (const job::EtchStrength& e : s.plan.mixes.strengths) {
    const bool neat = e.trade.water <= 0.0;
    const std::string trade =
        neat ? "neat" : fmt::format("{:g} : {:g}", e.trade.acid, e.trade.water);
    const Role role = e.strong ? Role::caution : Role::plain;
    table.rows.push_back({{Cells::words(e.where),
                           {trade, Value(e.trade.water / e.trade.acid), role},
                           {units::show(e.by_mass, 1), Value(e.by_mass.in_percent()), role},
                           parts_cell(e.published_strong),
                           parts_cell(e.published_mild),
                           {units::show(e.heat.rise, s.units, 1),
                            Value(e.heat.rise.in(units::kelvins)),
                            Role::quantity},
                           vapour_cell(e.vapour),
                           vapour_cell(e.undiluted)}});
  }
  return table;
}

// Where a mix is above what is published, and where it is stronger than the trade's usual.
void add_warnings(const Subject& s, document::Section& section) {
  const auto warn = [&](const char* text) {
    section.blocks.emplace_back(document::Paragraph{"", text, {}, Role::caution, true});
  };
  const auto& mixes = s.plan.quantities.etch->mixes;
  const auto& strengths = s.plan.mixes.strengths;
  if (std::ranges::any_of(mixes, &chemistry::EtchMix::above_published)) {
    warn(say::stronger_than_the_published_5_to_10);
  }
  if (std::ranges::any_of(strengths, &job::EtchStrength::strong)) {
    warn(say::neat_and_1_1_only_because_the_data);
  }
}

}  // namespace

document::Table mix_table(const Subject& s, std::string_view wash) {
  const Cells c(s.units, s.rates.currency);
  Table table;
  table.caption = say::into_each_vessel_water_first_the_etch;
  table.columns = {{"wash", say::mix},
                   {"where", "", Align::left, false},
                   {"vessel", say::vessel},
                   {"count", say::how_many, Align::right},
                   {"water_l", say::water_first, Align::right},
                   {"agent", say::then, Align::right},
                   {"agent_unit", "", Align::left, false}};
  for (const job::VesselMix& mix : s.plan.mixes.cards) {
    if (!wash.empty() && mix.wash != wash) continue;
    if (mix.full > 0) table.rows.push_back(mix_row(mix, false, c));
    if (mix.has_last()) table.rows.push_back(mix_row(mix, true, c));
  }
  return table;
}

document::Section mixes_section(const Subject& s) {
  document::Section section;
  section.key = "mixes";
  section.title = say::mixes;
  section.shown = !s.plan.mixes.cards.empty();
  Table cards = mix_table(s, "");
  cards.key = "cards";
  section.blocks.emplace_back(std::move(cards));
  Table strengths = strengths_table(s);
  strengths.shown = !strengths.rows.empty();
  section.blocks.emplace_back(std::move(strengths));
  if (s.plan.quantities.etch) add_warnings(s, section);
  return section;
}

}  // namespace basinwright::report
