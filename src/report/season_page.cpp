#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "basinwright/report/season.hpp"
#include "odds_parts.hpp"
#include "season_chart.hpp"
#include "season_troubles.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/season.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Fact;
using document::Facts;
using document::Paragraph;
using document::Row;
using document::Section;
using document::Table;
using job::SeasonLine;

std::string counted(std::size_t n, std::string_view what) {
  return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

std::string days(std::int64_t n) {
  return counted(static_cast<std::size_t>(n), "day");
}

class SeasonPage {
 public:
  explicit SeasonPage(const SeasonSubject& s)
      : s_(s), cells_(s.first.units, s.first.rates.currency) {}

  document::Document made() {
    document::Document d;
    d.title = say::season;
    d.subtitle = fmt::format(say::jobs_crews_from,
                             counted(lines().size(), "job"),
                             counted(s_.question.crews.size(), "crew"),
                             Cells::date(s_.season.start).text);
    d.notices = {say::the_season_rests_on + weather_basis(s_.first).text + ".",
                 say::a_crew_is_at_one_site_at_a_time_and,
                 say::dates_are_a_plan_not_a_promise_data};
    add_free_crews(d.notices);
    d.sections = {version_section(),
                  measure(),
                  jobs(),
                  past(),
                  season_lost(s_),
                  season_late(s_),
                  crew_days(),
                  defaults()};
    Section chart{"", say::chart, {season_drawing(s_)}, true};
    chart.own_page = true;
    d.sections.push_back(std::move(chart));
    d.bottom_line = bottom_line();
    d.agenda = agenda();
    return d;
  }

 private:
  [[nodiscard]] const std::vector<SeasonLine>& lines() const { return s_.season.lines; }
  [[nodiscard]] const std::string& name(std::size_t j) const { return s_.question.jobs[j].name; }

  [[nodiscard]] Cell first_day(const SeasonLine& line) const {
    if (!line.booked) return Cells::nothing("");
    Cell cell = season_day(s_, line.first_day);
    if (line.begun) cell.text += say::begun_after;
    return cell;
  }

  // Nobody wrote down whose people are there.
  void add_free_crews(std::vector<std::string>& notices) const {
    std::string names;
    for (std::size_t j = 0; j < lines().size(); ++j) {
      const job::SeasonJob& q = s_.question.jobs[j];
      if (q.past && !q.crew && s_.question.crews.size() > 1)
        names += (names.empty() ? "" : ", ") + q.name;
    }
    if (names.empty()) return;
    notices.push_back(say::begun_and_the_crews_file_does_not_say + names +
                      say::any_crew_may_go_on_with_it_here_bind);
  }

  // What the proof says: the first part in which value and bound differ is what is open.
  [[nodiscard]] std::string proof() const {
    const season::Value& v = s_.season.value;
    const season::Value& b = s_.season.bound;
    if (s_.season.optimal) return say::proven_no_season_of_these_jobs_on;
    if (v.unbooked != b.unbooked)
      return fmt::format(say::not_proven_jobs_have_no_dates_at_least, v.unbooked, b.unbooked);
    if (v.late != b.late)
      return fmt::format(
          say::not_proven_the_best_no_season_has, days(b.late), v.late, days(v.late - b.late));
    if (v.refill != b.refill)
      return fmt::format(say::proven_that_no_season_is_less_late_not,
                         days(b.refill),
                         v.refill,
                         days(v.refill - b.refill),
                         static_cast<double>(v.refill - b.refill) /
                             static_cast<double>(std::max<std::size_t>(1, lines().size())));
    return say::proven_in_lateness_and_refill_dates;
  }

  [[nodiscard]] Section measure() const {
    const season::Value& v = s_.season.value;
    const season::Value& b = s_.season.bound;
    Facts facts;
    const auto add = [&](std::string key, std::string label, Cell cell, bool shown = true) {
      facts.facts.push_back({std::move(key), std::move(label), std::move(cell), shown});
    };
    add("first_day", say::first_day, Cells::date(s_.season.start));
    add("late_days", say::late_days_times_priority, Cells::count(v.late));
    add("unbooked", say::jobs_without_dates, Cells::count(v.unbooked), v.unbooked > 0);
    add("refill_days", say::refill_dates_days_after_the_first_day, Cells::count(v.refill));
    add("crew_cost",
        say::crews_hours_before + std::string(s_.first.rates.currency.name()),
        cells_.money(money::Money::of_minor(v.cost)));
    add("optimal",
        say::proven_the_best,
        {s_.season.optimal ? "yes" : "no", Value(s_.season.optimal)});
    add("bound.late_days", "", Cells::count(b.late), false);
    add("bound.unbooked", "", Cells::count(b.unbooked), false);
    add("bound.refill_days", "", Cells::count(b.refill), false);
    add("bound.crew_cost", "", cells_.money(money::Money::of_minor(b.cost)), false);
    Section section{"season", say::how_good_it_is, {std::move(facts)}, true};
    section.blocks.emplace_back(Paragraph{"proof", proof(), Value(proof())});
    return section;
  }

  [[nodiscard]] Cell lateness(std::size_t j) const {
    const SeasonLine& line = lines()[j];
    const auto& promised = s_.question.jobs[j].promised;
    if (!line.booked || !promised) return Cells::nothing("");
    if (line.days_late > 0)
      return {days(line.days_late) + say::late, Value(line.days_late), Role::stop};
    return {
        days((*promised - line.full).count()) + say::in_hand, Value(line.days_late), Role::good};
  }

  [[nodiscard]] static std::string why_not(const std::string& code) {
    if (code == "stopped") return say::must_stop_see_its_job_sheet;
    if (code == "filled") return say::filled_already;
    return say::no_dates_see_its_job_sheet;
  }

  [[nodiscard]] Section jobs() const {
    Table table{"", "", {}, {}};
    table.columns = {{"job", say::job},
                     {"crew", say::crew},
                     {"first_day", say::first_day},
                     {"full", say::full},
                     {"promised", say::promised},
                     {"days_late", say::promise},
                     {"priority", say::priority, Align::right}};
    const bool years =
        std::ranges::any_of(lines(), [](const SeasonLine& l) { return l.ready.has_value(); });
    if (years) {
      table.columns.push_back({"years_kept", say::kept_in, Align::right});
      table.columns.push_back({"years", "", Align::right, false});
    }
    for (const std::size_t j : by_first_day()) table.rows.push_back(job_row(j, years));
    Section section{"jobs", say::jobs, {std::move(table)}, true};
    if (years)
      section.blocks.emplace_back(
          Paragraph{"", say::kept_in_past_years_in_which_the_pool, {}, Role::muted});
    return section;
  }

  [[nodiscard]] Section past() const {
    Table table = left_out_table(s_.season.left_out);
    const bool shown = table.shown;
    table.key.clear();
    return {"left_out", say::past_years, {std::move(table)}, shown};
  }

  [[nodiscard]] Row job_row(std::size_t j, bool years) const {
    const SeasonLine& line = lines()[j];
    const auto& q = s_.question.jobs[j];
    Row row;
    row.cells = {Cells::words(q.name),
                 line.booked ? Cells::words(s_.question.crews[line.crew].name)
                             : Cells::coded(why_not(line.why_not), line.why_not),
                 first_day(line),
                 full(line),
                 q.promised ? season_day(s_, *q.promised) : Cells::nothing(say::none),
                 lateness(j),
                 Cells::count(q.priority)};
    if (years) {
      row.cells.push_back(
          line.ready ? Cell{fmt::format(say::of_years, line.ready->ready, line.ready->years),
                            Value(line.ready->ready),
                            Role::quantity}
                     : Cells::nothing(""));
      row.cells.push_back(line.ready ? Cells::count(line.ready->years) : Cells::nothing(""));
    }
    return row;
  }

  [[nodiscard]] Cell full(const SeasonLine& line) const {
    if (!line.booked) return Cells::nothing("");
    Cell cell = season_day(s_, line.full);
    if (line.waits_for_advice) cell.text += say::and_provisional;
    return cell;
  }

  [[nodiscard]] std::vector<std::size_t> by_first_day() const {
    std::vector<std::size_t> order(lines().size());
    for (std::size_t j = 0; j < order.size(); ++j) order[j] = j;
    std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
      return std::pair(!lines()[a].booked, lines()[a].first_day) <
             std::pair(!lines()[b].booked, lines()[b].first_day);
    });
    return order;
  }

  // What the crew does at a job on a day.
  [[nodiscard]] std::string work_on(const SeasonLine& line, const job::SeasonStay& stay) const {
    std::string words;
    for (const job::SeasonTask& task_done : line.tasks) {
      const bool there = task_done.attended
                             ? task_done.start < stay.to && stay.from < task_done.end
                             : stay.from <= task_done.start && task_done.start < stay.to;
      if (!there || task_done.task == "cure") continue;
      std::string one = task(task_done.task);
      if (!task_done.section.empty()) one += " " + task_done.section;
      words += (words.empty() ? "" : "; ") + one;
    }
    return words;
  }

  struct Visit {
    std::size_t job = 0;
    const job::SeasonStay* stay = nullptr;
  };
  [[nodiscard]] std::vector<Visit> visits_of(std::size_t crew) const {
    std::vector<Visit> visits;
    for (std::size_t j = 0; j < lines().size(); ++j) {
      if (!lines()[j].booked || lines()[j].crew != crew) continue;
      for (const job::SeasonStay& stay : lines()[j].stays) visits.push_back({j, &stay});
    }
    std::ranges::stable_sort(visits, {}, [](const Visit& v) { return v.stay->from; });
    return visits;
  }

  [[nodiscard]] Section crew_days() const {
    constexpr std::size_t most_listed = 20;
    Table table{"", "", {}, {}};
    table.columns = {{"crew", say::crew},
                     {"from", say::from},
                     {"to", say::to},
                     {"job", say::job},
                     {"work", say::work}};
    for (std::size_t c = 0; c < s_.question.crews.size(); ++c) {
      for (const Visit& v : visits_of(c)) {
        Cell to = Cells::moment(v.stay->to);
        to.text = dates::clock(v.stay->to);
        table.rows.push_back({{Cells::words(s_.question.crews[c].name),
                               Cells::moment(v.stay->from),
                               std::move(to),
                               Cells::words(name(v.job)),
                               Cells::words(work_on(lines()[v.job], *v.stay))}});
      }
    }
    Section section{
        "days", say::crews_day_by_day, {std::move(table)}, lines().size() <= most_listed};
    section.own_page = true;
    return section;
  }

  [[nodiscard]] Section defaults() const {
    Facts facts;
    const auto& travel = s_.question.travel;
    const bool assumed = travel.source.kind != sources::Kind::given;
    facts.facts.push_back({"travel_h",
                           say::between_two_sites,
                           {cells_.hours(travel.value).text + (assumed ? say::assumed : ""),
                            Value(travel.value.in(units::hours)),
                            assumed ? Role::assumed : Role::plain}});
    return {"rests_on", say::what_it_rests_on, {std::move(facts)}, true};
  }

  [[nodiscard]] Cell bottom_line() const {
    const auto late =
        std::ranges::count_if(lines(), [](const SeasonLine& l) { return l.days_late > 0; });
    const season::Value& v = s_.season.value;
    std::string text = late == 0 ? say::every_promise_can_be_kept
                                 : fmt::format(say::of_jobs_late, late, lines().size());
    if (v.unbooked > 0) text += fmt::format(say::without_dates, v.unbooked);
    const bool held =
        std::ranges::any_of(lines(), [](const SeasonLine& l) { return l.waits_for_advice; });
    if (held) text += say::a_lost_recoat_window_waits_for_the;
    text += s_.season.optimal ? say::proven_the_best_season : say::not_proven_the_best_see_the_gap;
    return {text, {}, late == 0 && v.unbooked == 0 && !held ? Role::total : Role::stop};
  }

  [[nodiscard]] static std::string word(std::string_view text) {
    std::string out;
    for (const char ch : text) {
      const auto byte = static_cast<unsigned char>(ch);
      const bool plain = byte < 0x80 && std::isalnum(byte) != 0;
      out += plain ? std::string(1, ch) : fmt::format("%{:02X}", byte);
    }
    return out;
  }

  [[nodiscard]] static std::string hold(const SeasonLine& line) {
    if (!line.waits_for_advice) return "";
    return say::provisional_nothing_is_put_on_the_coat;
  }

  [[nodiscard]] document::Agenda agenda() const {
    document::Agenda agenda;
    agenda.stamp = dates::iso(s_.first.today.value_or(s_.season.start));
    for (std::size_t c = 0; c < s_.question.crews.size(); ++c) {
      if (s_.crew && *s_.crew != c) continue;
      for (const Visit& v : visits_of(c)) {
        const std::string work = work_on(lines()[v.job], *v.stay);
        agenda.entries.push_back({document::EntryKind::work,
                                  fmt::format("season-{}-{}-{}@basinwright.invalid",
                                              word(s_.question.crews[c].name),
                                              word(name(v.job)),
                                              dates::iso(v.stay->date)),
                                  fmt::format("{} \u00b7 {}", name(v.job), work),
                                  s_.question.crews[c].name + hold(lines()[v.job]),
                                  s_.question.jobs[v.job].job->heading.client.address,
                                  dates::iso(v.stay->from),
                                  dates::iso(v.stay->to)});
      }
    }
    return agenda;
  }

  const SeasonSubject& s_;
  Cells cells_;
};

}  // namespace

document::Document season(const SeasonSubject& s) {
  return SeasonPage(s).made();
}

}  // namespace basinwright::report
