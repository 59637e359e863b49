#include <fmt/format.h>

#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "odds_parts.hpp"
#include "sections.hpp"
#include "weather_words.hpp"
#include "wording/common.hpp"
#include "wording/jobsheet.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Section;
using document::Table;

bool by_weather(const sequence::Held& held) {
  return held.by == sequence::Held::By::weather;
}

void append_words(std::string& text, std::string_view words) {
  if (words.empty()) return;
  text += text.empty() ? "" : "; ";
  text += words;
}

// What dates rest on where that is less than the weather read.
std::string_view rests_on_less(weather::Quality quality) {
  switch (quality) {
    case weather::Quality::missing:
      return say::by_the_calendar_alone;
    case weather::Quality::climatology:
      return say::by_a_typical_year;
    case weather::Quality::forecast:
    case weather::Quality::observed:
      break;
  }
  return "";
}

// People find the weather below the table, where a line is long enough for it.
Cell held_cell(const Subject& s, const sequence::Booking& booking) {
  std::string text;
  document::Array values;
  if (booking.done) {
    text = booking.going_on ? say::going_on_end_as_planned : "done";
    if (booking.assumed) text = say::taken_as_done_not_recorded;
    return {text, Value(document::Array{Value(text)}), Role::good};
  }
  for (const sequence::Held& h : booking.held_by) {
    const std::string words = held(h, s.units);
    if (words.empty()) continue;
    if (!by_weather(h)) append_words(text, words);
    values.emplace_back(words);
  }
  if (std::ranges::any_of(booking.held_by, by_weather)) append_words(text, say::weather_see_below);
  if (s.plan.programme.weather != sequence::WeatherBasis::none) {
    append_words(text, rests_on_less(booking.rests_on));
  }
  return {text, Value(std::move(values)), Role::muted};
}

// What of the weather held each task, at the width of the page.
void add_weather_reasons(const Subject& s, Section& section) {
  document::List reasons;
  for (const sequence::Booking& booking : s.plan.programme.bookings) {
    std::string text;
    for (const sequence::Held& h : booking.held_by) {
      if (by_weather(h)) append_words(text, held(h, s.units));
    }
    if (text.empty()) continue;
    const std::string where = booking.section.empty() ? "" : say::section_after + booking.section;
    reasons.items.push_back(Cells::words(task(booking.task) + where + ": " + text));
  }
  if (reasons.items.empty()) return;
  section.blocks.emplace_back(
      document::Paragraph{"", say::held_by_the_weather_each_by_the_first, Value(), Role::plain});
  section.blocks.emplace_back(std::move(reasons));
}

// The day is said once where a task starts and ends on it.
std::string until(const sequence::Booking& b) {
  if (b.start.date() == b.end.date()) return dates::clock(b.end);
  return Cells::moment(b.end).text;
}

Table tasks_table(const Subject& s) {
  Table table;
  table.key = "tasks";
  table.columns = {{"task", say::task},
                   {"section", say::section},
                   {"start", say::from},
                   {"end", say::to},
                   {"rests_on", say::rests_on},
                   {"held_by", say::not_earlier_because_of}};
  const bool cut = s.plan.quantities.cut.sections.size() > 1;
  table.columns[1].shown = cut;
  constexpr std::size_t rests_on_column = 4;
  table.columns[rests_on_column].shown = false;  // People read it with the reasons.
  for (const sequence::Booking& b : s.plan.programme.bookings) {
    Cell end = Cells::moment(b.end);
    end.text = until(b);
    table.rows.push_back({{Cells::coded(task(b.task), b.task),
                           b.section.empty() ? Cells::nothing("") : Cells::words(b.section),
                           Cells::moment(b.start),
                           std::move(end),
                           Cells::words(std::string(rests_on(b.rests_on))),
                           held_cell(s, b)}});
  }
  return table;
}

document::Fact cure_fact(const sequence::Programme& p) {
  const double days = p.cure.in(units::days);
  std::string by = p.cure_by_temperature ? say::by_the_mean_temperatures_given
                                         : say::no_temperature_known_so_the_longer;
  if (p.cure_by_weather) {
    by = p.cure_by_temperature ? say::by_the_air_that_was_read_month_means
                               : say::by_the_air_that_was_read_the_longer;
  }
  return {"cure_days",
          say::cure_before_filling,
          {fmt::format("{} d, {}", units::fixed(days, 1), by),
           Value(days),
           p.cure_by_temperature ? Role::plain : Role::assumed}};
}

// Only a data sheet can give leave for it; a window that was lost was missed by nobody's wish.
document::Fact reworks_fact(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  const auto count = std::ranges::count(p.bookings, "rework", &sequence::Booking::task);
  const bool on_purpose = count > 0 && s.plan.system.planned_rework && !p.lost.anything();
  Cell cell = Cells::count(count);
  cell.text += say::as_the_data_sheet_allows_abraded_and;
  cell.role = Role::caution;
  return {"reworks", say::recoat_windows_missed_on_purpose, std::move(cell), on_purpose};
}

