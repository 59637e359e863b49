#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "agenda.hpp"
#include "checklist_parts.hpp"
#include "checklist_words.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Array;
using document::Facts;
using document::Paragraph;
using document::Row;
using document::Section;
using document::Table;
using preparation::Step;
using sequence::Booking;

/// Everything that happens on a day.
struct Day {
  std::string title;
  std::vector<StepOnDay> steps;
};

const Step* step_of(const job::Plan& plan, const std::string& task) {
  const auto it = std::ranges::find(plan.route.steps, task, &Step::task);
  return it == plan.route.steps.end() ? nullptr : &*it;
}

/// The days a booking is worked on; the day it starts where nobody works on it.
std::set<dates::Date> days_of(const Booking& b) {
  std::set<dates::Date> days{b.start.date()};
  for (const sequence::Worked& worked : b.worked) days.insert(worked.date);
  return days;
}

std::vector<Day> days_with_dates(const job::Plan& plan) {
  std::set<dates::Date> all;
  for (const Booking& b : plan.programme.bookings) all.merge(days_of(b));
  std::vector<Day> days;
  for (const dates::Date date : all) {
    Day day;
    for (const Booking& b : plan.programme.bookings) {
      const std::set<dates::Date> own = days_of(b);
      const Step* step = step_of(plan, b.task);
      if (step == nullptr || !own.contains(date)) continue;
      day.steps.push_back({step, &b, date == *own.begin(), date == *own.rbegin()});
    }
    day.title = fmt::format("Day {} · {}", days.size() + 1, Cells::date(date).text);
    if (!day.steps.empty()) days.push_back(std::move(day));
  }
  return days;
}

std::vector<Day> days_of_plan(const job::Plan& plan) {
  if (plan.programme.feasible) return days_with_dates(plan);
  Day day{"In this order; there are no dates yet", {}};
  for (const Step& step : plan.route.steps) day.steps.push_back({&step, nullptr, true, true});
  return {std::move(day)};
}

Table day_table(const Day& day) {
  Table table;
  table.columns = {
      {"", "From"}, {"", "To"}, {"", "Task"}, {"", "People", Align::right}, {"", "Done"}};
  for (const StepOnDay& at : day.steps) {
    const Booking& b = *at.booking;
    const std::string section = b.section.empty() ? "" : ", section " + b.section;
    const bool ends_today = at.last && b.start.date() == b.end.date();
    table.rows.push_back(
        {{Cells::words(at.first ? dates::clock(b.start) : "goes on"),
          Cells::words(ends_today || (at.last && !at.first) ? dates::clock(b.end)
                                                            : Cells::moment(b.end).text),
          Cells::words(task(b.task) + section),
          b.people > 0 ? Cells::count(b.people) : Cells::nothing("nobody"),
          Cells::tick()}});
  }
  return table;
}

Section day_section(const Day& day) {
  Section section{"", day.title, {}, true};
  section.own_page = true;
  if (day.steps.front().booking != nullptr) section.blocks.emplace_back(day_table(day));
  return section;
}

Section site_section(const Subject& s) {
  const Cells c(s.units, s.rates.currency);
  const job::Site& site = s.job.site;
  Section section{"", "This site", {}, true};
  Facts facts;
  const auto said = [&](const char* label, const std::string& text) {
    facts.facts.push_back({"", label, text.empty() ? Cells::blank() : Cells::words(text), true});
  };
  said("Client", s.job.heading.client.name);
  said("Address, for an ambulance", s.job.heading.client.address);
  facts.facts.push_back({"", "Painted area", c.area(s.plan.take_off.painted), true});
  facts.facts.push_back({"", "Water", c.bulk(s.plan.take_off.total.water_volume), true});
  facts.facts.push_back({"", "Deepest", c.length(s.plan.take_off.total.deepest), true});
  said("Parking", site.parking);
  said("Hours allowed", site.hours);
  said("Sewer gully", site.gully);
  if (site.ph_min || site.ph_max) {
    said("pH the sewer takes",
         fmt::format("{} to {}",
                     site.ph_min ? units::fixed(*site.ph_min, 1) : "?",
                     site.ph_max ? units::fixed(*site.ph_max, 1) : "?"));
  }
  std::string permits;
  for (const job::Permit& permit : site.permits)
    permits += (permits.empty() ? "" : "; ") + permit.what;
  if (!permits.empty()) said("Permits in hand before work", permits);
  section.blocks.emplace_back(std::move(facts));
  return section;
}

