#include <fmt/format.h>

#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "checklist_parts.hpp"
#include "checklist_words.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::List;
using document::Paragraph;
using document::Section;
using document::Table;

void capitalise(std::string& text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
}

std::string when_text(const StepOnDay& at) {
  if (at.booking == nullptr) return "";
  const sequence::Booking& b = *at.booking;
  const bool one_day = b.start.date() == b.end.date();
  std::string text = at.first ? "From " + dates::clock(b.start) : "Goes on";
  if (at.last || b.people == 0) {
    text += " to ";
    text += one_day || !at.first ? dates::clock(b.end) : Cells::moment(b.end).text;
  } else {
    text += ", goes on the next day";
  }
  if (!b.section.empty()) text += " · section " + b.section;
  if (b.people > 0) text += fmt::format(" · {} people", b.people);
  return text;
}

void add_actions(const preparation::Step& step, Section& section) {
  List list;
  for (const std::string& code : step.actions) {
    std::string text(action(code));
    capitalise(text);
    list.items.push_back(Cells::tick(std::move(text)));
  }
  if (!list.items.empty()) section.blocks.emplace_back(std::move(list));
}

void fact(Facts& facts, std::string label, Cell cell) {
  facts.facts.push_back({"", std::move(label), std::move(cell), true});
}

/// What one section of a coat takes.
void add_coat(const Subject& s, const StepOnDay& at, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  const auto number = static_cast<std::size_t>(std::max(1, std::atoi(at.step->task.c_str() + 5)));
  if (number > q.coats.size()) return;
  const coverage::Coat& coat = q.coats[number - 1];
  const bool cut = q.cut.sections.size() > 1 && at.booking != nullptr;
  std::int64_t kits = coat.kits;
  units::Area area = coat.area;
  for (std::size_t i = 0; cut && i < q.cut.sections.size(); ++i) {
    const std::string name = q.cut.names.empty() ? std::to_string(i + 1) : q.cut.names[i];
    if (name != at.booking->section) continue;
    kits = q.cut.kits[i];
    area = q.cut.sections[i];
  }
  fact(facts, "Area", c.area(area));
  fact(facts, "Kits", Cells::count(kits));
  fact(facts, "A kit covers about", c.area(s.plan.system.expected_cover().value));
  if (coat.thinner > units::Volume())
    fact(
        facts, "Thinner, a kit, first coat only", c.litres(s.plan.system.thinner_per_kit.value, 2));
}

void add_washes(const Subject& s, std::string_view task, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  if (task == "neutralise" && q.neutralise) {
    fact(facts, "Bicarbonate, on the surface", c.mass(q.neutralise->surface.bicarbonate));
    fact(facts, "Warm water", c.litres(q.neutralise->surface.water));
    Cell sump = c.mass(q.neutralise->sump_worst);
    sump.text = "up to " + sump.text + ", by the measured pH";
    fact(facts, "Bicarbonate, in the sump", std::move(sump));
  }
  if (task == "etch-walls" && q.etch)
    fact(facts, "Solution on the walls", c.litres(q.etch->wall_solution));
  if (task == "etch-floor" && q.etch)
    fact(facts, "Solution on the floor", c.litres(q.etch->floor_solution));
  if (task == "repair" && q.filler.batches > 0) {
    fact(facts, "Filler", c.litres(q.filler.litres, 2));
    fact(facts,
         "Batches",
         Cells::words(fmt::format("{} of {}", q.filler.batches, c.litres(q.filler.batch, 2).text)));
  }
  if (task == "repair" && q.mortar > units::Mass()) fact(facts, "Mortar", c.mass(q.mortar));
  if (task == "prime" && q.primer) fact(facts, "Primer, kits", Cells::count(q.primer->kits));
}

void add_at_hand(const Subject& s, const StepOnDay& at, Section& section) {
  const Cells c(s.units, s.rates.currency);
  const std::string& task = at.step->task;
  Facts facts;
  if (task.starts_with("coat-")) {
    add_coat(s, at, c, facts);
  } else {
    const bool worked = !worn_for(task).empty() && task != "coating-test";
    if (worked && at.step->area > units::Area()) fact(facts, "Area", c.area(at.step->area));
    add_washes(s, task, c, facts);
  }
  for (const quote::Hire& hire : s.rates.hire) {
    if (hire.task == task) fact(facts, "Hired for it", Cells::words(hire.item));
  }
  if (!worn_for(task).empty()) fact(facts, "Worn", Cells::words(std::string(worn_for(task))));
  if (!facts.facts.empty()) section.blocks.emplace_back(std::move(facts));
}

std::string_view wash_of(std::string_view task) {
  if (task.starts_with("etch-")) return "etch";
  if (task == "chlorine-wash") return task;
  if (task == "degrease") return "degreasing-wash";
  return task == "neutralise" ? "neutralising-wash" : "";
}

