#include <fmt/format.h>

#include <algorithm>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "checklist_parts.hpp"
#include "checklist_words.hpp"
#include "word_table.hpp"
#include "wording/checklist.hpp"
#include "wording/common.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::List;
using document::Paragraph;
using document::Section;
using document::Table;

std::string when_text(const StepOnDay& at) {
  if (at.booking == nullptr) return "";
  const sequence::Booking& b = *at.booking;
  const bool one_day = b.start.date() == b.end.date();
  std::string text = at.first ? say::from_before + dates::clock(b.start) : say::goes_on;
  if (at.last || b.people == 0) {
    text += say::to_after;
    text += one_day || !at.first ? dates::clock(b.end) : Cells::moment(b.end).text;
  } else {
    text += say::goes_on_the_next_day;
  }
  if (!b.section.empty()) text += say::and_section + b.section;
  if (b.people == 1) text += say::one_person_after;
  if (b.people > 1) text += fmt::format(say::people_after, b.people);
  return text;
}

void add_actions(const preparation::Step& step, Section& section) {
  List list;
  for (const std::string& code : step.actions) {
    list.items.push_back(Cells::tick(capital(action(code))));
  }
  if (!list.items.empty()) section.blocks.emplace_back(std::move(list));
}

void fact(Facts& facts, std::string label, Cell cell) {
  facts.facts.push_back({"", std::move(label), std::move(cell), true});
}

// Which section of the cut is worked on; nothing where it is all of the shell.
std::optional<std::size_t> section_on_day(const coverage::Cut& cut, const StepOnDay& at) {
  for (std::size_t i = 0; cut.sections.size() > 1 && i < cut.sections.size(); ++i) {
    const std::string name = cut.names.empty() ? std::to_string(i + 1) : cut.names[i];
    if (at.booking != nullptr && at.booking->section == name) return i;
  }
  return {};
}

/// What one section of a coat takes.
void add_coat(const Subject& s, const StepOnDay& at, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  const auto number = static_cast<std::size_t>(std::max(1, std::atoi(at.step->task.c_str() + 5)));
  if (number > q.coats.size()) return;
  const coverage::Coat& coat = q.coats[number - 1];
  std::int64_t kits = coat.kits;
  units::Area area = coat.area;
  if (const auto section = section_on_day(q.cut, at)) {
    kits = q.cut.kits[*section];
    area = q.cut.sections[*section];
  }
  fact(facts, say::area, c.area(area));
  fact(facts, say::kits, Cells::count(kits));
  fact(facts, say::a_kit_covers_about, c.area(s.plan.system.expected_cover().value));
  if (coat.thinner > units::Volume())
    fact(facts,
         say::thinner_a_kit_first_coat_only,
         c.litres(s.plan.system.thinner_per_kit.value, 2));
}

void add_wash_step(const Subject& s, std::string_view task, const Cells& c, Facts& facts) {
  const job::Quantities& q = s.plan.quantities;
  if (task == "neutralise" && q.neutralise) {
    fact(facts, say::bicarbonate_on_the_surface, c.mass(q.neutralise->surface.bicarbonate));
    fact(facts, say::warm_water, c.litres(q.neutralise->surface.water));
    Cell sump = c.mass(q.neutralise->sump_worst);
    sump.text = say::up_to + sump.text + say::by_the_measured_ph;
    fact(facts, say::bicarbonate_in_the_sump, std::move(sump));
  }
  if (task == "etch-walls" && q.etch)
    fact(facts, say::solution_on_the_walls, c.litres(q.etch->wall_solution));
  if (task == "etch-floor" && q.etch)
    fact(facts, say::solution_on_the_floor, c.litres(q.etch->floor_solution));
  if (task == "repair" && q.filler.batches > 0) {
    fact(facts, say::filler, c.litres(q.filler.litres, 2));
    fact(facts,
         say::batches,
         Cells::words(fmt::format(say::of, q.filler.batches, c.litres(q.filler.batch, 2).text)));
  }
  if (task == "repair" && q.mortar > units::Mass()) fact(facts, say::mortar, c.mass(q.mortar));
  if (task == "prime" && q.primer) fact(facts, say::primer_kits, Cells::count(q.primer->kits));
}