Section emergency_section(const Subject& s) {
  Section section{"", "Emergency and first aid", {}, true};
  section.own_page = true;
  const std::string& call = s.job.site.emergency;
  section.blocks.emplace_back(
      Facts{{{"", "Call", call.empty() ? Cells::blank() : Cells::words(call), true},
             {"", "Nearest hospital", Cells::blank(), true},
             {"", "First-aider on site", Cells::blank(), true},
             {"", "Safety data sheets lie at", Cells::blank(), true},
             {"", "Power is cut at", Cells::blank(), true}}});
  Table table;
  table.caption = "First aid; the safety data sheet of the product goes first";
  table.columns = {{"", "What happened"}, {"", "What is done"}};
  for (const FirstAid& aid : first_aid())
    table.rows.push_back({{Cells::words(aid.what), Cells::words(aid.what_to_do)}});
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section deciders_section(const Subject& s) {
  Section section{"", "Who decides", {}, true};
  section.blocks.emplace_back(caution_paragraph(s, "who-decides"));
  Table table;
  table.caption = "Not this crew's work";
  table.columns = {{"", "What"}, {"", "Decided or done by"}};
  for (const Aid& row : licensed_work()) {
    table.rows.push_back(
        {{Cells::words(std::string(row.what)), Cells::words(std::string(row.what_to_do))}});
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

Cell codes_cell(const std::vector<std::string>& codes) {
  Array values;
  for (const std::string& code : codes) values.emplace_back(code);
  return {"", Value(std::move(values)), Role::plain};
}

Cell holds_cell(const Step& step) {
  Array values;
  for (const preparation::HoldPoint& point : step.holds) {
    const HoldWords words = hold(point.code);
    values.push_back(document::Object{
        {"code", Value(point.code)}, {"read", Value(words.what)}, {"limit", Value(words.limit)}});
  }
  return {"", Value(std::move(values)), Role::plain};
}

/// The same for machines: a row a step and day.
Section machine_section(const Subject& s, const std::vector<Day>& days) {
  Table table;
  table.key = "steps";
  table.shown = false;
  for (const char* key :
       {"day", "task", "section", "start", "end", "people", "actions", "holds", "cautions"})
    table.columns.push_back({key, ""});
  for (std::size_t d = 0; d < days.size(); ++d) {
    for (const StepOnDay& at : days[d].steps) {
      const Booking* b = at.booking;
      Row row;
      row.cells = {
          Cells::count(static_cast<std::int64_t>(d) + 1),
          Cells::words(at.step->task),
          b == nullptr || b->section.empty() ? Cells::nothing("") : Cells::words(b->section),
          b == nullptr ? Cells::nothing("") : Cells::moment(b->start),
          b == nullptr ? Cells::nothing("") : Cells::moment(b->end),
          Cells::count(b == nullptr ? 0 : b->people),
          codes_cell(at.step->actions),
          holds_cell(*at.step),
          codes_cell(caution_codes(s, {at.step->task}))};
      table.rows.push_back(std::move(row));
    }
  }
  Section section{"checklist", "", {}, true};
  section.blocks.emplace_back(std::move(table));
  return section;
}

std::size_t hold_points(const job::Plan& plan) {
  std::size_t count = 0;
  for (const Step& step : plan.route.steps) count += step.holds.size();
  return count;
}

}  // namespace

std::vector<std::string> caution_codes(const Subject& s, const std::vector<std::string>& tasks) {
  std::vector<std::string> codes;
  for (const std::string& task : tasks) {
    for (const std::string_view code : hazards_of(task)) {
      const bool of_plan =
          std::ranges::find(s.plan.cautions, code, &job::Caution::code) != s.plan.cautions.end();
      if (of_plan && std::ranges::find(codes, code) == codes.end()) codes.emplace_back(code);
    }
  }
  return codes;
}

Paragraph caution_paragraph(const Subject& s, const std::string& code, std::string_view task) {
  const auto it = std::ranges::find(s.plan.cautions, code, &job::Caution::code);
  if (it == s.plan.cautions.end()) return {"", "", {}, Role::caution, false};
  job::Caution caution = *it;
  // The gas of the bicarbonate is no matter of the painters.
  const bool acid = task.empty() || task == "neutralise" || task.starts_with("etch-");
  if (code == "vapours-sink" && !acid) caution.figure = 0.0;
  return {"", caution_text(caution, s.units), {}, Role::caution, true};
}

Table readings_table(const Subject& s, const std::vector<std::string>& columns) {
  const materials::Limits& limits = s.plan.system.limits;
  Table table;
  table.caption = "Readings, inside these limits or nobody paints";
  table.columns = {{"", "Reading"}, {"", "Limit"}};
  for (const std::string& title : columns) table.columns.push_back({"", title});
  const auto row = [&](std::string what, std::string limit, const char* unit) {
    Row made;
    made.cells = {Cells::words(what), {std::move(limit), {}, Role::total}};
    made.cells.resize(table.columns.size(), Cells::blank(unit));
    table.rows.push_back(std::move(made));
  };
  const char* degrees = s.units == units::System::us ? "°F" : "°C";
  const auto t = [&](units::Temperature value) { return units::show(value, s.units, 0); };
  row("Time", "", "");
  row("Air", fmt::format("{} to {}", t(limits.air_min.value), t(limits.air_max.value)), degrees);
  row("Shell",
      fmt::format("{} to {}", t(limits.shell_min.value), t(limits.shell_max.value)),
      degrees);
  row("Humidity", "at most " + units::show(limits.humidity_max.value, 0), "%");
  row("Dew point", "", degrees);
  row("Shell above dew point",
      "at least " + units::show(limits.dew_margin.value, s.units, 1),
      degrees);
  if (limits.wind_max) row("Wind", "as the data sheet says", "");
  return table;
}

Table signatures() {
  Table table;
  table.caption = "End of the day";
  table.columns = {{"", "Name"}, {"", "Signature"}, {"", "Time"}};
  constexpr int lines = 2;
  for (int i = 0; i < lines; ++i)
    table.rows.push_back({{Cells::blank(), Cells::blank(), Cells::blank()}});
  return table;
}

document::Document checklist(const Subject& s) {
  document::Document d;
  d.title = "Site checklist";
  d.subtitle = subtitle_of(s.job);
  d.reading = document::Reading::site;
  d.notices = notices(s);
  d.sections = {version_section(),
                heading_section(s),
                site_section(s),
                emergency_section(s),
                deciders_section(s)};
  d.agenda = agenda_of(s);
  if (s.plan.stopped()) {
    const StopWords words = stop(s.plan.route.stop->why);
    Section section{"", "Nobody starts", {}, true};
    section.blocks.emplace_back(Paragraph{"", std::string(words.why), {}, Role::stop, true});
    section.blocks.emplace_back(
        Paragraph{"", fmt::format("Cleared by: {}.", words.clear_by), {}, Role::plain, true});
    d.sections.push_back(std::move(section));
    d.sections.push_back(cautions_section(s));
    d.bottom_line = {"STOP: nobody starts on this job", {}, Role::stop};
    return d;
  }
  const std::vector<Day> days = days_of_plan(s.plan);
  const auto& mornings = s.plan.mixing.mornings;
  d.sections.push_back(machine_section(s, days));
  for (const Day& day : days) {
    d.sections.push_back(day_section(day));
    std::set<std::string> said;
    for (const StepOnDay& at : day.steps) {
      // The gravest each time, the others once a day.
      std::vector<std::string> codes;
      for (const std::string& code : caution_codes(s, {at.step->task})) {
        if (said.insert(code).second || codes.empty()) codes.push_back(code);
      }
      d.sections.push_back(step_section(s, at, codes, mornings));
    }
    // In the last step's part, so that it never comes alone on a sheet.
    d.sections.back().blocks.emplace_back(signatures());
  }
  for (Section& card : day_cards(s, mornings)) d.sections.push_back(std::move(card));
  d.bottom_line = {fmt::format("{} days · {} hold points · {} kits",
                               s.plan.programme.feasible ? std::to_string(days.size()) : "no",
                               hold_points(s.plan),
                               s.plan.quantities.kits),
                   {},
                   Role::total};
  return d;
}

}  // namespace basinwright::report
