#include <fmt/format.h>
#include <algorithm>

#include "basinwright/sitelog/progress.hpp"
#include "checklist_parts.hpp"
#include "site_parts.hpp"
#include "wording/common.hpp"
#include "wording/site.hpp"

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
  return c.task == "rework" && !site.subject.plan.system.planned_rework &&
         release_of(site, job::makers_advice) == nullptr;
}

bool go(const Site& site, const Chance& c) {
  return goes(site, c) && !waits_for_advice(site, c);
}

Table chances_table(const Site& site) {
  Table table;
  table.key = "tasks";
  table.columns = {{"task", say::task},
                   {"section", "", document::Align::left, false},
                   {"go", "48 h"},
                   {"first_gate", say::what_closes_it_first},
                   {"opens", say::opens},
                   {"until", say::ends}};
  for (const Chance& c : site.subject.plan.programme.chances) {
    std::string gate = c.gate ? held(*c.gate, site.subject.units) : "";
    if (waits_for_advice(site, c)) gate = say::hold_point_the_makers_advice_in;
    const bool is_go = go(site, c);
    Cell until = c.until ? Cells::moment(*c.until) : Cells::nothing("-");
    if (c.opens && c.until && c.opens->date() == c.until->date())
      until.text = dates::clock(*c.until);
    Cell opens = c.opens ? Cells::moment(*c.opens) : Cells::nothing(say::not_in_sight);
    if (waits_for_advice(site, c)) opens = Cells::nothing(say::with_the_advice);
    table.rows.push_back({{Cells::coded(job_of(c.task, c.section), c.task),
                           c.section.empty() ? Cells::nothing("") : Cells::words(c.section),
                           {is_go ? "GO" : "NO-GO", Value(is_go), is_go ? Role::good : Role::stop},
                           gate.empty() ? Cells::nothing(say::nothing) : Cells::words(gate),
                           std::move(opens),
                           std::move(until)}});
  }
  return table;
}

Section today_section(const Site& site) {
  Section section{"", say::next_48_hours, {}, true};
  if (site.subject.plan.programme.chances.empty()) {
    section.blocks.emplace_back(
        document::Paragraph{"", say::nothing_is_left_to_do, {}, Role::good});
  }
  Table table = chances_table(site);
  table.shown = !table.rows.empty();
  section.blocks.emplace_back(std::move(table));
  return section;
}

// What is going on or planned today.
Section work_section(const Site& site) {
  Section section{"", say::on_todays_sheet, {}, false};
  Table table;
  table.key = "planned";
  table.columns = {{"task", say::task},
                   {"start", say::from},
                   {"end", say::to},
                   {"people", say::people, document::Align::right}};
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
  Section section{"", say::morning_card_read_before_the_first_mix, {}, true};
  const sitelog::Rules& r = site.rules;
  const auto degrees = [&](units::Temperature t) { return units::show(t, site.subject.units, 0); };
  Table table;
  table.key = "readings";
  table.columns = {{"reading", say::reading}, {"limit", say::limit}, {"value", say::read}};
  const auto row = [&](const char* what, const std::string& limit) {
    table.rows.push_back({{Cells::words(what), Cells::words(limit), Cells::nothing("________")}});
  };
  row(say::air, degrees(r.air_min) + say::to_after + degrees(r.air_max));
  row(say::shell, degrees(r.shell_min) + say::to_after + degrees(r.shell_max));
  row(say::humidity, fmt::format(say::at_most_percent, r.humidity_max.share() * 100.0));
  row(say::shell_above_the_dew_point,
      say::at_least + units::show(r.dew_margin, site.subject.units, 1));
  row(say::parts_a_and_b_shade_and_temperature, say::cool_and_shaded_both_above_15_c_in_the);
  row(say::batch_of_part_a_kind_of_part_b, say::one_batch_one_kind_for_the_whole_job);
  row(say::coat_below_thumb_and_wipe, say::dry_not_tacky_no_sticky_film);
  row(say::who_cuts_in_who_rolls_last_start, say::kit_marks_on_the_wall);
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

// The last start of a task; of work made good, on that section.
const sitelog::Entry* last_work_on(const Site& site,
                                   const std::string& task,
                                   const std::string& section) {
  const sitelog::Entry* last = nullptr;
  for (const sitelog::Entry& e : site.log.entries) {
    if (e.task != task) continue;
    const bool here = e.section.empty() || e.section == section;
    if (sitelog::is_again(task) && (!here || e.event != sitelog::Event::started)) continue;
    if (last == nullptr || e.at >= last->at) last = &e;
  }
  return last;
}

// The hold points between the last work that was begun and a task; work past older ones is a rule
// broken, and said there.
std::vector<std::string> open_holds(const Site& site,
                                    const std::string& task,
                                    const std::string& section) {
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
    const sitelog::Entry* begun = last_work_on(site, rule.task, section);
    // Of one section only, and signed for once more.
    const bool again = sitelog::is_again(rule.task);
    if (again && begun == nullptr) continue;
    if (begun != nullptr) open.clear();
    for (const std::string& code : rule.after) {
      const sitelog::Entry* release = release_of(site, code);
      if (release == nullptr || (again && release->at < begun->at)) open.push_back(code);
    }
  }
  return open;
}

