// The take-off's tables: bodies of water, sections by surface, both unit systems.
#include <fmt/format.h>
#include <array>

#include "basinwright/shell/parts.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/units/unit.hpp"
#include "take_off_facts.hpp"
#include "wording/common.hpp"
#include "wording/take_off.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Array;
using document::Column;
using document::Row;
using document::Table;
using units::Area;

// A list of boundaries longer than this helps nobody.
constexpr double most_boundaries = 1000.0;

// Adding zero takes the sign off a zero.
double machine_area(Area a, Machine machine) {
  return (machine == Machine::us ? a.in(units::square_feet) : a.in(units::square_metres)) + 0.0;
}
std::string area_key(std::string_view stem, Machine machine) {
  return fmt::format("{}_{}", stem, machine == Machine::us ? "ft2" : "m2");
}

// The number alone; the table's caption names the unit.
Cell bare(Area a, const Cells& c, Machine machine, Role role = Role::quantity) {
  const bool us = c.system() == units::System::us;
  const double shown = us ? a.in(units::square_feet) : a.in(units::square_metres);
  return {units::fixed(shown, 1), machine_area(a, machine), role};
}

Cell valued(Cell cell, Area a, Machine machine) {
  cell.value = machine_area(a, machine);
  return cell;
}

Array metres_of(const std::vector<units::Length>& positions) {
  Array out;
  for (const units::Length p : positions) out.emplace_back(p.in(units::metres));
  return out;
}

Value sections_of(const Subject& s, std::size_t body) {
  Array cuts;
  Array areas;
  const bool deep_last = shell::section_axis(s.job.bodies[body].pool).deep_end_last;
  bool first = true;
  for (const job::SectionPart& part : s.plan.take_off.parts) {
    if (part.body != body) continue;
    // A part's near end is where the one before it, on the deep side, was cut off.
    const units::Length cut = deep_last ? part.measured.to : part.measured.from;
    if (!first) cuts.emplace_back(cut.in(units::metres));
    areas.emplace_back(part.painted().in(units::square_metres));
    first = false;
  }
  const Area cover = s.plan.system.expected_cover().value;
  const Area painted = s.plan.take_off.bodies[body].take_off.painted_area;
  const Value boundaries =
      painted / cover > most_boundaries
          ? Value(nullptr)
          : Value(metres_of(shell::kit_boundaries(s.job.bodies[body].pool, cover)));
  return document::Object{{"cuts_m", Value(std::move(cuts))},
                          {"areas_deep_to_shallow_m2", Value(std::move(areas))},
                          {"kit_boundaries_m", boundaries}};
}

// What stands in the table of sections, surface by surface.
struct Surface {
  std::string_view stem, title;
  Area (*of)(const job::SectionPart&);
};
constexpr std::array<Surface, 7> surfaces{{
    {"wall_area", say::walls, [](const job::SectionPart& p) { return p.measured.walls; }},
    {"floor_area", say::floor, [](const job::SectionPart& p) { return p.measured.floor; }},
    {"tread_area", say::treads, [](const job::SectionPart& p) { return p.measured.treads; }},
    {"riser_area", say::risers, [](const job::SectionPart& p) { return p.measured.risers; }},
    {"cove_area_change",
     say::cove,
     [](const job::SectionPart& p) { return p.measured.cove_change; }},
    {"named_area", say::named, [](const job::SectionPart& p) { return p.named.sum(); }},
    {"painted_area", say::painted, [](const job::SectionPart& p) { return p.painted(); }},
}};

}  // namespace

