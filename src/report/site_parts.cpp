#include "site_parts.hpp"

#include <fmt/format.h>
#include <cmath>

#include "basinwright/sitelog/progress.hpp"
#include "basinwright/units/unit.hpp"
#include "wording/common.hpp"
#include "wording/site.hpp"

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
    case State::planned:
      return "planned";
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
  return fmt::format(say::h_min, minutes / 60, minutes % 60);
}

// What a foreman asks: is it still there, by how much, and is there a second morning.
std::string in_words(const Site& site, const job::Deadline& d) {
  if (d.state == State::planned) return say::planned_missed_on_purpose_abrade_and;
  if (d.state == State::lost) {
    if (d.after == "etch-floor" || d.after == sitelog::clean_again_task)
      return say::lost_clean_again_first;
    return release_of(site, job::makers_advice) == nullptr
               ? say::lost_stop_here_the_makers_advice_in
               : say::lost_abrade_and_clean_first_as_the;
  }
  std::string text = fmt::format(say::planned_in_hand,
                                 word(d.state),
                                 Cells::moment(*d.planned).text,
                                 d.state == State::shorter ? say::only : "",
                                 hours_and_minutes(d.in_hand));
  if (d.last && d.by.minutes() - dates::Minute(*d.last).minutes() >= quarter)
    text += say::since_hours_or_weather_close_it_after + Cells::moment(*d.last).text;
  if (d.last)
    text += d.again ? say::next_chance + Cells::moment(*d.again).text : say::no_second_morning;
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
  return task(name) + (section.empty() ? "" : say::section_after + section);
}

Section deadlines_section(const Site& site) {
  Section section{"", say::live_deadlines, {}, true};
  Table table;
  table.key = "deadlines";
  table.columns = {{"what", say::what},
                   {"task", "", document::Align::left, false},
                   {"section", "", document::Align::left, false},
                   {"not_before", say::not_before},
                   {"by", say::must_be_started_by},
                   {"in_hand_h", "", document::Align::right, false},
                   {"last_start", "", document::Align::left, false},
                   {"next_chance", "", document::Align::left, false},
                   {"state", say::how_it_stands}};
  const auto moment = [](const std::optional<dates::Moment>& m) {
    return m ? Cells::moment(*m) : Cells::nothing("-");
  };
  for (const job::Deadline& d : site.deadlines) {
    const bool etch = d.after == "etch-floor" || d.after == sitelog::clean_again_task;
    table.rows.push_back(
        {{{job_of(d.task, d.section) + (etch ? say::on_the_etch : ""), {}, Role::heading},
          Cells::words(d.task),
          d.section.empty() ? Cells::nothing("") : Cells::words(d.section),
          etch ? Cells::nothing(say::when_dry) : minute_cell(d.from),
          minute_cell(d.by),
          {"", Value(d.in_hand.in(units::hours)), Role::plain},
          moment(d.last),
          moment(d.again),
          {in_words(site, d), Value(word(d.state)), role(d.state)}}});
  }
  if (table.rows.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", say::no_window_is_open_nothing_expires, {}, Role::good});
    table.shown = false;
  }
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section breaches_section(const Site& site) {
  Section section{"", say::rules_broken, {}, true};
  document::List list;
  document::Array values;
  for (const sitelog::Breach& b : site.breaches) {
    const std::string text =
        at(site.log.entries[b.entry].at) + "  " + broken_rule(b, site.subject.units);
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
  for (const std::string& part : {h.number, h.client.name, say::as_of + at(site.now)}) {
    if (!part.empty()) page.subtitle += (page.subtitle.empty() ? "" : " · ") + part;
  }
  page.sections = {version_section(), heading_section(site.subject)};
  page.sections.back().shown = false;
}

}  // namespace basinwright::report
