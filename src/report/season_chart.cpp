#include "season_chart.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "chart_sheet.hpp"
#include "chart_strip.hpp"
#include "drawing_sheet.hpp"
#include "sections.hpp"
#include "wording/common.hpp"
#include "wording/season.hpp"

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Fill;
using job::SeasonLine;

/// Jobs of one row.
struct ChartRow {
  std::string name;
  std::vector<std::size_t> jobs;
  bool first_of_crew = false;
};

std::vector<ChartRow> rows_of(const SeasonSubject& s) {
  constexpr std::size_t most_rows = 45;
  const auto& lines = s.season.lines;
  const bool by_job = lines.size() <= most_rows;
  std::vector<ChartRow> rows;
  for (std::size_t c = 0; c < s.question.crews.size(); ++c) {
    std::vector<std::size_t> jobs;
    for (std::size_t j = 0; j < lines.size(); ++j) {
      if (lines[j].booked && lines[j].crew == c) jobs.push_back(j);
    }
    std::ranges::stable_sort(jobs, {}, [&](std::size_t j) { return lines[j].first_day; });
    if (!by_job) {
      rows.push_back({s.question.crews[c].name, jobs, true});
      continue;
    }
    bool first = true;
    for (const std::size_t j : jobs) {
      rows.push_back({s.question.crews[c].name + ": " + s.question.jobs[j].name,
                      {j},
                      std::exchange(first, false)});
    }
  }
  return rows;
}

class SeasonChart {
 public:
  SeasonChart(ChartSheet& sheet, const SeasonSubject& s) : sheet_(sheet), s_(s) {}

  void head() {
    const Box& c = sheet_.content();
    sheet_.write(say::season, {c.left, c.top + 4.0}, letters::title, Anchor::start, true);
    const std::string rests = say::these_dates_rest_on_before + weather_basis(s_.first).text + ".";
    sheet_.write(fitted(rests, letters::text, c.width()), {c.left, c.top + 9.0}, letters::text);
  }

  // Mondays by name; every other one where weeks are narrow.
  void weeks(Extent down) {
    const auto& days = *s_.first.strip;
    const double week = 7.0 * sheet_.day_width();
    const std::string longest = say::mon_30_sep;
    const auto every =
        static_cast<std::size_t>(1.0 + text_width(longest, letters::small) / std::max(1.0, week));
    std::size_t count = 0;
    for (std::size_t d = 0; d < days.size(); ++d) {
      const double x = sheet_.at(d, 0.0);
      if (!days[d].works) sheet_.box({x, sheet_.at(d, 24.0)}, down, Fill::dots, "closed-day");
      if (dates::weekday(days[d].date) != 0) continue;
      sheet_.line({x, down.from - 3.0}, {x, down.to}, {0.13}, "week");
      if (count++ % every == 0)
        sheet_.write(dates::short_day(days[d].date),
                     {x + 0.6, down.from - 1.0},
                     letters::small,
                     Anchor::start);
    }
  }

  void bars(double top, double bottom) {
    constexpr double most = 7.0;
    const auto rows = rows_of(s_);
    const double height =
        std::min(most, (bottom - top) / static_cast<double>(std::max<std::size_t>(1, rows.size())));
    double y = top;
    for (const ChartRow& row : rows) {
      draw(row, {y, y + height});
      y += height;
    }
    weeks({top, y});
  }

  void key(double y) {
    double x = sheet_.content().left;
    const auto entry = [&](Fill fill, const std::string& words) {
      constexpr double swatch = 6.0;
      outlined({x, x + swatch}, {y - 2.2, y}, fill, "key");
      sheet_.write(words, {x + swatch + 1.5, y}, letters::small);
      x += swatch + 6.0 + text_width(words, letters::small);
    };
    entry(Fill::ink, say::the_crew_is_there);
    entry(Fill::rising, say::until_the_pool_is_full);
    entry(Fill::crossed, say::late_after_the_promised_day);
    entry(Fill::dots, say::nobody_works_that_day);
    constexpr double mark = 3.0;
    sheet_.line({x, y - mark}, {x, y + 0.8}, {0.5}, "key");
    sheet_.write(say::the_promised_day, {x + 2.0, y}, letters::small);
  }

