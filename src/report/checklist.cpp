#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "agenda.hpp"
#include "checklist_parts.hpp"
#include "checklist_words.hpp"
#include "site_parts.hpp"
#include "wording/checklist.hpp"
#include "wording/common.hpp"

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
  int number = 1;
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

// Of a job that has begun the days from `from` on, and what is not done on them; they keep their
// numbers.
std::vector<Day> days_with_dates(const job::Plan& plan, const std::optional<dates::Date>& from) {
  std::set<dates::Date> all;
  for (const Booking& b : plan.programme.bookings) {
    if (step_of(plan, b.task) != nullptr) all.merge(days_of(b));
  }
  std::vector<Day> days;
  int number = 0;
  for (const dates::Date date : all) {
    Day day;
    day.number = ++number;
    for (const Booking& b : plan.programme.bookings) {
      const std::set<dates::Date> own = days_of(b);
      const Step* step = step_of(plan, b.task);
      const bool over = b.done && !b.going_on;
      if (step == nullptr || over || !own.contains(date)) continue;
      day.steps.push_back({step, &b, date == *own.begin(), date == *own.rbegin()});
    }
    day.title = fmt::format(say::day_of, number, Cells::date(date).text);
    if (!day.steps.empty() && (!from || date >= *from)) days.push_back(std::move(day));
  }
  return days;
}

std::vector<Day> days_of_plan(const job::Plan& plan, const std::optional<dates::Date>& from) {
  if (plan.programme.feasible) return days_with_dates(plan, from);
  Day day{1, say::in_this_order_there_are_no_dates_yet, {}};
  for (const Step& step : plan.route.steps) day.steps.push_back({&step, nullptr, true, true});
  return {std::move(day)};
}