void add_at_hand(const Subject& s, const StepOnDay& at, Section& section) {
  const Cells c(s.units, s.rates.currency);
  const std::string& task = at.step->task;
  Facts facts;
  if (task.starts_with("coat-")) {
    add_coat(s, at, c, facts);
  } else {
    const bool worked = !worn_for(task).empty() && task != "coating-test";
    const coverage::Cut& cut = s.plan.quantities.cut;
    const auto part = task == sitelog::rework_task ? section_on_day(cut, at) : std::nullopt;
    const units::Area area = part ? cut.sections[*part] : at.step->area;
    if (worked && area > units::Area()) fact(facts, say::area, c.area(area));
    add_wash_step(s, task, c, facts);
  }
  for (const quote::Hire& hire : s.rates.hire) {
    // Abrading once more takes what abrading takes.
    const bool abraded = task == sitelog::rework_task && hire.task == "abrade";
    if (hire.task == task || abraded) fact(facts, say::hired_for_it, Cells::words(hire.item));
  }
  if (!worn_for(task).empty()) fact(facts, say::worn, Cells::words(std::string(worn_for(task))));
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
  table.caption = say::the_mix_water_first;
  if (!table.rows.empty()) section.blocks.emplace_back(std::move(table));
}

void add_holds(const preparation::Step& step, Section& section) {
  if (step.holds.empty()) return;
  Table table;
  table.caption = say::hold_point_nobody_goes_on_until_it_is;
  table.columns = {{"", say::read},
                   {"", say::go_on_when},
                   {"", say::found},
                   {"", say::held},
                   {"", say::signed_word}};
  for (const preparation::HoldPoint& point : step.holds) {
    const HoldWords words = hold(point.code);
    table.rows.push_back({{Cells::words(capital(words.what)),
                           {capital(words.limit), {}, Role::total},
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
    section.blocks.emplace_back(numbered(say::surface_ph_within_1_unit_of_the_rinse,
                                         say::no,
                                         {say::where, say::rinse_water, say::surface},
                                         readings.surface_ph));
  }
  if (task == "dryness-test") {
    section.blocks.emplace_back(numbered(say::plastic_sheets_16_to_24_h_no_water_no,
                                         say::sheet,
                                         {say::where, say::laid_at, say::read_at, say::found},
                                         readings.dryness_sheets));
  }
}

// The next coat's time counts from the cleaned surface, so that is written down.
void add_coat_times(const Subject& s, Section& section) {
  const sequence::Waits& w = s.rates.waits;
  const auto hours = [](units::Duration time) { return units::show_in(time, units::hours, 0); };
  Table table;
  table.caption = say::when_the_next_coat_may_go_on;
  table.columns = {{"", say::reading}, {"", say::limit}, {"", say::day_and_time}};
  const auto row = [&](const char* what, const std::string& limit) {
    table.rows.push_back({{Cells::words(what), {limit, {}, Role::total}, Cells::blank()}});
  };
  row(say::cleaned_and_dry, say::dust_free_to_the_wiped_hand);
  row(say::coat_not_before, hours(w.rework_dry.value) + say::later);
  row(say::coat_started_by, hours(w.rework_coat_within.value) + say::later);
  section.blocks.emplace_back(std::move(table));
}

void add_kit_log(const StepOnDay& at,
                 const std::vector<job::PaintingMorning>& mornings,
                 Section& section) {
  if (at.booking == nullptr) return;
  const auto morning = std::ranges::find_if(mornings, [&](const job::PaintingMorning& m) {
    return m.task == at.step->task && m.section == at.booking->section;
  });
  if (morning == mornings.end()) return;
  section.blocks.emplace_back(numbered(
      say::kits_as_mixed,
      say::kit,
      {say::batch_a, say::batch_b, say::mixed_at, say::stood_until, say::use_by, say::area_done},
      static_cast<int>(morning->timetable.kits)));
}

void add_cure_days(const StepOnDay& at, Section& section) {
  if (at.step->task != "cure" || at.booking == nullptr) return;
  Table table;
  table.caption = say::each_day_of_the_cure;
  table.columns = {{"", say::day},
                   {"", say::mean_air},
                   {"", say::pools_off},
                   {"", say::groundwater},
                   {"", say::by}};
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
  if (!at.first) section.title += say::goes_on_after;
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
    section.blocks.emplace_back(readings_table(s, {say::start, say::middle, say::end}));
  if (name.starts_with("coat-") || name == "prime") add_kit_log(at, mornings, section);
  if (at.last) {
    add_tests(s, name, section);
    add_cure_days(at, section);
    if (name == sitelog::rework_task) add_coat_times(s, section);
    add_holds(*at.step, section);
  }
  return section;
}

}  // namespace basinwright::report