 private:
  void outlined(Extent across, Extent down, Fill fill, std::string_view name) {
    sheet_.box(across, down, fill, name);
    for (const double x : {across.from, across.to})
      sheet_.line({x, down.from}, {x, down.to}, pens::fine, name);
    for (const double y : {down.from, down.to})
      sheet_.line({across.from, y}, {across.to, y}, pens::fine, name);
  }

  void draw(const ChartRow& row, Extent down) {
    const double size = std::min(letters::label, 0.62 * (down.to - down.from));
    const double base = down.from + 0.68 * (down.to - down.from);
    const double thick = row.first_of_crew ? 0.25 : 0.05;
    const double right = sheet_.content().right;
    sheet_.line({sheet_.content().left, down.from}, {right, down.from}, {thick}, "row");
    const double room = sheet_.left() - sheet_.content().left - 1.0;
    sheet_.write(fitted(row.name, size, room), {sheet_.content().left, base}, size);
    for (const std::size_t j : row.jobs) draw(j, down);
  }

  void draw(std::size_t j, Extent row) {
    constexpr double least = 0.5;
    constexpr std::chrono::days one{1};
    const SeasonLine& line = s_.season.lines[j];
    const double inset = 0.2 * (row.to - row.from);
    const Extent down{row.from + inset, row.to - inset};
    const double full = sheet_.at(dates::Moment(line.full + one, 0));
    outlined({sheet_.at(line.stays.front().from), full}, down, Fill::rising, "job");
    const auto& promised = s_.question.jobs[j].promised;
    if (promised && line.days_late > 0) {
      const dates::Date from = std::max(*promised + one, s_.first.strip->front().date);
      outlined({sheet_.at(dates::Moment(from, 0)), full}, down, Fill::crossed, "late");
    }
    for (const job::SeasonStay& stay : line.stays) {
      const double from = sheet_.at(stay.from);
      sheet_.box({from, std::max(from + least, sheet_.at(stay.to))}, down, Fill::ink, "stay");
    }
    if (promised && *promised >= s_.first.strip->front().date &&
        *promised <= s_.first.strip->back().date) {
      const double x = sheet_.at(dates::Moment(*promised + one, 0));
      sheet_.line({x, row.from}, {x, row.to}, {0.5}, "promise");
    }
  }

  ChartSheet& sheet_;
  const SeasonSubject& s_;
};

std::string season_description(const SeasonSubject& s) {
  std::string text = say::a_row_a_job_crew_by_crew_a_thick_mark;
  for (std::size_t j = 0; j < s.season.lines.size(); ++j) {
    const SeasonLine& line = s.season.lines[j];
    if (!line.booked) continue;
    text += fmt::format(say::season_line,
                        s.question.jobs[j].name,
                        s.question.crews[line.crew].name,
                        Cells::date(line.first_day).text,
                        Cells::date(line.full).text,
                        line.days_late > 0 ? fmt::format(say::days_late, line.days_late) : "");
  }
  return text;
}

}  // namespace

document::Drawing season_drawing(const SeasonSubject& s) {
  const bool any = s.first.strip != nullptr && !s.first.strip->empty();
  ChartSheet sheet(s.first.paper,
                   any ? s.first.strip->front().date : s.season.start,
                   any ? s.first.strip->size() : 1);
  SeasonChart chart(sheet, s);
  constexpr double below_head = 16.0;
  constexpr double foot = 6.0;
  constexpr double week_names = 5.0;
  chart.head();
  if (any) {
    const double strip = draw_strip(sheet, s.first, sheet.content().top + below_head);
    chart.bars(strip + week_names, sheet.content().bottom - foot);
  }
  chart.key(sheet.content().bottom);
  return sheet.finished(say::season, season_description(s));
}

document::Document season_chart(const SeasonSubject& s) {
  document::Document d;
  d.title = say::season;
  d.sections = {{"", say::chart, {season_drawing(s)}, true}};
  return d;
}

}  // namespace basinwright::report
