#include "season_troubles.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "wording/common.hpp"
#include "wording/season.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Paragraph;
using document::Section;
using document::Table;
using job::SeasonHelp;
using job::SeasonLine;

std::string_view help_code(SeasonHelp::How how) {
  switch (how) {
    case SeasonHelp::How::painter:
      return "painter";
    case SeasonHelp::How::painter_week:
      return "painter-week";
    case SeasonHelp::How::swap:
      return "swap";
    case SeasonHelp::How::saturdays:
      return "saturdays";
    case SeasonHelp::How::first:
      return "first";
    case SeasonHelp::How::materials:
      return "materials";
    case SeasonHelp::How::not_before:
      return "not-before";
  }
  return "";
}

class Troubles {
 public:
  explicit Troubles(const SeasonSubject& s)
      : s_(s), cells_(s.first.units, s.first.rates.currency) {}

  // As `replan` has it: a hold point, then abrade and clean.
  [[nodiscard]] Section lost() const {
    Section section{"lost", say::lost_on_site_and_what_makes_it_good, {}, false};
    Table table{"", "", {}, {}};
    table.columns = {{"job", say::job},
                     {"section", say::section},
                     {"task", say::what_is_done},
                     {"advised", say::the_makers_advice}};
    std::string waiting;
    for (std::size_t j = 0; j < lines().size(); ++j) {
      const SeasonLine& line = lines()[j];
      const std::string_view advice = line.waits_for_advice ? say::hold_point_not_there : "there";
      for (const std::string& where : line.abraded)
        add_lost(j, where, "rework", {std::string(advice), Value(!line.waits_for_advice)}, table);
      if (line.cleaned_again)
        add_lost(j, "", "clean-again", Cells::nothing(say::not_needed), table);
      if (line.waits_for_advice) waiting += (waiting.empty() ? "" : ", ") + name(j);
    }
    section.shown = !table.rows.empty();
    table.columns[1].shown = std::ranges::any_of(lines(), [](const SeasonLine& l) {
      return std::ranges::any_of(l.abraded,
                                 [](const std::string& where) { return !where.empty(); });
    });
    if (!waiting.empty())
      section.blocks.emplace_back(Paragraph{"",
                                            say::hold_point_makers_advice_of_the_season + waiting +
                                                say::record_it_in_the_jobs_log_hold,
                                            {},
                                            Role::stop});
    section.blocks.emplace_back(std::move(table));
    return section;
  }

  [[nodiscard]] Section late() const {
    Table table{"", "", {}, {}};
    table.columns = {{"job", say::job},
                     {"late", say::late_now, Align::right, false},
                     {"help", say::what_would_help},
                     {"days_late", say::late_with_it, Align::right},
                     {"season_late", say::all_with_it, Align::right},
                     {"pay", say::later_for_it},
                     {"cost", say::season_wages, Align::right}};
    for (std::size_t j = 0; j < lines().size(); ++j) {
      const SeasonLine& line = lines()[j];
      if (line.days_late == 0) continue;
      if (line.helps.empty())
        table.rows.push_back({{Cells::words(name(j)),
                               Cells::count(line.days_late),
                               line.looked_at ? Cells::coded(say::nothing_that_was_tried, "none")
                                              : Cells::coded(say::not_looked_at_only_the_latest_are,
                                                             "not-looked-at"),
                               Cells::nothing(""),
                               Cells::nothing(""),
                               Cells::nothing(""),
                               Cells::nothing("")}});
      for (const SeasonHelp& help : line.helps) {
        table.rows.push_back({{Cells::words(name(j)),
                               Cells::count(line.days_late),
                               Cells::coded(help_words(j, help), std::string(help_code(help.how))),
                               Cells::count(help.days_late),
                               Cells::count(help.season_late),
                               Cells::words(late_for_it(help)),
                               help.cost ? cells_.money(*help.cost) : Cells::nothing("")}});
      }
    }
    const auto any = [&](auto has) {
      return std::ranges::any_of(
          lines(), [&](const SeasonLine& l) { return std::ranges::any_of(l.helps, has); });
    };
    table.columns[5].shown = any([](const SeasonHelp& help) { return !help.pay.empty(); });
    const bool paid = table.columns[6].shown =
        any([](const SeasonHelp& help) { return help.cost.has_value(); });
    Section section{"late", say::promises_that_cannot_be_kept_and_what, {}, !table.rows.empty()};
    section.blocks.emplace_back(std::move(table));
    section.blocks.emplace_back(
        Paragraph{"",
                  std::string(say::each_was_found_by_booking_again_with) +
                      (paid ? say::wages_of_the_painter_by_the_rate_book : ""),
                  {},
                  Role::muted});
    return section;
  }

 private:
  [[nodiscard]] const std::vector<SeasonLine>& lines() const { return s_.season.lines; }
  [[nodiscard]] const std::string& name(std::size_t j) const { return s_.question.jobs[j].name; }

  void add_lost(std::size_t j,
                const std::string& where,
                const std::string& code,
                Cell advice,
                Table& table) const {
    table.rows.push_back({{Cells::words(name(j)),
                           where.empty() ? Cells::nothing("") : Cells::words(where),
                           Cells::coded(task(code), code),
                           std::move(advice)}});
  }

  [[nodiscard]] std::string help_words(std::size_t j, const SeasonHelp& help) const {
    const std::string from = dates::short_day(help.from);
    const std::string to = dates::short_day(help.to);
    switch (help.how) {
      case SeasonHelp::How::painter:
        return fmt::format(say::one_more_painter_on_it_to, from, to);
      case SeasonHelp::How::painter_week:
        return fmt::format(
            say::one_more_painter_for_to, s_.question.crews[lines()[j].crew].name, from, to);
      case SeasonHelp::How::saturdays:
        return say::saturdays_worked_on_it;
      case SeasonHelp::How::materials:
        return fmt::format(say::kits_ordered_earlier_on_the_yard_by, from);
      case SeasonHelp::How::not_before:
        return fmt::format(say::begun_before, season_day(s_, *s_.question.jobs[j].not_before).text);
      case SeasonHelp::How::swap:
        return swap_words(j, *help.other);
      case SeasonHelp::How::first:
        break;
    }
    return say::put_before_the_others;
  }

  [[nodiscard]] std::string swap_words(std::size_t j, std::size_t other) const {
    const std::size_t its = lines()[other].crew;
    const std::string words = say::places_swapped_with + name(other);
    return its == lines()[j].crew ? words : words + say::on_crew + s_.question.crews[its].name;
  }

  [[nodiscard]] std::string late_for_it(const SeasonHelp& help) const {
    std::string pay;
    for (const std::size_t other : help.pay) pay += (pay.empty() ? "" : ", ") + name(other);
    return pay;
  }

  const SeasonSubject& s_;
  Cells cells_;
};

}  // namespace

Cell season_day(const SeasonSubject& s, dates::Date date) {
  Cell cell = Cells::date(date);
  if (dates::year(date) == dates::year(s.season.start)) cell.text = dates::short_day(date);
  return cell;
}

document::Section season_lost(const SeasonSubject& s) {
  return Troubles(s).lost();
}

document::Section season_late(const SeasonSubject& s) {
  return Troubles(s).late();
}

}  // namespace basinwright::report