void add_dates(const Subject& s, Section& section) {
  const sequence::Programme& p = s.plan.programme;
  const bool dated = p.feasible;
  const Cell none = Cells::nothing(say::no_dates);
  document::Facts facts;
  facts.facts = {
      {"feasible", "", {"", Value(dated), Role::plain}, false},
      {"weather",
       say::weather,
       Cells::coded(basis(p), std::string(code(p.weather))),
       dated || p.weather != sequence::WeatherBasis::none},
      {"start", say::start, dated ? Cells::moment(p.start) : none, dated},
      {"fill_start", say::fill_starts, dated ? Cells::moment(p.fill_start) : none, dated},
      {"refill_done", say::full_again, dated ? Cells::moment(p.refill_done) : none, dated},
      {"first_swim", say::first_swim_not_before, dated ? Cells::date(p.first_swim) : none, dated},
      {"days_on_site", say::days_on_site, Cells::count(p.days_on_site), dated},
      {"split_coats", "", Cells::count(p.split_coats), false}};
  if (dated) facts.facts.push_back(reworks_fact(s));
  if (dated) facts.facts.push_back(cure_fact(p));
  if (p.hardener) {
    facts.facts.push_back(
        {"hardener",
         say::part_b,
         {hardener(*p.hardener, s.units),
          Value(std::string(code(p.hardener->kind))),
          p.hardener->kind == sequence::Hardener::Kind::straddles ? Role::caution : Role::plain}});
  } else {
    facts.facts.push_back({"hardener", "", Cells::nothing(""), false});
  }
  section.blocks.emplace_back(std::move(facts));
}

Cell constraints_cell(const std::vector<sequence::Constraint>& constraints) {
  std::string text;
  document::Array codes;
  for (const sequence::Constraint c : constraints) {
    text += (text.empty() ? "" : ", ") + std::string(words(c));
    codes.emplace_back(std::string(code(c)));
  }
  return {text, Value(std::move(codes)), Role::plain};
}

// The rules keep the coat on the wall: which of them stand in the way is no advice to break them.
Cell said_not_offered(Cell cell) {
  cell.text += say::said_not_offered;
  return cell;
}

Cell nearest_cell(const Subject& s, const sequence::Blocked& blocked) {
  std::string text;
  document::Array misses;
  for (const sequence::NearMiss& miss : blocked.nearest) {
    const std::string why = closed_by(miss.verdict, s.units);
    text += (text.empty() ? "" : "; ") + Cells::moment(miss.at).text + say::closed_by + why;
    misses.emplace_back(
        document::Object{{"at", Value(dates::iso(miss.at))}, {"closed_by", Value(why)}});
  }
  return {text, Value(std::move(misses)), Role::plain};
}

Cell ways_out_cell(const sequence::Blocked& blocked) {
  std::string text;
  document::Array ways;
  for (const sequence::WayOut& way : blocked.ways_out) {
    text += (text.empty() ? "" : "; ") + way_out(way);
    ways.emplace_back(document::Object{{"how", Value(std::string(code(way.how)))},
                                       {"refill_done", Value(dates::iso(way.refill_done))}});
  }
  return {text, Value(std::move(ways)), Role::good};
}

document::Facts blocked_facts(const Subject& s, const sequence::Blocked& b) {
  document::Facts facts;
  facts.facts = {
      {"blocked_by.task", say::blocked_at, Cells::coded(task(b.task), b.task)},
      {"blocked_by.section",
       say::section,
       b.section.empty() ? Cells::nothing("") : Cells::words(b.section),
       !b.section.empty()},
      {"blocked_by.why", say::why, {blocked(b), Value(blocked(b)), Role::stop}},
      {"blocked_by.together",
       say::these_exclude_one_another,
       constraints_cell(b.together),
       !b.together.empty()},
      {"blocked_by.alone",
       say::would_fit_without_one_of,
       said_not_offered(constraints_cell(b.alone)),
       !b.alone.empty()},
      {"blocked_by.nearest", say::came_closest, nearest_cell(s, b), !b.nearest.empty()},
      {"blocked_by.ways_out", say::what_would_do, ways_out_cell(b), !b.ways_out.empty()}};
  return facts;
}

}  // namespace

Cell weather_basis(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  const bool read = p.weather != sequence::WeatherBasis::none;
  return Cells::coded(read ? basis(p) : say::the_calendar_alone_no_weather_has_been,
                      std::string(code(p.weather)));
}

Section programme_section(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  Section section;
  section.key = "programme";
  section.title = say::programme;
  add_dates(s, section);
  if (auto facts = aim_and_allow(s)) section.blocks.emplace_back(std::move(*facts));
  section.blocks.emplace_back(tasks_table(s));
  add_weather_reasons(s, section);
  if (p.rain_after_test) {
    section.blocks.emplace_back(
        document::Paragraph{"rain_after_dryness_test",
                            fmt::format(say::rain_on_after_the_dryness_test_lay_the,
                                        Cells::moment(*p.rain_after_test).text),
                            Value(dates::iso(*p.rain_after_test)),
                            Role::caution});
  }
  if (p.blocked_by) {
    section.blocks.emplace_back(blocked_facts(s, *p.blocked_by));
  } else {
    section.blocks.emplace_back(document::Facts{{{"blocked_by", "", Cells::nothing(""), false}}});
  }
  return section;
}

}  // namespace basinwright::report
