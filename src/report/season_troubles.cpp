#include "season_troubles.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Align;
using document::Paragraph;
using document::Section;
using document::Table;
using job::SeasonHelp;
using job::SeasonLine;

std::string_view code_of(SeasonHelp::How how) {
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
    Section section{"lost", "Lost on site, and what makes it good", {}, false};
    Table table{"", "", {}, {}};
    table.columns = {{"job", "Job"},
                     {"section", "Section"},
                     {"task", "What is done"},
                     {"advised", "The maker's advice"}};
    std::string waiting;
    for (std::size_t j = 0; j < lines().size(); ++j) {
      const SeasonLine& line = lines()[j];
      const std::string_view advice = line.waits_for_advice ? "HOLD POINT: not there" : "there";
      for (const std::string& where : line.abraded)
        add_lost(j, where, "rework", {std::string(advice), Value(!line.waits_for_advice)}, table);
      if (line.cleaned_again) add_lost(j, "", "clean-again", Cells::nothing("not needed"), table);
      if (line.waits_for_advice) waiting += (waiting.empty() ? "" : ", ") + name(j);
    }
    section.shown = !table.rows.empty();
    table.columns[1].shown = std::ranges::any_of(lines(), [](const SeasonLine& l) {
      return std::ranges::any_of(l.abraded,
                                 [](const std::string& where) { return !where.empty(); });
    });
    if (!waiting.empty())
      section.blocks.emplace_back(Paragraph{
          "",
          "HOLD POINT (makers-advice): the coating maker's advice in writing before anything is "
          "put on a coat whose recoat window is lost. Provisional until then, as abrade and "
          "clean: " +
              waiting + ". Record it in the job's log: hold_released hold=makers-advice by=NAME.",
          {},
          Role::stop});
    section.blocks.emplace_back(std::move(table));
    return section;
  }

  [[nodiscard]] Section late() const {
    Table table{"", "", {}, {}};
    table.columns = {{"job", "Job"},
                     {"late", "Late now", Align::right, false},
                     {"help", "What would help"},
                     {"days_late", "Late with it", Align::right},
                     {"season_late", "All with it", Align::right},
                     {"pay", "Later for it"},
                     {"cost", "Wages", Align::right}};
    for (std::size_t j = 0; j < lines().size(); ++j) {
      const SeasonLine& line = lines()[j];
      if (line.days_late == 0) continue;
      if (line.helps.empty())
        table.rows.push_back(
            {{Cells::words(name(j)),
              Cells::count(line.days_late),
              line.looked_at ? Cells::coded("Nothing that was tried", "none")
                             : Cells::coded("Not looked at: only the latest are", "not-looked-at"),
              Cells::nothing(""),
              Cells::nothing(""),
              Cells::nothing(""),
              Cells::nothing("")}});
      for (const SeasonHelp& help : line.helps) {
        table.rows.push_back({{Cells::words(name(j)),
                               Cells::count(line.days_late),
                               Cells::coded(help_words(j, help), std::string(code_of(help.how))),
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
    Section section{
        "late", "Promises that cannot be kept, and what would help", {}, !table.rows.empty()};
    section.blocks.emplace_back(std::move(table));
    section.blocks.emplace_back(Paragraph{
        "",
        std::string("Each was found by booking again with it. Days late; all: of every job, times "
                    "its priority.") +
            (paid ? " Wages: of the painter, by the rate book, for the days named." : ""),
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
        return fmt::format("One more painter on it, {} to {}", from, to);
      case SeasonHelp::How::painter_week:
        return fmt::format(
            "One more painter for {}, {} to {}", s_.question.crews[lines()[j].crew].name, from, to);
      case SeasonHelp::How::saturdays:
        return "Saturdays worked on it";
      case SeasonHelp::How::materials:
        return fmt::format("Kits ordered earlier: on the yard by {}", from);
      case SeasonHelp::How::not_before:
        return fmt::format("Begun before {}", season_day(s_, *s_.question.jobs[j].not_before).text);
      case SeasonHelp::How::swap:
        return swap_words(j, *help.other);
      case SeasonHelp::How::first:
        break;
    }
    return "Put before the others";
  }

  [[nodiscard]] std::string swap_words(std::size_t j, std::size_t other) const {
    const std::size_t its = lines()[other].crew;
    const std::string words = "Places swapped with " + name(other);
    return its == lines()[j].crew ? words : words + ", on " + s_.question.crews[its].name;
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
