#include <fmt/format.h>
#include <algorithm>

#include "basinwright/sitelog/progress.hpp"
#include "site_parts.hpp"

namespace basinwright::report {
namespace {

using document::Section;
using document::Table;
using sequence::Chance;

constexpr std::int64_t minutes_looked_at = 2880;

bool goes(const Site& site, const Chance& c) {
  return c.opens && dates::Minute(*c.opens).minutes() < site.now.minutes() + minutes_looked_at;
}

bool waits_for_advice(const Site& site, const Chance& c) {
  return c.task == "rework" && release_of(site, job::makers_advice) == nullptr;
}

bool go(const Site& site, const Chance& c) {
  return goes(site, c) && !waits_for_advice(site, c);
}

Table chances_table(const Site& site) {
  Table table;
  table.key = "tasks";
  table.columns = {{"task", "Task"},
                   {"section", "", document::Align::left, false},
                   {"go", "48 h"},
                   {"first_gate", "What closes it first"},
                   {"opens", "Opens"},
                   {"until", "Ends"}};
  for (const Chance& c : site.subject.plan.programme.chances) {
    std::string gate = c.gate ? held(*c.gate, site.subject.units) : "";
    if (waits_for_advice(site, c)) gate = "hold point: the maker's advice in writing";
    const bool is_go = go(site, c);
    Cell until = c.until ? Cells::moment(*c.until) : Cells::nothing("-");
    if (c.opens && c.until && c.opens->date() == c.until->date())
      until.text = dates::clock(*c.until);
    Cell opens = c.opens ? Cells::moment(*c.opens) : Cells::nothing("not in sight");
    if (waits_for_advice(site, c)) opens = Cells::nothing("with the advice");
    table.rows.push_back({{Cells::coded(job_of(c.task, c.section), c.task),
                           c.section.empty() ? Cells::nothing("") : Cells::words(c.section),
                           {is_go ? "GO" : "NO-GO", Value(is_go), is_go ? Role::good : Role::stop},
                           gate.empty() ? Cells::nothing("nothing") : Cells::words(gate),
                           std::move(opens),
                           std::move(until)}});
  }
  return table;
}

Section today_section(const Site& site) {
  Section section{"", "Next 48 hours", {}, true};
  if (site.subject.plan.programme.chances.empty()) {
    section.blocks.emplace_back(document::Paragraph{"", "Nothing is left to do.", {}, Role::good});
  }
  Table table = chances_table(site);
  table.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

// What is going on or planned today.
Section work_section(const Site& site) {
  Section section{"", "On today's sheet", {}, false};
  Table table;
  table.key = "planned";
  table.columns = {{"task", "Task"},
                   {"start", "From"},
                   {"end", "To"},
                   {"people", "People", document::Align::right}};
  const dates::Date today = site.now.date();
  for (const sequence::Booking& b : site.subject.plan.programme.bookings) {
    const bool here = b.start.date() <= today && b.end.date() >= today && b.end > site.now.down();
    if (!here || b.assumed) continue;
    table.rows.push_back({{Cells::coded(job_of(b.task, b.section), b.task),
                           Cells::moment(b.start),
                           Cells::moment(b.end),
                           Cells::count(b.people)}});
  }
  section.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

Section card_section(const Site& site) {
  Section section{
      "", "Morning card: read before the first mix, at each mix and every 4 h", {}, true};
  const sitelog::Rules& r = site.rules;
  const auto degrees = [&](units::Temperature t) { return units::show(t, site.subject.units, 0); };
  Table table;
  table.key = "readings";
  table.columns = {{"reading", "Reading"}, {"limit", "Limit"}, {"value", "Read"}};
  const auto row = [&](const char* what, const std::string& limit) {
    table.rows.push_back({{Cells::words(what), Cells::words(limit), Cells::nothing("________")}});
  };
  row("Air", degrees(r.air_min) + " to " + degrees(r.air_max));
  row("Shell", degrees(r.shell_min) + " to " + degrees(r.shell_max));
  row("Humidity", fmt::format("at most {:.0f} %", r.humidity_max.share() * 100.0));
  row("Shell above the dew point", "at least " + units::show(r.dew_margin, site.subject.units, 1));
  row("Parts A and B, shade and temperature", "cool and shaded; both above 15 °C in the cold");
  row("Batch of Part A, kind of Part B", "one batch, one kind for the whole job");
  row("Coat below, thumb and wipe", "dry, not tacky, no sticky film");
  row("Who cuts in, who rolls, last start", "kit marks on the wall");
  section.shown = std::ranges::any_of(site.subject.plan.programme.chances, [](const Chance& c) {
    return c.task == "prime" || c.task.starts_with("coat-");
  });
  section.blocks.emplace_back(std::move(table));
  return section;
}

// Signed: a coat's own holds on the day, any other ever.
bool is_signed(const Site& site, const std::string& code, const std::string& before) {
  const sitelog::Entry* e = release_of(site, code);
  return e != nullptr && (!sitelog::is_coat(before) || e->at.date() == site.now.date());
}

// The hold points between the last work that was begun and a task; work past older ones is a rule
// broken, and said there.
std::vector<std::string> open_holds(const Site& site, const std::string& task) {
  const auto& route = site.rules.route;
  if (std::ranges::find(route, task, &sitelog::HoldRule::task) == route.end()) return {};
  std::vector<std::string> open;
  for (const sitelog::HoldRule& rule : route) {
    if (rule.task == task) {
      for (const std::string& code : rule.before) {
        if (!is_signed(site, code, task)) open.push_back(code);
      }
      break;
    }
    const bool begun = std::ranges::any_of(
        site.log.entries, [&](const sitelog::Entry& e) { return e.task == rule.task; });
    if (begun) open.clear();
    for (const std::string& code : rule.after) {
      if (release_of(site, code) == nullptr) open.push_back(code);
    }
  }
  return open;
}

Section holds_section(const Site& site) {
  Section section{"", "Sign before you start", {}, false};
  document::List list;
  document::Array codes;
  for (const Chance& c : site.subject.plan.programme.chances) {
    for (const std::string& code : open_holds(site, c.task)) {
      const HoldWords words = hold(code);
      const std::string text = fmt::format("Before {}: {} ({}). Go on when: {}.",
                                           job_of(c.task, c.section),
                                           words.what,
                                           code,
                                           words.limit);
      list.items.push_back({text, {}, Role::caution});
      codes.emplace_back(code);
    }
  }
  section.shown = !codes.empty();
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(
      document::Facts{{{"open_holds", "", {"", Value(std::move(codes)), Role::plain}, false}}});
  return section;
}

Cell bottom(const Site& site) {
  const auto& chances = site.subject.plan.programme.chances;
  if (chances.empty()) return {"Nothing is left to do.", {}, Role::good};
  if (no_go(site)) {
    const Chance& c = chances.front();
    std::string why = c.gate ? held(*c.gate, site.subject.units) : "";
    if (waits_for_advice(site, c)) why = "the maker's advice in writing is not there";
    return {
        "NO-GO: " + job_of(c.task, c.section) + (why.empty() ? "" : ", " + why), {}, Role::stop};
  }
  const auto first = std::ranges::find_if(chances, [&](const Chance& c) { return go(site, c); });
  return {
      "GO: " + job_of(first->task, first->section) + " from " + Cells::moment(*first->opens).text,
      {},
      Role::good};
}

}  // namespace

bool no_go(const Site& site) {
  const auto& chances = site.subject.plan.programme.chances;
  return !chances.empty() &&
         std::ranges::none_of(chances, [&](const Chance& c) { return go(site, c); });
}

document::Document morning(const Site& site) {
  document::Document d;
  head(site, "Today", d);
  if (site.subject.plan.programme.weather == sequence::WeatherBasis::none) {
    d.notices.emplace_back(
        "No weather has been read: the calendar alone. Look at the sky and read the instruments.");
  }
  for (Section (*make)(const Site&) :
       {today_section, deadlines_section, holds_section, work_section, card_section}) {
    d.sections.push_back(make(site));
  }
  d.bottom_line = bottom(site);
  return d;
}

}  // namespace basinwright::report
