#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "sections.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Section;
using document::Table;

Cell held_cell(const sequence::Booking& booking) {
  std::string text;
  document::Array values;
  for (const sequence::Held& h : booking.held_by) {
    const std::string words = held(h);
    if (words.empty()) continue;
    text += (text.empty() ? "" : "; ") + words;
    values.emplace_back(words);
  }
  return {text, Value(std::move(values)), Role::muted};
}

// The day is said once where a task starts and ends on it.
std::string until(const sequence::Booking& b) {
  if (b.start.date() == b.end.date()) return dates::clock(b.end);
  return Cells::moment(b.end).text;
}

Table tasks_table(const Subject& s) {
  Table table;
  table.key = "tasks";
  table.columns = {{"task", "Task"},
                   {"section", "Section"},
                   {"start", "From"},
                   {"end", "To"},
                   {"held_by", "Not earlier because of"}};
  const bool cut = s.plan.quantities.cut.sections.size() > 1;
  table.columns[1].shown = cut;
  for (const sequence::Booking& b : s.plan.programme.bookings) {
    Cell end = Cells::moment(b.end);
    end.text = until(b);
    table.rows.push_back({{Cells::coded(task(b.task), b.task),
                           b.section.empty() ? Cells::nothing("") : Cells::words(b.section),
                           Cells::moment(b.start),
                           std::move(end),
                           held_cell(b)}});
  }
  return table;
}

void add_dates(const Subject& s, Section& section) {
  const sequence::Programme& p = s.plan.programme;
  const bool dated = p.feasible;
  const Cell none = Cells::nothing("no dates");
  document::Facts facts;
  facts.facts = {{"feasible", "", {"", Value(dated), Role::plain}, false},
                 {"weather", "Weather", Cells::coded("none read: calendar only", "none"), dated},
                 {"start", "Start", dated ? Cells::moment(p.start) : none, dated},
                 {"fill_start", "Fill starts", dated ? Cells::moment(p.fill_start) : none, dated},
                 {"refill_done", "Full again", dated ? Cells::moment(p.refill_done) : none, dated},
                 {"first_swim",
                  "First swim, by readings, not before",
                  dated ? Cells::date(p.first_swim) : none,
                  dated},
                 {"days_on_site", "Days on site", Cells::count(p.days_on_site), dated},
                 {"split_coats", "", Cells::count(p.split_coats), false}};
  if (dated) {
    const double days = p.cure.in(units::days);
    const std::string by = p.cure_by_temperature ? "by the mean temperatures given"
                                                 : "no temperature known, so the longer wait";
    facts.facts.push_back({"cure_days",
                           "Cure before filling",
                           {fmt::format("{} d, {}", units::fixed(days, 1), by),
                            Value(days),
                            p.cure_by_temperature ? Role::plain : Role::assumed},
                           true});
  }
  section.blocks.emplace_back(std::move(facts));
}

}  // namespace

Cell weather_basis(const Subject&) {
  return Cells::coded("the calendar alone; no weather has been read", "none");
}

Section programme_section(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  Section section;
  section.key = "programme";
  section.title = "Programme";
  add_dates(s, section);
  section.blocks.emplace_back(tasks_table(s));
  if (p.blocked_by) {
    section.blocks.emplace_back(document::Facts{
        {{"blocked_by.task",
          "Blocked at",
          Cells::coded(task(p.blocked_by->task), p.blocked_by->task)},
         {"blocked_by.section",
          "Section",
          p.blocked_by->section.empty() ? Cells::nothing("") : Cells::words(p.blocked_by->section),
          !p.blocked_by->section.empty()},
         {"blocked_by.why",
          "Why",
          {blocked(*p.blocked_by), Value(blocked(*p.blocked_by)), Role::stop}}}});
  } else {
    section.blocks.emplace_back(document::Facts{{{"blocked_by", "", Cells::nothing(""), false}}});
  }
  return section;
}

}  // namespace basinwright::report
