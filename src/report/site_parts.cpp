#include "site_parts.hpp"

#include <fmt/format.h>
#include <cmath>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"

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

// Facts lie on quarter hours, windows end to the minute.
constexpr std::int64_t quarter = 15;

std::string hours_and_minutes(units::Duration time) {
  const auto minutes = std::llround(time.in(units::minutes));
  return fmt::format("{} h {:02} min", minutes / 60, minutes % 60);
}

// What a foreman asks: is it still there, by how much, and is there a second morning.
std::string in_words(const Site& site, const job::Deadline& d) {
  if (d.state == State::lost) {
    if (d.after == "etch-floor" || d.after == sitelog::clean_again_task)
      return "lost: clean again first";
    if (site.subject.plan.system.planned_rework)
      return "lost: abrade and clean first, as the data sheet allows";
    return release_of(site, job::makers_advice) == nullptr
               ? "lost: stop here, the maker's advice in writing first"
               : "lost: abrade and clean first, as the maker advised";
  }
  std::string text = fmt::format("{}: planned {}, {}{} in hand",
                                 word(d.state),
                                 Cells::moment(*d.planned).text,
                                 d.state == State::shorter ? "only " : "",
                                 hours_and_minutes(d.in_hand));
  if (d.last && d.by.minutes() - dates::Minute(*d.last).minutes() >= quarter)
    text += ", since hours or weather close it after " + Cells::moment(*d.last).text;
  if (d.last)
    text += d.again ? "; next chance " + Cells::moment(*d.again).text : "; no second morning";
  return text;
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
                   {"in_hand_h", "", document::Align::right, false},
                   {"last_start", "", document::Align::left, false},
                   {"next_chance", "", document::Align::left, false},
                   {"state", "How it stands"}};
  const auto moment = [](const std::optional<dates::Moment>& m) {
    return m ? Cells::moment(*m) : Cells::nothing("-");
  };
  for (const job::Deadline& d : site.deadlines) {
    const bool etch = d.after == "etch-floor" || d.after == sitelog::clean_again_task;
    table.rows.push_back(
        {{{job_of(d.task, d.section) + (etch ? ", on the etch" : ""), {}, Role::heading},
          Cells::words(d.task),
          d.section.empty() ? Cells::nothing("") : Cells::words(d.section),
          etch ? Cells::nothing("when dry") : minute_cell(d.from),
          minute_cell(d.by),
          {"", Value(d.in_hand.in(units::hours)), Role::plain},
          moment(d.last),
          moment(d.again),
          {in_words(site, d), Value(word(d.state)), role(d.state)}}});
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

const sitelog::Entry* release_of(const Site& site, std::string_view hold) {
  const sitelog::Entry* last = nullptr;
  for (const sitelog::Entry& e : site.log.entries) {
    if (e.event != sitelog::Event::hold_released || e.hold != hold) continue;
    if (last == nullptr || e.at >= last->at) last = &e;
  }
  return last;
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
