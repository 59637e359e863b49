#include <fmt/format.h>
#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "mixing_words.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/mixing.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Section;
using document::Table;
using job::PaintingMorning;

std::string_view place_code(job::KitMark::Place place) {
  switch (place) {
    case job::KitMark::Place::across:
      return "across";
    case job::KitMark::Place::deep_wall:
      return "deep-wall";
    case job::KitMark::Place::shallow_wall:
      return "shallow-wall";
    case job::KitMark::Place::inner_face:
      return "inner-face";
  }
  return "";
}

std::string_view basis_code(job::PaintTemperature basis) {
  switch (basis) {
    case job::PaintTemperature::weather:
      return "weather";
    case job::PaintTemperature::month_mean:
      return "month-mean";
    case job::PaintTemperature::sheet:
      return "sheet";
  }
  return "";
}

Cell minutes_cell(std::optional<units::Duration> time) {
  if (!time) return Cells::nothing(say::unknown);
  return {units::fixed(time->in(units::minutes), 0) + say::min,
          Value(time->in(units::minutes)),
          Role::quantity};
}

Cell minute_cell(const PaintingMorning& m, units::Duration after) {
  return {minute_of(m.opening, after), Value(iso_minute(m.opening, after)), Role::plain};
}

Cell painters_cell(const std::optional<std::int64_t>& painters, int given) {
  if (!painters) return {say::no_crew_is_fast_enough, Value(nullptr), Role::stop};
  Cell cell = Cells::count(*painters);
  if (*painters > given) cell.role = Role::caution;
  return cell;
}

Table marks_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "marks";
  table.caption = say::where_each_kit_runs_out_chalk_it_on;
  table.columns = {{"what", say::paint},
                   {"section", say::section},
                   {"kit", say::after_kit, Align::right},
                   {"painted_area_m2", say::painted, Align::right},
                   {"mark", say::mark},
                   {"place", "", Align::left, false},
                   {"along_m", "", Align::left, false},
                   {"face_share", "", Align::left, false},
                   {"from_corner_m", "", Align::left, false},
                   {"below_rim_m", "", Align::left, false}};
  table.columns[0].shown =
      std::ranges::any_of(s.plan.mixing.marks, [](const job::KitMark& m) { return m.primer; });
  table.columns[1].shown = s.plan.quantities.cut.sections.size() > 1;
  for (const job::KitMark& mark : s.plan.mixing.marks) {
    table.rows.push_back(
        {{Cells::coded(mark.primer ? say::primer : say::each_coat, mark.primer ? "prime" : "coat"),
          Cells::words(mark.section),
          Cells::count(mark.kit),
          c.area(mark.painted),
          Cells::words(mark_words(mark, s.plan, s.units)),
          Cells::words(std::string(place_code(mark.place))),
          c.length(mark.along),
          Cells::number(mark.face_share, 2),
          c.length(mark.from_corner),
          c.length(mark.below_rim)}});
  }
  table.shown = !table.rows.empty();
  return table;
}

