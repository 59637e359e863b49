#include "site_parts.hpp"

#include <fmt/format.h>

namespace basinwright::report {
namespace {

using document::Section;
using document::Table;
using State = job::Deadline::State;

std::string_view word(State state) {
  switch (state) {
    case State::clear:
      return "clear";
    case State::shorter:
      return "short";
    case State::lost:
      return "lost";
  }
  return "";
}

Role role(State state) {
  if (state == State::lost) return Role::stop;
  return state == State::clear ? Role::good : Role::caution;
}

std::string in_words(const job::Deadline& d) {
  if (d.state == State::lost) return "lost: stop here, the maker's advice in writing first";
  const std::int64_t minutes = d.by.minutes() - dates::Minute(*d.planned).minutes();
  return fmt::format("{}: planned {}, {} h {:02} min in hand",
                     word(d.state),
                     Cells::moment(*d.planned).text,
                     minutes / 60,
                     minutes % 60);
}

}  // namespace

std::string at(dates::Minute minute) {
  return dates::short_day(minute.date()) + " " + dates::clock(minute);
}

Cell minute_cell(dates::Minute minute) {
  return {at(minute), Value(dates::iso(minute)), Role::plain};
}

std::string job_of(const std::string& name, const std::string& section) {
  return task(name) + (section.empty() ? "" : ", section " + section);
}

Section deadlines_section(const Site& site) {
  Section section{"", "Live deadlines", {}, true};
  Table table;
  table.key = "deadlines";
  table.columns = {{"what", "What"},
                   {"task", "", document::Align::left, false},
                   {"section", "", document::Align::left, false},
                   {"not_before", "Not before"},
                   {"by", "Must be started by"},
                   {"state", "How it stands"}};
  for (const job::Deadline& d : site.deadlines) {
    const bool etch = d.after == "etch-floor" || d.after == "clean-again";
    table.rows.push_back(
        {{{job_of(d.task, d.section) + (etch ? ", on the etch" : ""), {}, Role::heading},
          Cells::words(d.task),
          d.section.empty() ? Cells::nothing("") : Cells::words(d.section),
          etch ? Cells::nothing("when dry") : minute_cell(d.from),
          minute_cell(d.by),
          {in_words(d), Value(word(d.state)), role(d.state)}}});
  }
  if (table.rows.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", "No window is open: nothing expires.", {}, Role::good});
    table.shown = false;
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section breaches_section(const Site& site) {
  Section section{"", "Rules broken", {}, true};
  document::List list;
  document::Array values;
  for (const sitelog::Breach& b : site.breaches) {
    const std::string text = at(site.log.entries[b.entry].at) + "  " + broken_rule(b);
    list.items.push_back({text, {}, Role::caution});
    values.emplace_back(text);
  }
  section.shown = !site.breaches.empty();
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(
      document::Facts{{{"rules_broken", "", {"", Value(std::move(values)), Role::plain}, false}}});
  return section;
}

void head(const Site& site, const std::string& title, document::Document& page) {
  page.title = title;
  const job::Heading& h = site.subject.job.heading;
  for (const std::string& part : {h.number, h.client.name, "as of " + at(site.now)}) {
    if (!part.empty()) page.subtitle += (page.subtitle.empty() ? "" : " · ") + part;
  }
  page.sections = {version_section(), heading_section(site.subject)};
  page.sections.back().shown = false;
}

}  // namespace basinwright::report