Section holds_section(const Site& site) {
  Section section{"", say::sign_before_you_start, {}, false};
  document::List list;
  document::Array codes;
  for (const Chance& c : site.subject.plan.programme.chances) {
    for (const std::string& code : open_holds(site, c.task, c.section)) {
      const HoldWords words = hold(code);
      const std::string text = fmt::format(
          say::before_go_on_when, job_of(c.task, c.section), words.what, code, words.limit);
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

// What was lost is made good by a step of its own: what to do, cautions, what is signed.
std::vector<Section> again_sections(const Site& site) {
  std::vector<Section> sections;
  const job::Plan& plan = site.subject.plan;
  for (const sequence::Booking& b : plan.programme.bookings) {
    const auto step = std::ranges::find(plan.route.steps, b.task, &preparation::Step::task);
    const bool chance = std::ranges::any_of(plan.programme.chances, [&](const Chance& c) {
      return c.task == b.task && c.section == b.section && goes(site, c);
    });
    const bool here = chance || (b.going_on && b.end > site.now.down());
    if (!sitelog::is_again(b.task) || !here || step == plan.route.steps.end()) continue;
    sections.push_back(step_section(site.subject,
                                    {&*step, &b, true, true},
                                    caution_codes(site.subject, {b.task}),
                                    plan.mixing.mornings));
  }
  return sections;
}

Cell morning_bottom(const Site& site) {
  const auto& chances = site.subject.plan.programme.chances;
  if (chances.empty()) return {say::nothing_is_left_to_do, {}, Role::good};
  if (no_go(site)) {
    const Chance& c = chances.front();
    std::string why = c.gate ? held(*c.gate, site.subject.units) : "";
    if (waits_for_advice(site, c)) why = say::the_makers_advice_in_writing_is_not;
    return {
        "NO-GO: " + job_of(c.task, c.section) + (why.empty() ? "" : ", " + why), {}, Role::stop};
  }
  const auto first = std::ranges::find_if(chances, [&](const Chance& c) { return go(site, c); });
  return {"GO: " + job_of(first->task, first->section) + say::from_after +
              Cells::moment(*first->opens).text,
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
  head(site, say::today, d);
  if (site.subject.plan.programme.weather == sequence::WeatherBasis::none) {
    d.notices.emplace_back(say::no_weather_has_been_read_the_calendar);
  }
  for (Section (*make)(const Site&) :
       {today_section, deadlines_section, holds_section, work_section, card_section}) {
    d.sections.push_back(make(site));
  }
  for (Section& section : again_sections(site)) d.sections.push_back(std::move(section));
  d.bottom_line = morning_bottom(site);
  return d;
}

}  // namespace basinwright::report