Table bodies_table(const Subject& s, const Cells& c, Machine machine) {
  const bool us = machine == Machine::us;
  Table table;
  table.key = us ? "bodies_us" : "bodies";
  table.caption = say::bodies_of_water;
  table.columns = {{"name", say::body},
                   {area_key("floor_area", machine), say::floor, Align::right},
                   {area_key("wall_area", machine), say::walls, Align::right},
                   {area_key("painted_area", machine), say::painted, Align::right},
                   {us ? "water_volume_us_gal" : "water_volume_m3", say::water, Align::right}};
  if (!us) table.columns.push_back({"sections", "", Align::left, false});
  for (std::size_t b = 0; b < s.plan.take_off.bodies.size(); ++b) {
    const job::BodyResult& body = s.plan.take_off.bodies[b];
    const units::Volume water = body.take_off.water_volume;
    Cell bulk = c.bulk(water);
    if (us) bulk.value = water.in(units::us_gallons);
    Row row{{Cells::words(body.name),
             valued(c.area(body.take_off.floor_area), body.take_off.floor_area, machine),
             valued(c.area(body.take_off.wall_area), body.take_off.wall_area, machine),
             valued(c.area(body.painted()), body.painted(), machine),
             std::move(bulk)}};
    if (!us) row.cells.push_back({"", sections_of(s, b), Role::plain});
    table.rows.push_back(std::move(row));
  }
  table.shown = s.plan.take_off.bodies.size() > 1;
  return table;
}

Table parts_table(const Subject& s, const Cells& c, Machine machine) {
  const auto& parts = s.plan.take_off.parts;
  const bool us = c.system() == units::System::us;
  Table table;
  table.key = machine == Machine::us ? "parts_us" : "parts";
  table.caption = fmt::format(say::by_section_and_surface_deep_end_first, us ? "ft²" : "m²");
  table.columns = {{"section", say::section},
                   {"body", say::body, Align::left, s.job.bodies.size() > 1}};
  std::vector<Area> totals(surfaces.size());
  for (std::size_t i = 0; i < surfaces.size(); ++i) {
    bool any = i == 0 || i + 1 == surfaces.size();
    for (const job::SectionPart& part : parts) {
      totals[i] += surfaces[i].of(part);
      any = any || surfaces[i].of(part) != Area();
    }
    table.columns.push_back(
        {area_key(surfaces[i].stem, machine), std::string(surfaces[i].title), Align::right, any});
  }
  if (machine == Machine::metric) {
    table.columns.push_back({"from_m", "", Align::left, false});
    table.columns.push_back({"to_m", "", Align::left, false});
  }
  for (const job::SectionPart& part : parts) {
    Row row{{Cells::words(part.section), Cells::words(s.plan.take_off.bodies[part.body].name)}};
    for (const Surface& surface : surfaces) {
      row.cells.push_back(bare(surface.of(part), c, machine));
    }
    if (machine == Machine::metric) {
      row.cells.push_back(c.length(part.measured.from));
      row.cells.push_back(c.length(part.measured.to));
    }
    table.rows.push_back(std::move(row));
  }
  Row sum{{Cells::words(say::total), Cells::words("")}, Role::total, false};
  for (const Area total : totals) sum.cells.push_back(bare(total, c, machine, Role::total));
  while (sum.cells.size() < table.columns.size()) sum.cells.push_back(Cells::nothing(""));
  table.rows.push_back(std::move(sum));
  table.shown = parts.size() > 1;
  return table;
}

Table cuts_table(const Subject& s, const Cells& c) {
  Table table;
  table.caption = say::where_sections_begin_and_end_along_the;
  table.columns = {{"", say::section},
                   {"", say::body, Align::left, s.job.bodies.size() > 1},
                   {"", say::from, Align::right},
                   {"", say::to, Align::right}};
  for (const job::SectionPart& part : s.plan.take_off.parts) {
    const bool deep_last = shell::section_axis(s.job.bodies[part.body].pool).deep_end_last;
    const auto& m = part.measured;
    table.rows.push_back({{Cells::words(part.section),
                           Cells::words(s.plan.take_off.bodies[part.body].name),
                           c.length(deep_last ? m.to : m.from),
                           c.length(deep_last ? m.from : m.to)}});
  }
  return table;
}

document::Facts sections_facts(const Subject& s) {
  const bool one = s.job.bodies.size() == 1;
  return document::Facts{
      {{"sections", "", {"", one ? sections_of(s, 0) : Value(nullptr), Role::plain}, false}}};
}

}  // namespace basinwright::report
