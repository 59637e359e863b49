#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "take_off_facts.hpp"
#include "wording/common.hpp"
#include "wording/take_off.hpp"

namespace basinwright::report {

using document::Fact;
using document::Facts;

Facts take_off_facts(const Measured& measured, const Cells& c, bool whole) {
  const shell::TakeOff& t = measured.take_off;
  Facts facts;
  const auto add = [&](const char* key, const char* label, Cell cell, bool shown = true) {
    facts.facts.push_back({key, label, std::move(cell), shown});
  };
  add("plan_area_m2", say::plan_area, c.area(t.plan_area), whole);
  add("perimeter_m", say::perimeter, c.length(t.perimeter));
  add("floor_area_m2", say::floor_true_slope, c.area(t.floor_area));
  add("wall_area_m2", say::walls_below_the_tile_band, c.area(t.wall_area));
  add("tread_area_m2", say::treads, c.area(t.tread_area), t.tread_area > units::Area());
  add("riser_area_m2", say::risers, c.area(t.riser_area), t.riser_area > units::Area());
  add("step_edge_m", say::step_edges, c.length(t.step_edge), t.step_edge > units::Length());
  add("cove_length_m", say::cove_length, c.length(t.cove_length), whole);
  add("cove_area_change_m2",
      say::cove_right_angle_convention,
      c.area(t.cove_area_change, 2),
      t.cove_area_change != units::Area());
  add("cove_true_angle_area_change_m2",
      say::cove_at_the_true_angle,
      c.area(t.cove_true_angle_area_change, 2),
      whole && t.cove_area_change != units::Area());
  add("cove_true_angle_volume_change_m3",
      "",
      {"", t.cove_true_angle_volume_change.in(units::cubic_metres), Role::quantity},
      false);
  add("floor_plan_at_toe_m2",
      "",
      {"", t.floor_plan_at_toe.in(units::square_metres), Role::quantity},
      false);
  for (const job::Adjustment& a : measured.adjust) {
    facts.facts.push_back({"", a.name, c.area(a.area), true});
  }
  Cell painted = c.area(measured.painted);
  painted.role = Role::total;
  add("painted_area_m2", say::painted_area, std::move(painted));
  add("water_volume_before_cove_m3",
      "",
      {"", t.water_volume_before_cove.in(units::cubic_metres), Role::quantity},
      false);
  add("water_volume_m3", say::water, c.bulk(t.water_volume));
  add("deepest_m", say::deepest_below_the_rim, c.length(t.deepest), whole);
  return facts;
}

namespace {

// How far the tape's tolerance moves area and kits.
void add_range(const Subject& s, const Cells& c, bool whole, Facts& facts) {
  const job::PaintedRange& r = s.plan.take_off.range;
  units::Fraction tolerance;
  bool given = true;
  for (const job::Body& body : s.job.bodies) {
    tolerance = std::max(tolerance, body.pool.tape_tolerance);
    given = given && body.tape_tolerance_given;
  }
  const int coats = r.coats;
  const auto number = [&](const char* key, Cell cell) {
    facts.facts.push_back({key, "", std::move(cell), false});
  };
  number("tape_tolerance", {"", tolerance.share(), given ? Role::quantity : Role::assumed});
  number("painted_area_low_m2", c.area(r.low));
  number("painted_area_high_m2", c.area(r.high));
  number("kits", Cells::count(r.kits));
  number("kits_low", Cells::count(r.kits_low));
  number("kits_high", Cells::count(r.kits_high));
  const bool us = c.system() == units::System::us;
  const std::string low =
      units::fixed(us ? r.low.in(units::square_feet) : r.low.in(units::square_metres), 1);
  const double percent = tolerance.share() * 100.0;
  const bool whole_percent = std::abs(percent - std::round(percent)) < 1e-9;
  facts.facts.push_back({"",
                         fmt::format(say::with_the_tape_out_by,
                                     units::show(tolerance, whole_percent ? 0 : 1),
                                     given ? "" : say::assumed),
                         {fmt::format(say::to_of, grouped(low), c.area(r.high).text),
                          {},
                          given ? Role::plain : Role::assumed},
                         whole});
  const std::string cover = units::show(s.plan.system.expected_cover().value, c.system(), 1);
  const std::string moved = r.kits_low == r.kits_high
                                ? std::string(say::either_way)
                                : fmt::format(say::by_the_tape_to, r.kits_low, r.kits_high);
  facts.facts.push_back(
      {"",
       fmt::format(say::kits_at_a_kit, coats, coats == 1 ? "coat" : "coats", cover),
       {fmt::format("{}, {}", r.kits, moved), {}, Role::plain},
       whole});
}

Facts all_facts(const Subject& s, const Cells& c, bool whole) {
  Measured measured{s.plan.take_off.total, {}, s.plan.take_off.painted};
  for (const job::Body& body : s.job.bodies) {
    measured.adjust.insert(measured.adjust.end(), body.adjust.begin(), body.adjust.end());
  }
  Facts facts = take_off_facts(measured, c, whole);
  add_range(s, c, whole, facts);
  return facts;
}

// Tables of the page in one unit system.
void add_tables(const Subject& s, const Cells& c, Machine machine, document::Section& section) {
  section.blocks.emplace_back(bodies_table(s, c, machine));
  section.blocks.emplace_back(parts_table(s, c, machine));
  if (s.plan.take_off.parts.size() > s.job.bodies.size())
    section.blocks.emplace_back(cuts_table(s, c));
}

// The job sheet cuts the coat in its own table.
void hide_sections(document::Section& section) {
  for (document::Block& block : section.blocks) {
    auto* table = std::get_if<document::Table>(&block);
    if (table != nullptr && table->key != "bodies") table->shown = false;
  }
}

// Side by side for people who asked; machines find the totals there in either case.
void add_whole(const Subject& s, const Cells& c, document::Section& section) {
  const Cells metric(units::System::metric, s.rates.currency);
  const Cells us(units::System::us, s.rates.currency);
  Facts facts = all_facts(s, s.both_units ? metric : c, true);
  document::Table totals = totals_table(all_facts(s, metric, true), all_facts(s, us, true));
  totals.shown = s.both_units;
  for (document::Fact& fact : facts.facts) fact.shown = fact.shown && !s.both_units;
  section.blocks.emplace_back(std::move(facts));
  section.blocks.emplace_back(std::move(totals));
  add_tables(s, s.both_units ? metric : c, Machine::metric, section);
  if (s.both_units) add_tables(s, us, Machine::us, section);
}

}  // namespace

document::Section take_off_section(const Subject& s, bool whole) {
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "takeoff";
  section.title = say::take_off;
  if (whole) {
    add_whole(s, c, section);
  } else {
    section.blocks.emplace_back(all_facts(s, c, false));
    add_tables(s, c, Machine::metric, section);
    hide_sections(section);
  }
  section.blocks.emplace_back(sections_facts(s));
  add_flotation(s, c, section);
  return section;
}

document::Section version_section() {
  document::Section section;
  section.key = "basinwright";
  section.shown = false;
  section.blocks.emplace_back(
      Facts{{{"version", say::version, Cells::words(std::string(version())), false},
             {"format", say::format, Cells::count(format_version), false}}});
  return section;
}

document::Section heading_section(const Subject& s) {
  const job::Heading& h = s.job.heading;
  document::Section section;
  section.key = "job";
  section.title = say::job;
  section.shown = false;
  Facts facts;
  const auto add = [&](const char* key, const std::string& value) {
    Cell cell = value.empty() ? Cells::nothing("") : Cells::words(value);
    facts.facts.push_back({key, "", std::move(cell), false});
  };
  add("number", h.number);
  add("revision", h.revision);
  add("client.name", h.client.name);
  add("client.address", h.client.address);
  add("contractor.name", h.contractor.name);
  add("contractor.address", h.contractor.address);
  add("quoted_on", h.quoted_on ? dates::iso(*h.quoted_on) : "");
  facts.facts.push_back(
      {"units", "", Cells::words(s.job.units == units::System::us ? "us" : "metric"), false});
  facts.facts.push_back({"rates", "", Cells::words(s.rates.name), false});
  facts.facts.push_back(
      {"demonstration_rates", "", {"", s.rates.demonstration, Role::plain}, false});
  section.blocks.emplace_back(std::move(facts));
  return section;
}

}  // namespace basinwright::report
