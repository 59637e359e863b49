#include <fmt/format.h>

#include "sections.hpp"
#include "take_off_facts.hpp"

namespace basinwright::report {

using document::Fact;
using document::Facts;

Facts take_off_facts(const Measured& measured, const Cells& c, bool whole) {
  const shell::TakeOff& t = measured.take_off;
  Facts facts;
  const auto add = [&](const char* key, const char* label, Cell cell, bool shown = true) {
    facts.facts.push_back({key, label, std::move(cell), shown});
  };
  add("plan_area_m2", "Plan area", c.area(t.plan_area), whole);
  add("perimeter_m", "Perimeter", c.length(t.perimeter));
  add("floor_area_m2", "Floor, true slope", c.area(t.floor_area));
  add("wall_area_m2", "Walls below the tile band", c.area(t.wall_area));
  add("tread_area_m2", "Treads", c.area(t.tread_area), t.tread_area > units::Area());
  add("riser_area_m2", "Risers", c.area(t.riser_area), t.riser_area > units::Area());
  add("cove_length_m", "Cove length", c.length(t.cove_length), whole);
  add("cove_area_change_m2",
      "Cove, right-angle convention",
      c.area(t.cove_area_change, 2),
      t.cove_area_change != units::Area());
  add("cove_true_angle_area_change_m2",
      "Cove at the true angle",
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
  add("painted_area_m2", "Painted area", std::move(painted));
  add("water_volume_before_cove_m3",
      "",
      {"", t.water_volume_before_cove.in(units::cubic_metres), Role::quantity},
      false);
  add("water_volume_m3", "Water", c.bulk(t.water_volume));
  add("deepest_m", "Deepest, below the rim", c.length(t.deepest), whole);
  return facts;
}

namespace {

document::Table bodies_table(const Subject& s, const Cells& c) {
  document::Table table;
  table.key = "bodies";
  table.caption = "Bodies of water";
  table.columns = {{"name", "Body"},
                   {"floor_area_m2", "Floor", document::Align::right},
                   {"wall_area_m2", "Walls", document::Align::right},
                   {"painted_area_m2", "Painted", document::Align::right},
                   {"water_volume_m3", "Water", document::Align::right}};
  for (const job::BodyResult& body : s.plan.take_off.bodies) {
    table.rows.push_back({{Cells::words(body.name),
                           c.area(body.take_off.floor_area),
                           c.area(body.take_off.wall_area),
                           c.area(body.take_off.painted_area + body.adjusted),
                           c.bulk(body.take_off.water_volume)}});
  }
  table.shown = s.plan.take_off.bodies.size() > 1;
  return table;
}

}  // namespace

document::Section take_off_section(const Subject& s, bool whole) {
  const Cells c(s.units, s.rates.currency);
  document::Section section;
  section.key = "takeoff";
  section.title = "Take-off";
  Measured measured{s.plan.take_off.total, {}, s.plan.take_off.painted};
  for (const job::Body& body : s.job.bodies) {
    measured.adjust.insert(measured.adjust.end(), body.adjust.begin(), body.adjust.end());
  }
  section.blocks.emplace_back(take_off_facts(measured, c, whole));
  section.blocks.emplace_back(bodies_table(s, c));
  return section;
}

document::Section version_section() {
  document::Section section;
  section.key = "basinwright";
  section.shown = false;
  section.blocks.emplace_back(
      Facts{{{"version", "Version", Cells::words(std::string(version())), false},
             {"format", "Format", Cells::count(format_version), false}}});
  return section;
}

document::Section heading_section(const Subject& s) {
  const job::Heading& h = s.job.heading;
  document::Section section;
  section.key = "job";
  section.title = "Job";
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