void add_mix(const Subject& s, std::string_view task, Section& section) {
  const std::string_view wash = wash_of(task);
  if (wash.empty()) return;
  Table table = mix_table(s, wash);
  table.caption = "The mix, water first";
  if (!table.rows.empty()) section.blocks.emplace_back(std::move(table));
}

void add_holds(const preparation::Step& step, Section& section) {
  if (step.holds.empty()) return;
  Table table;
  table.caption = "HOLD POINT: nobody goes on until it is signed";
  table.columns = {{"", "Read"}, {"", "Go on when"}, {"", "Found"}, {"", "Held"}, {"", "Signed"}};
  for (const preparation::HoldPoint& point : step.holds) {
    const HoldWords words = hold(point.code);
    std::string what(words.what);
    std::string limit(words.limit);
    capitalise(what);
    capitalise(limit);
    table.rows.push_back({{Cells::words(what),
                           {limit, {}, Role::total},
                           Cells::blank(),
                           Cells::tick(),
                           Cells::blank()}});
  }
  section.blocks.emplace_back(std::move(table));
}

Table numbered(std::string caption,
               std::string first,
               std::vector<std::string> columns,
               int count) {
  Table table;
  table.caption = std::move(caption);
  table.columns = {{"", std::move(first)}};
  for (std::string& title : columns) table.columns.push_back({"", std::move(title)});
  for (int i = 1; i <= count; ++i) {
    document::Row row;
    row.cells = {Cells::count(i)};
    row.cells.resize(table.columns.size(), Cells::blank());
    table.rows.push_back(std::move(row));
  }
  return table;
}

void add_tests(const Subject& s, std::string_view task, Section& section) {
  const job::Readings& readings = s.plan.quantities.readings;
  if (task == "neutralise") {
    section.blocks.emplace_back(numbered("Surface pH, within 1 unit of the rinse water",
                                         "No.",
                                         {"Where", "Rinse water", "Surface"},
                                         readings.surface_ph));
  }
  if (task == "dryness-test") {
    section.blocks.emplace_back(numbered("Plastic sheets, 16 to 24 h: no water, no dark patch",
                                         "Sheet",
                                         {"Where", "Laid at", "Read at", "Found"},
                                         readings.dryness_sheets));
  }
}

void add_kit_log(const StepOnDay& at,
                 const std::vector<job::PaintingMorning>& mornings,
                 Section& section) {
  if (at.booking == nullptr) return;
  const auto morning = std::ranges::find_if(mornings, [&](const job::PaintingMorning& m) {
    return m.task == at.step->task && m.section == at.booking->section;
  });
  if (morning == mornings.end()) return;
  section.blocks.emplace_back(
      numbered("Kits as mixed",
               "Kit",
               {"Batch A", "Batch B", "Mixed at", "Stood until", "Use by", "Area done"},
               static_cast<int>(morning->timetable.kits)));
}

void add_cure_days(const StepOnDay& at, Section& section) {
  if (at.step->task != "cure" || at.booking == nullptr) return;
  Table table;
  table.caption = "Each day of the cure";
  table.columns = {
      {"", "Day"}, {"", "Mean air"}, {"", "Pools off"}, {"", "Groundwater"}, {"", "By"}};
  for (dates::Date day = at.booking->start.date(); day <= at.booking->end.date();
       day += std::chrono::days{1}) {
    table.rows.push_back({{Cells::words(dates::short_day(day)),
                           Cells::blank(),
                           Cells::tick(),
                           Cells::blank(),
                           Cells::blank()}});
  }
  section.blocks.emplace_back(std::move(table));
}

}  // namespace

Section step_section(const Subject& s,
                     const StepOnDay& at,
                     const std::vector<std::string>& cautions,
                     const std::vector<job::PaintingMorning>& mornings) {
  const std::string& name = at.step->task;
  Section section{"", task(name), {}, true};
  section.under = true;
  if (!at.first) section.title += ", goes on";
  const std::string when = when_text(at);
  if (!when.empty()) section.blocks.emplace_back(Paragraph{"", when, {}, Role::heading, true});
  for (const std::string& code : cautions)
    section.blocks.emplace_back(caution_paragraph(s, code, name));
  if (at.first) {
    section.blocks.emplace_back(
        Paragraph{"", std::string(reason(at.step->why)), {}, Role::plain, true});
    add_at_hand(s, at, section);
    // The floor's acid is mixed with the walls'.
    if (name != "etch-floor") add_mix(s, name, section);
    add_actions(*at.step, section);
  }
  if (name.starts_with("coat-") || name == "prime")
    section.blocks.emplace_back(readings_table(s, {"Start", "Middle", "End"}));
  if (name.starts_with("coat-") || name == "prime") add_kit_log(at, mornings, section);
  if (at.last) {
    add_tests(s, name, section);
    add_cure_days(at, section);
    add_holds(*at.step, section);
  }
  return section;
}

}  // namespace basinwright::report
