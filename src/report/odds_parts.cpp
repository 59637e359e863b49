#include "odds_parts.hpp"

#include <fmt/format.h>
#include <array>

#include "basinwright/units/unit.hpp"
#include "weather_words.hpp"
#include "wording/common.hpp"
#include "wording/odds.hpp"

namespace basinwright::report {
namespace {

// A year is no count: nothing sets its thousands apart.
document::Cell a_year(int year) {
  return {std::to_string(year), document::Value(year), document::Role::quantity};
}

using document::Align;
using document::Facts;
using document::Section;
using document::Table;
using job::MomentQuantile;
using job::Odds;

std::string in_percent(double share) {
  return units::fixed(share * 100.0, 0) + " %";
}

// A date, or that the year was not over inside the horizon.
Cell odds_day_cell(const std::optional<dates::Moment>& at, int horizon) {
  if (at) return Cells::date(at->date());
  return {fmt::format(say::later_than_days, horizon), Value(nullptr), Role::caution};
}

std::string day_text(const std::optional<dates::Moment>& at) {
  return at ? dates::short_day(at->date()) : "later";
}

// "Tue 1 Jun to Mon 7 Jun, 93 %"; a missing rank is no bound.
Cell interval_cell(const MomentQuantile& q) {
  const std::string low = q.ranks.low ? say::from_small + day_text(q.low) : say::no_lower_bound;
  const std::string high = q.ranks.high ? say::to_before + day_text(q.high) : say::no_upper_bound;
  return {fmt::format("{}, {} ({})", low, high, in_percent(q.ranks.coverage)),
          Value(q.ranks.coverage),
          Role::muted};
}

Cell bound_cell(const std::optional<std::int64_t>& rank, const std::optional<dates::Moment>& at) {
  if (!rank || !at) return Cells::nothing("");
  return {"", Value(dates::iso(at->date())), Role::muted};
}

void add_quantile(Table& table,
                  std::string_view event,
                  std::string_view how,
                  std::string_view name,
                  const MomentQuantile& q,
                  int horizon) {
  const bool is_start = event == "start";
  const bool foresight = how == "perfect foresight";
  table.rows.push_back({{Cells::coded(is_start ? say::start : say::full_again, std::string(event)),
                         Cells::coded(std::string(how), foresight ? "foresight" : "foreman"),
                         Cells::words(std::string(name)),
                         odds_day_cell(q.value, horizon),
                         interval_cell(q),
                         Cells::count(q.rank),
                         bound_cell(q.ranks.low, q.low),
                         bound_cell(q.ranks.high, q.high)}});
}

Table quantiles_table(const Odds& odds) {
  Table table;
  table.key = "quantiles";
  table.caption = fmt::format(say::replayed_years_those_not_finished_last, odds.years.size());
  table.columns = {{"event", say::what},
                   {"plan", say::planned_with},
                   {"quantile", say::odds},
                   {"date", say::by},
                   {"coverage", say::interval_of_90_percent_and_what_it_covers},
                   {"rank", "", Align::right, false},
                   {"low", "", Align::left, false},
                   {"high", "", Align::left, false}};
  const auto years = static_cast<std::int64_t>(odds.years.size());
  const auto add = [&](std::string_view event, std::string_view how, const auto& spread) {
    if (!spread) return;
    add_quantile(table, event, how, "P50", spread->p50, odds.horizon_days);
    add_quantile(table, event, how, "P80", spread->p80, odds.horizon_days);
    if (years >= job::least_years_for_p90)
      add_quantile(table, event, how, "P90", spread->p90, odds.horizon_days);
  };
  add("start", say::three_day_forecast, odds.start_foreman);
  add("refill", say::three_day_forecast, odds.refill_foreman);
  add("start", say::perfect_foresight, odds.start_foresight);
  add("refill", say::perfect_foresight, odds.refill_foresight);
  table.shown = !table.rows.empty();
  return table;
}

constexpr std::array<std::pair<std::string_view, std::string_view>, weather::all_rules.size()>
    rule_names{{{"air_min", say::air_too_cold},
                {"air_max", say::air_too_warm},
                {"shell_min", say::shell_too_cold},
                {"shell_max", say::shell_too_warm},
                {"dew_margin", say::too_close_to_the_dew_point},
                {"humidity", say::air_too_damp},
                {"rain", say::rain_while_painting_or_soon_after},
                {"dry_before", say::rain_shortly_before},
                {"wind", "wind"}}};

Table lost_table(const Odds& odds) {
  Table table;
  table.key = "lost";
  table.caption = say::painting_hours_lost_up_to_the_last;
  table.columns = {{"rule", say::cause}, {"hours", say::hours_a_year, Align::right}};
  for (std::size_t i = 0; i < odds.lost.size(); ++i) {
    if (odds.lost[i] <= units::Duration()) continue;
    const double hours = odds.lost[i].in(units::hours);
    table.rows.push_back(
        {{Cells::coded(std::string(rule_names[i].second), std::string(rule_names[i].first)),
          {units::fixed(hours, 1) + " h", Value(hours), Role::quantity}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

// How much later a foreman is than one who knew it all, at the same odds.
Cell gap_cell(const Odds& odds) {
  if (!odds.refill_foresight || !odds.refill_foreman) return Cells::nothing("");
  const auto& seer = odds.refill_foresight->p80.value;
  const auto& foreman = odds.refill_foreman->p80.value;
  if (!seer || !foreman) return Cells::nothing(say::unknown_not_finished_in_enough_years);
  const auto days = static_cast<std::int64_t>((foreman->date() - seer->date()).count());
  return {fmt::format("{} {}", days, days == 1 || days == -1 ? "day" : "days"),
          Value(days),
          Role::quantity};
}

Cell share_cell(const std::optional<odds::ReadyShare>& share) {
  if (!share) return Cells::nothing("");
  const double value = static_cast<double>(share->ready) / static_cast<double>(share->years);
  return {fmt::format(say::of_years_to_with_95_percent_confidence,
                      share->ready,
                      share->years,
                      in_percent(share->interval.low),
                      in_percent(share->interval.high)),
          Value(value),
          Role::plain};
}

Facts odds_facts(const Odds& odds) {
  const auto years = static_cast<std::int64_t>(odds.years.size());
  std::int64_t again = 0;
  std::int64_t missed = 0;
  std::int64_t unfinished = 0;
  for (const job::YearLine& line : odds.years) {
    again += line.foreman.etched_again > 0 ? 1 : 0;
    missed += line.foreman.window_missed ? 1 : 0;
    unfinished += line.foreman.refill_done ? 0 : 1;
  }
  Facts facts;
  facts.facts = {
      {"years", say::years_replayed, Cells::count(years)},
      {"horizon_days",
       say::looked_ahead,
       {fmt::format(say::days_from, odds.horizon_days, Cells::date(odds.start).text),
        Value(odds.horizon_days),
        Role::plain},
       odds.horizon_days > 0},
      {"gap_days", say::what_perfect_foresight_gains_at_p80, gap_cell(odds), years > 0},
      {"years_unfinished", say::years_not_finished_by_then, Cells::count(unfinished), years > 0},
      {"years_etched_again",
       say::years_in_which_the_etch_grew_too_old,
       Cells::count(again),
       again > 0},
      {"years_window_missed",
       say::years_in_which_a_recoat_window_went_by,
       {std::to_string(missed), Value(missed), Role::caution},
       missed > 0}};
  if (odds.promised) {
    facts.facts.push_back({"promised", say::promised, Cells::date(*odds.promised)});
    facts.facts.push_back({"ready", say::ready_by_then, share_cell(odds.ready_foreman)});
    facts.facts.push_back({"ready_foresight",
                           say::the_same_with_perfect_foresight,
                           share_cell(odds.ready_foresight)});
  }
  return facts;
}

}  // namespace

Section odds_section(const Subject&, const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = say::odds;
  section.blocks.emplace_back(odds_facts(odds));
  section.blocks.emplace_back(quantiles_table(odds));
  section.blocks.emplace_back(lost_table(odds));
  const auto say = [&](std::string text, Role role = Role::plain) {
    section.blocks.emplace_back(document::Paragraph{"", std::move(text), {}, role, true});
  };
  if (odds.years.empty()) {
    say(say::no_year_of_the_weather_given_covers, Role::stop);
    return section;
  }
  if (static_cast<std::int64_t>(odds.years.size()) < job::least_years_for_p90)
    say(say::p90_is_withheld_with_fewer_than_ten, Role::caution);
  say(say::perfect_foresight_is_optimistic_it);
  say(say::each_past_year_counts_alike_a_warming);
  return section;
}

Section years_section(const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = say::year_by_year;
  Table table;
  table.key = "by_year";
  table.columns = {{"year", say::year, Align::right},
                   {"start", say::start},
                   {"first_coat", say::first_coat},
                   {"refill_done", say::full_again},
                   {"refill_done_foresight", say::with_perfect_foresight}};
  const auto moment = [&](const std::optional<dates::Moment>& at) {
    return at ? Cells::moment(*at) : Cells::nothing(say::not_finished);
  };
  for (const job::YearLine& line : odds.years) {
    table.rows.push_back({{a_year(line.year),
                           moment(line.foreman.start),
                           moment(line.foreman.first_coat),
                           moment(line.foreman.refill_done),
                           moment(line.foresight.refill_done)}});
  }
  table.shown = !table.rows.empty();
  section.shown = table.shown || !odds.left_out.empty();
  section.blocks.emplace_back(std::move(table));
  section.blocks.emplace_back(left_out_table(odds.left_out));
  return section;
}

Table left_out_table(const std::vector<odds::LeftOut>& years) {
  Table table;
  table.key = "left_out";
  table.caption = say::left_out_more_than_2_percent_of_the;
  table.columns = {{"year", say::year, Align::right}, {"missing", say::missing, Align::right}};
  for (const odds::LeftOut& year : years) {
    table.rows.push_back(
        {{a_year(year.year), {in_percent(year.missing), Value(year.missing), Role::quantity}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

Section weeks_section(const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = say::start_weeks;
  Table table;
  table.key = "weeks";
  table.caption = say::with_perfect_foresight_the_week_with;
  table.columns = {{"start", say::start},
                   {"p50", say::p50_full},
                   {"p80", say::p80_full},
                   {"days_to_p80", say::days_to_p80, Align::right},
                   {"finished", say::finished, Align::right},
                   {"years", say::years, Align::right},
                   {"best", ""}};
  for (const job::WeekLine& week : odds.weeks) {
    const auto at = [&](bool p80) {
      if (!week.refill) return Cells::nothing(say::no_years);
      return odds_day_cell((p80 ? week.refill->p80 : week.refill->p50).value, odds.horizon_days);
    };
    table.rows.push_back({{Cells::date(week.start),
                           at(false),
                           at(true),
                           week.days_to_p80 ? Cells::count(*week.days_to_p80) : Cells::nothing("-"),
                           Cells::count(week.finished),
                           Cells::count(week.years),
                           {week.best ? "best" : "", Value(week.best), Role::good}}});
  }
  table.shown = !table.rows.empty();
  section.shown = table.shown;
  section.blocks.emplace_back(std::move(table));
  return section;
}

std::optional<Facts> aim_and_allow(const Subject& s) {
  if (s.odds == nullptr || s.odds->years.empty()) return {};
  const auto allow = s.odds->allow_for();
  const bool dated = s.plan.programme.feasible;
  Facts facts;
  facts.facts = {
      {"aim_for",
       say::full_again_aim_for,
       dated ? Cells::date(s.plan.programme.refill_done.date()) : Cells::nothing(say::no_dates)},
      {"allow_for",
       fmt::format(say::allow_for_met_in_8_of_10_of_past_years, s.odds->years.size()),
       odds_day_cell(allow, s.odds->horizon_days)}};
  return facts;
}

}  // namespace basinwright::report