Table day_table(const Day& day) {
  Table table;
  table.columns = {{"", say::from},
                   {"", say::to},
                   {"", say::task},
                   {"", say::people, Align::right},
                   {"", say::done}};
  for (const StepOnDay& at : day.steps) {
    const Booking& b = *at.booking;
    const std::string section = b.section.empty() ? "" : say::section_after + b.section;
    const bool ends_today = at.last && b.start.date() == b.end.date();
    table.rows.push_back(
        {{Cells::words(at.first ? dates::clock(b.start) : say::goes_on_small),
          Cells::words(ends_today || (at.last && !at.first) ? dates::clock(b.end)
                                                            : Cells::moment(b.end).text),
          Cells::words(task(b.task) + section),
          b.people > 0 ? Cells::count(b.people) : Cells::nothing(say::nobody),
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
  Section section{"", say::this_site, {}, true};
  Facts facts;
  const auto said = [&](const char* label, const std::string& text) {
    facts.facts.push_back({"", label, text.empty() ? Cells::blank() : Cells::words(text), true});
  };
  said(say::client, s.job.heading.client.name);
  said(say::address_for_an_ambulance, s.job.heading.client.address);
  facts.facts.push_back({"", say::painted_area, c.area(s.plan.take_off.painted), true});
  facts.facts.push_back({"", say::water, c.bulk(s.plan.take_off.total.water_volume), true});
  facts.facts.push_back({"", say::deepest, c.length(s.plan.take_off.total.deepest), true});
  said(say::parking, site.parking);
  said(say::hours_allowed, site.hours);
  said(say::sewer_gully, site.gully);
  if (site.ph_min || site.ph_max) {
    said(say::ph_the_sewer_takes,
         fmt::format(say::to_of,
                     site.ph_min ? units::fixed(*site.ph_min, 1) : "?",
                     site.ph_max ? units::fixed(*site.ph_max, 1) : "?"));
  }
  std::string permits;
  for (const job::Permit& permit : site.permits)
    permits += (permits.empty() ? "" : "; ") + permit.what;
  if (!permits.empty()) said(say::permits_in_hand_before_work, permits);
  section.blocks.emplace_back(std::move(facts));
  return section;
}

Section emergency_section(const Subject& s) {
  Section section{"", say::emergency_and_first_aid, {}, true};
  section.own_page = true;
  const std::string& call = s.job.site.emergency;
  section.blocks.emplace_back(
      Facts{{{"", say::call, call.empty() ? Cells::blank() : Cells::words(call), true},
             {"", say::nearest_hospital, Cells::blank(), true},
             {"", say::first_aider_on_site, Cells::blank(), true},
             {"", say::safety_data_sheets_lie_at, Cells::blank(), true},
             {"", say::power_is_cut_at, Cells::blank(), true}}});
  Table table;
  table.caption = say::first_aid_the_safety_data_sheet_of_the;
  table.columns = {{"", say::what_happened}, {"", say::what_is_done}};
  for (const FirstAid& aid : first_aid())
    table.rows.push_back({{Cells::words(aid.what), Cells::words(aid.what_to_do)}});
  section.blocks.emplace_back(std::move(table));
  return section;
}

Table to_sign(std::string caption, std::string when, std::int64_t lines) {
  Table table;
  table.caption = std::move(caption);
  table.columns = {{"", say::name}, {"", say::signature}, {"", std::move(when)}};
  for (std::int64_t i = 0; i < lines; ++i)
    table.rows.push_back({{Cells::blank(), Cells::blank(), Cells::blank()}});
  return table;
}

/// Who was told before the work; two more lines than the crew has people, for whoever joins it.
Table briefing(const Subject& s) {
  constexpr std::int64_t more = 2;
  return to_sign(
      say::briefed_before_the_work, say::date, std::llround(s.job.crew.people.value) + more);
}

Section deciders_section(const Subject& s) {
  Section section{"", say::who_decides, {}, true};
  section.blocks.emplace_back(caution_paragraph(s, "who-decides"));
  Table table;
  table.caption = say::not_this_crews_work;
  table.columns = {{"", say::what}, {"", say::decided_or_done_by}};
  for (const Aid& row : licensed_work()) {
    table.rows.push_back(
        {{Cells::words(std::string(row.what)), Cells::words(std::string(row.what_to_do))}});
  }
  section.blocks.emplace_back(std::move(table));
  section.blocks.emplace_back(briefing(s));
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
  for (const Day& day : days) {
    for (const StepOnDay& at : day.steps) {
      const Booking* b = at.booking;
      Row row;
      row.cells = {
          Cells::count(day.number),
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
  table.caption = say::readings_inside_these_limits_or_nobody;
  table.columns = {{"", say::reading}, {"", say::limit}};
  for (const std::string& title : columns) table.columns.push_back({"", title});
  const auto row = [&](std::string what, std::string limit, const char* unit) {
    Row made;
    made.cells = {Cells::words(what), {std::move(limit), {}, Role::total}};
    made.cells.resize(table.columns.size(), Cells::blank(unit));
    table.rows.push_back(std::move(made));
  };
  const char* degrees = s.units == units::System::us ? "°F" : "°C";
  const auto t = [&](units::Temperature value) { return units::show(value, s.units, 0); };
  row(say::time, "", "");
  row(say::air, fmt::format(say::to_of, t(limits.air_min.value), t(limits.air_max.value)), degrees);
  row(say::shell,
      fmt::format(say::to_of, t(limits.shell_min.value), t(limits.shell_max.value)),
      degrees);
  row(say::humidity, say::at_most + units::show(limits.humidity_max.value, 0), "%");
  row(say::dew_point, "", degrees);
  row(say::shell_above_dew_point,
      say::at_least + units::show(limits.dew_margin.value, s.units, 1),
      degrees);
  if (limits.wind_max) row(say::wind, say::as_the_data_sheet_says, "");
  return table;
}

Table signatures() {
  constexpr std::int64_t lines = 2;
  return to_sign(say::end_of_the_day, say::time, lines);
}

namespace {

document::Document sheets(const Subject& s, const std::optional<dates::Date>& from) {
  document::Document d;
  d.title = say::site_checklist;
  d.subtitle = subtitle_of(s.job);
  d.reading = document::Reading::site;
  d.notices = notices(s, from ? Goods::by_log : Goods::by_order);
  d.sections = {version_section(),
                heading_section(s),
                site_section(s),
                emergency_section(s),
                deciders_section(s)};
  if (s.plan.stopped()) {
    const StopWords words = stop(s.plan.route.stop->why);
    Section section{"", say::nobody_starts, {}, true};
    section.blocks.emplace_back(Paragraph{"", std::string(words.why), {}, Role::stop, true});
    section.blocks.emplace_back(
        Paragraph{"", fmt::format(say::cleared_by_of, words.clear_by), {}, Role::plain, true});
    d.sections.push_back(std::move(section));
    d.sections.push_back(cautions_section(s));
    d.bottom_line = {say::stop_nobody_starts_on_this_job, {}, Role::stop};
    return d;
  }
  const std::vector<Day> days = days_of_plan(s.plan, from);
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
  d.bottom_line = {
      fmt::format(say::days_hold_points_kits,
                  s.plan.programme.feasible ? std::to_string(days.size()) : say::no_days,
                  hold_points(s.plan),
                  s.plan.quantities.kits),
      {},
      Role::total};
  return d;
}

}  // namespace

document::Document checklist(const Subject& s) {
  document::Document d = sheets(s, {});
  d.agenda = agenda_of(s);
  return d;
}

document::Document checklist(const Site& site) {
  document::Document d = sheets(site.subject, site.now.date());
  d.subtitle += (d.subtitle.empty() ? "" : " · ") + (say::the_rest_as_of + at(site.now));
  d.agenda = agenda_of(site);
  return d;
}

}  // namespace basinwright::report
