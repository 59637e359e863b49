#include "odds_parts.hpp"

#include <fmt/format.h>
#include <array>

#include "basinwright/units/unit.hpp"
#include "weather_words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Facts;
using document::Section;
using document::Table;
using job::MomentQuantile;
using job::Odds;

std::string percent(double share) {
  return units::fixed(share * 100.0, 0) + " %";
}

// A date, or that the year was not over inside the horizon.
Cell day_cell(const std::optional<dates::Moment>& at, int horizon) {
  if (at) return Cells::date(at->date());
  return {fmt::format("later than {} days", horizon), Value(nullptr), Role::caution};
}

std::string day_text(const std::optional<dates::Moment>& at) {
  return at ? dates::short_day(at->date()) : "later";
}

// "Tue 1 Jun to Mon 7 Jun, 93 %"; a missing rank is no bound.
Cell interval_cell(const MomentQuantile& q) {
  const std::string low = q.ranks.low ? "from " + day_text(q.low) : "no lower bound";
  const std::string high = q.ranks.high ? "to " + day_text(q.high) : "no upper bound";
  return {fmt::format("{}, {} ({})", low, high, percent(q.ranks.coverage)),
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
  table.rows.push_back({{Cells::coded(is_start ? "Start" : "Full again", std::string(event)),
                         Cells::coded(std::string(how), foresight ? "foresight" : "foreman"),
                         Cells::words(std::string(name)),
                         day_cell(q.value, horizon),
                         interval_cell(q),
                         Cells::count(q.rank),
                         bound_cell(q.ranks.low, q.low),
                         bound_cell(q.ranks.high, q.high)}});
}

Table quantiles_table(const Odds& odds) {
  Table table;
  table.key = "quantiles";
  table.caption = fmt::format("{} replayed years, those not finished last", odds.years.size());
  table.columns = {{"event", "What"},
                   {"plan", "Planned with"},
                   {"quantile", "Odds"},
                   {"date", "By"},
                   {"coverage", "90 % interval (what it covers)"},
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
  add("start", "three-day forecast", odds.start_foreman);
  add("refill", "three-day forecast", odds.refill_foreman);
  add("start", "perfect foresight", odds.start_foresight);
  add("refill", "perfect foresight", odds.refill_foresight);
  table.shown = !table.rows.empty();
  return table;
}

constexpr std::array<std::pair<std::string_view, std::string_view>, weather::all_rules.size()>
    rule_names{{{"air_min", "air too cold"},
                {"air_max", "air too warm"},
                {"shell_min", "shell too cold"},
                {"shell_max", "shell too warm"},
                {"dew_margin", "too close to the dew point"},
                {"humidity", "air too damp"},
                {"rain", "rain while painting or soon after"},
                {"dry_before", "rain shortly before"},
                {"wind", "wind"}}};

Table lost_table(const Odds& odds) {
  Table table;
  table.key = "lost";
  table.caption =
      "Painting hours lost up to the last coat, mean of a year, by what closed them first";
  table.columns = {{"rule", "Cause"}, {"hours", "Hours a year", Align::right}};
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
  if (!seer || !foreman) return Cells::nothing("unknown: not finished in enough years");
  const auto days = static_cast<std::int64_t>((foreman->date() - seer->date()).count());
  return {fmt::format("{} {}", days, days == 1 || days == -1 ? "day" : "days"),
          Value(days),
          Role::quantity};
}

Cell share_cell(const std::optional<odds::ReadyShare>& share) {
  if (!share) return Cells::nothing("");
  const double value = static_cast<double>(share->ready) / static_cast<double>(share->years);
  return {fmt::format("{} of {} years; {} to {} with 95 % confidence",
                      share->ready,
                      share->years,
                      percent(share->interval.low),
                      percent(share->interval.high)),
          Value(value),
          Role::plain};
}

Facts facts_of(const Odds& odds) {
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
      {"years", "Years replayed", Cells::count(years)},
      {"horizon_days",
       "Looked ahead",
       {fmt::format("{} days from {}", odds.horizon_days, Cells::date(odds.start).text),
        Value(odds.horizon_days),
        Role::plain},
       odds.horizon_days > 0},
      {"gap_days", "What perfect foresight gains at P80", gap_cell(odds), years > 0},
      {"years_unfinished", "Years not finished by then", Cells::count(unfinished), years > 0},
      {"years_etched_again",
       "Years in which the etch grew too old and was done again",
       Cells::count(again),
       again > 0},
      {"years_window_missed",
       "Years in which a recoat window went by (hold point)",
       {std::to_string(missed), Value(missed), Role::caution},
       missed > 0}};
  if (odds.promised) {
    facts.facts.push_back({"promised", "Promised", Cells::date(*odds.promised)});
    facts.facts.push_back({"ready", "Ready by then", share_cell(odds.ready_foreman)});
    facts.facts.push_back(
        {"ready_foresight", "The same with perfect foresight", share_cell(odds.ready_foresight)});
  }
  return facts;
}

}  // namespace