Table mornings_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "mornings";
  table.caption = say::painting_mornings;
  table.columns = {{"opening", say::painting_from},
                   {"task", say::coat},
                   {"section", say::section},
                   {"area_m2", say::area, Align::right},
                   {"kits", "", Align::right, false},  // Each has a line in the timetable.
                   {"temperature_c", say::paint_at, Align::right},
                   {"temperature_basis", "", Align::left, false},
                   {"pot_life_min", say::pot_life, Align::right},
                   {"oldest_min", say::oldest_used, Align::right},
                   {"finish", say::done, Align::right},
                   {"painters", "", Align::right, false},
                   {"painters_needed", say::painters_needed, Align::right},
                   {"works", say::works}};
  table.columns[2].shown = s.plan.quantities.cut.sections.size() > 1;
  constexpr std::size_t needed = 11;
  table.columns[needed].shown =
      std::ranges::any_of(s.plan.mixing.mornings, [](const PaintingMorning& m) {
        return !m.painters_needed || *m.painters_needed > m.session.painters;
      });
  for (const PaintingMorning& m : s.plan.mixing.mornings) {
    const bool works = m.timetable.works();
    table.rows.push_back({{Cells::moment(m.opening),
                           Cells::coded(task(m.task), m.task),
                           Cells::words(m.section),
                           c.area(m.session.area),
                           Cells::count(m.timetable.kits),
                           {units::show(m.session.temperature, s.units, 1),
                            Value(m.session.temperature.in(units::celsius)),
                            Role::quantity},
                           Cells::words(std::string(basis_code(m.rests_on))),
                           minutes_cell(m.timetable.pot_life),
                           minutes_cell(m.timetable.worst_age),
                           minute_cell(m, m.timetable.finish),
                           Cells::count(m.session.painters),
                           painters_cell(m.painters_needed, m.session.painters),
                           {works ? say::yes : say::no_see_below,
                            Value(works),
                            works ? Role::good : Role::caution}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

Table mixes_table(const Subject& s, const Cells& c) {
  Table table;
  table.key = "timetable";
  table.caption = say::mixing_timetable;
  table.columns = {{"task", say::coat},
                   {"section", say::section},
                   {"kit", say::kit, Align::right},
                   {"start", say::start_mixing},
                   {"induction_end", say::stood_until_roll_from},
                   {"use_by", say::use_by},
                   {"empty", say::on_the_wall},
                   {"area_m2", say::covers, Align::right}};
  table.columns[1].shown = s.plan.quantities.cut.sections.size() > 1;
  for (const PaintingMorning& m : s.plan.mixing.mornings) {
    for (const coverage::Mix& mix : m.timetable.mixes) {
      const bool late = mix.use_by && *mix.use_by < mix.empty;
      Cell start = minute_cell(m, mix.start);
      if (mix.number == 1) start.text = dates::short_day(m.opening.date()) + " " + start.text;
      Cell use_by = mix.use_by ? minute_cell(m, *mix.use_by) : Cells::nothing(say::unknown);
      if (late) use_by.role = Role::caution;
      table.rows.push_back({{Cells::coded(task(m.task), m.task),
                             Cells::words(m.section),
                             Cells::count(mix.number),
                             std::move(start),
                             minute_cell(m, mix.ready),
                             std::move(use_by),
                             minute_cell(m, mix.empty),
                             c.area(mix.area)}});
    }
  }
  table.shown = !table.rows.empty();
  return table;
}

std::string morning_name(const PaintingMorning& m) {
  return fmt::format("{}, {}{}: ",
                     dates::short_day(m.opening.date()),
                     task(m.task),
                     m.section.empty() ? "" : say::section_after + m.section);
}

// The same words for several mornings are said once, with all their names.
struct Said {
  std::string names, text;
};
void say(std::vector<Said>& said, const std::string& name, const std::string& text) {
  for (Said& one : said) {
    if (one.text == text) {
      one.names.insert(one.names.size() - 2, "; " + name.substr(0, name.size() - 2));
      return;
    }
  }
  said.push_back({name, text});
}

Table notes_table(const Subject& s) {
  Table table;
  table.key = "notes";
  table.caption = say::what_stands_in_the_way_and_what_to_do;
  table.columns = {{"morning", "", Align::left, false}, {"text", say::what}};
  std::vector<Said> said;
  for (const PaintingMorning& m : s.plan.mixing.mornings) {
    for (const std::string& text : hindrances(m, s.units)) say(said, morning_name(m), text);
    const std::string evening = evening_before(m, s.plan, s.units);
    if (!evening.empty()) say(said, morning_name(m), evening);
    if (m.shortest_induction) say(said, morning_name(m), say::let_it_stand_for_the_sheets_shortest);
  }
  for (const Said& one : said) {
    const std::string names = one.names.substr(0, one.names.size() - 2);
    table.rows.push_back(
        {{Cells::words(names), {one.names + one.text, Value(one.text), Role::caution}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

std::string basis_words(const job::MixingPlan& mixing) {
  bool weather = false;
  bool mean = false;
  bool sheet = false;
  for (const PaintingMorning& m : mixing.mornings) {
    weather = weather || m.rests_on == job::PaintTemperature::weather;
    mean = mean || m.rests_on == job::PaintTemperature::month_mean;
    sheet = sheet || m.rests_on == job::PaintTemperature::sheet;
  }
  std::string words;
  if (weather) words += say::the_warmest_air_of_the_session;
  if (mean)
    words += (words.empty() ? "" : say::else_word) + std::string(say::the_mean_of_the_month);
  if (sheet)
    words += (words.empty() ? "" : say::else_word) +
             std::string(say::the_temperature_of_the_sheets_pot_life);
  return words;
}

document::Facts mixing_facts(const Subject& s) {
  const job::MixingPlan& mixing = s.plan.mixing;
  const bool dated = !mixing.mornings.empty();
  document::Facts facts;
  facts.facts = {{"painters", say::painters, Cells::count(mixing.painters)},
                 {"painters_needed",
                  say::painters_needed,
                  dated ? painters_cell(mixing.painters_needed(), mixing.painters)
                        : Cells::nothing(say::no_dates),
                  dated},
                 {"mixer",
                  say::who_does_what,
                  Cells::coded(crew_words(mixing), mixing.mixer_apart ? "apart" : "painter")},
                 {"works",
                  "",
                  dated ? Cell{"", Value(mixing.works()), Role::plain} : Cells::nothing(""),
                  false},
                 {"temperature", say::paint_counts_as, Cells::words(basis_words(mixing)), dated}};
  return facts;
}

}  // namespace

Section mixing_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  Section section;
  section.key = "mixing";
  section.title = say::crew_and_mixing;
  section.shown = !s.plan.stopped();
  section.blocks.emplace_back(mixing_facts(s));
  section.blocks.emplace_back(marks_table(s, c));
  section.blocks.emplace_back(mornings_table(s, c));
  section.blocks.emplace_back(mixes_table(s, c));
  section.blocks.emplace_back(notes_table(s));
  return section;
}

}  // namespace basinwright::report