Section odds_section(const Subject&, const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = "Odds";
  section.blocks.emplace_back(facts_of(odds));
  section.blocks.emplace_back(quantiles_table(odds));
  section.blocks.emplace_back(lost_table(odds));
  const auto say = [&](std::string text, Role role = Role::plain) {
    section.blocks.emplace_back(document::Paragraph{"", std::move(text), {}, role, true});
  };
  if (odds.years.empty()) {
    say("No year of the weather given covers the days of this job.", Role::stop);
    return section;
  }
  if (static_cast<std::int64_t>(odds.years.size()) < job::least_years_for_p90)
    say("P90 is withheld: with fewer than ten years it would be one year's luck.", Role::caution);
  say("Perfect foresight is optimistic: it knows every shower weeks ahead. The other replay plans "
      "each morning with a forecast that is right for three days and with what was usual beyond, "
      "as "
      "a foreman would; its P80 is the date to allow for.");
  say("Each past year counts alike: a warming climate, the distance of the station and hours made "
      "from days are not in these odds.");
  return section;
}

Section years_section(const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = "Year by year";
  Table table;
  table.key = "by_year";
  table.columns = {{"year", "Year", Align::right},
                   {"start", "Start"},
                   {"first_coat", "First coat"},
                   {"refill_done", "Full again"},
                   {"refill_done_foresight", "With perfect foresight"}};
  const auto moment = [&](const std::optional<dates::Moment>& at) {
    return at ? Cells::moment(*at) : Cells::nothing("not finished");
  };
  for (const job::YearLine& line : odds.years) {
    table.rows.push_back({{Cells::count(line.year),
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
  table.caption = "Left out: more than 2 % of the hours have no air or no rain";
  table.columns = {{"year", "Year", Align::right}, {"missing", "Missing", Align::right}};
  for (const odds::LeftOut& year : years) {
    table.rows.push_back(
        {{Cells::count(year.year), {percent(year.missing), Value(year.missing), Role::quantity}}});
  }
  table.shown = !table.rows.empty();
  return table;
}

Section weeks_section(const Odds& odds) {
  Section section;
  section.key = "odds";
  section.title = "Start weeks";
  Table table;
  table.key = "weeks";
  table.caption = "With perfect foresight; the week with the fewest days to P80 is the best";
  table.columns = {{"start", "Start"},
                   {"p50", "P50 full"},
                   {"p80", "P80 full"},
                   {"days_to_p80", "Days to P80", Align::right},
                   {"finished", "Finished", Align::right},
                   {"years", "Years", Align::right},
                   {"best", ""}};
  for (const job::WeekLine& week : odds.weeks) {
    const auto at = [&](bool p80) {
      if (!week.refill) return Cells::nothing("no years");
      return day_cell((p80 ? week.refill->p80 : week.refill->p50).value, odds.horizon_days);
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
       "Full again, aim for",
       dated ? Cells::date(s.plan.programme.refill_done.date()) : Cells::nothing("no dates")},
      {"allow_for",
       fmt::format("Allow for (met in 8 of 10 of {} past years)", s.odds->years.size()),
       day_cell(allow, s.odds->horizon_days)}};
  return facts;
}

}  // namespace basinwright::report
