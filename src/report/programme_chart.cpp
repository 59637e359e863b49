#include "programme_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "chart_sheet.hpp"
#include "chart_strip.hpp"
#include "drawing_sheet.hpp"
#include "sections.hpp"
#include "weather_words.hpp"
#include "wording/common.hpp"
#include "wording/drawing.hpp"
#include "words.hpp"

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Fill;
using sequence::Booking;

/// A task with all its bookings.
struct Bar {
  std::string task;
  std::vector<const Booking*> bookings;
};

std::vector<Bar> bars_of(const std::vector<Booking>& bookings) {
  std::vector<Bar> bars;
  for (const Booking& b : bookings) {
    const auto known = std::ranges::find(bars, b.task, &Bar::task);
    Bar& bar = known == bars.end() ? bars.emplace_back(Bar{b.task, {}}) : *known;
    bar.bookings.push_back(&b);
  }
  return bars;
}

/// What keeps the first booking from starting earlier: the first that has words. Weather of a day
/// left of the chart only where nothing else does.
std::string why_there(const Bar& bar, const Subject& s) {
  const dates::Moment first(s.strip->front().date, 0);
  std::string earlier;
  for (const sequence::Held& h : bar.bookings.front()->held_by) {
    std::string words = held(h, s.units);
    if (words.empty()) continue;
    const bool shown = !h.weather || moment_of(h.weather->hour) >= first;
    if (shown) return words;
    if (earlier.empty()) earlier = std::move(words);
  }
  return earlier;
}

class Chart {
 public:
  Chart(ChartSheet& sheet, const Subject& s) : sheet_(sheet), s_(s) {}

  void head() {
    const Box& c = sheet_.content();
    const job::Heading& h = s_.job.heading;
    sheet_.write(say::programme, {c.left, c.top + 4.0}, letters::title, Anchor::start, true);
    std::string line;
    for (const std::string& part : {h.number, h.client.name, h.client.address}) {
      if (!part.empty()) line += (line.empty() ? "" : " \u00b7 ") + part;
    }
    sheet_.write(fitted(line, letters::text, c.width()), {c.left, c.top + 9.0}, letters::text);
    const std::string rests = say::these_dates_rest_on_before + weather_basis(s_).text + ".";
    sheet_.write(fitted(rests, letters::text, c.width()), {c.left, c.top + 12.8}, letters::text);
  }

  /// Mondays by name over a line of day numbers.
  void days(Extent down) {
    constexpr double numbered = 3.4;
    for (std::size_t d = 0; d < s_.strip->size(); ++d) {
      const job::StripDay& day = (*s_.strip)[d];
      const double x = sheet_.at(d, 0.0);
      if (!day.works) sheet_.box({x, sheet_.at(d, 24.0)}, down, Fill::dots, "closed-day");
      const bool monday = dates::weekday(day.date) == 0;
      const document::Pen thick{0.18};
      const document::Pen thin{0.12, document::Dash::dotted};
      sheet_.line(
          {x, down.from - (monday ? 6.0 : 0.0)}, {x, down.to}, monday ? thick : thin, "day");
      const std::string words = dates::short_day(day.date);
      const std::size_t first = words.find(' ') + 1;
      if (monday || (d == 0 && text_width(words, letters::small) < until_monday(d)))
        sheet_.write(words, {x + 0.6, down.from - 4.0}, letters::small, Anchor::start, true);
      if (sheet_.day_width() >= numbered)
        sheet_.write(words.substr(first, words.rfind(' ') - first),
                     {x + 0.6, down.from - 0.9},
                     letters::small);
    }
  }

  double bars(double top, double bottom) {
    constexpr double most = 6.0;
    const std::vector<Bar> all = bars_of(s_.plan.programme.bookings);
    const double row = std::min(most, (bottom - top) / static_cast<double>(all.size()));
    double y = top;
    for (const Bar& bar : all) {
      draw(bar, {y, y + row});
      y += row;
    }
    return y;
  }

  void key(double y) {
    double x = sheet_.content().left;
    const auto entry = [&](Fill fill, const std::string& words) {
      constexpr double swatch = 6.0;
      sheet_.box({x, x + swatch}, {y - 2.2, y}, fill, "key");
      for (const double side : {x, x + swatch})
        sheet_.line({side, y - 2.2}, {side, y}, pens::fine, "key");
      sheet_.line({x, y - 2.2}, {x + swatch, y - 2.2}, pens::fine, "key");
      sheet_.line({x, y}, {x + swatch, y}, pens::fine, "key");
      sheet_.write(words, {x + swatch + 1.5, y}, letters::small);
      x += swatch + 6.0 + text_width(words, letters::small);
    };
    entry(Fill::ink, say::people_at_work);
    entry(Fill::rising, say::time_passes_nobody_works_on_it);
    entry(Fill::dots, say::nobody_works_that_day);
    if (!s_.strip->front().hours.empty()) entry(Fill::crossed, say::weather_not_known);
    if (s_.strip->front().sun) entry(Fill::shade, "night");
  }

 private:
  [[nodiscard]] double until_monday(std::size_t day) const {
    std::size_t d = day + 1;
    while (d < s_.strip->size() && dates::weekday((*s_.strip)[d].date) != 0) ++d;
    return static_cast<double>(d - day) * sheet_.day_width();
  }

  void draw(const Bar& bar, Extent row) {
    constexpr double least = 0.7;
    const double inset = 0.18 * (row.to - row.from);
    const double base = row.from + 0.68 * (row.to - row.from);
    const double size = std::min(letters::label, 0.62 * (row.to - row.from));
    sheet_.line({sheet_.content().left, row.to}, {sheet_.content().right, row.to}, {0.05}, "row");
    sheet_.write(task(bar.task), {sheet_.content().left, base}, size);
    Extent whole{sheet_.content().right, sheet_.left()};
    for (const Booking* b : bar.bookings) {
      const double from = sheet_.at(b->start);
      const double to = std::max(from + least, sheet_.at(b->end));
      const Extent down{row.from + inset, row.to - inset};
      sheet_.box({from, to}, down, b->people > 0 ? Fill::ink : Fill::rising, "bar");
      for (const double y : {down.from, down.to})
        sheet_.line({from, y}, {to, y}, pens::fine, "bar");
      whole = {std::min(whole.from, from), std::max(whole.to, to)};
    }
    say(why_there(bar, s_), whole, base, size);
  }

  /// Beside the bar, on the side with more room.
  void say(const std::string& words, Extent bar, double base, double size) {
    constexpr double gap = 1.2;
    const double small = 0.9 * size;
    const double right = sheet_.content().right - bar.to - gap;
    const double left = bar.from - sheet_.left() - gap;
    const bool after = right >= left || text_width(words, small) <= right;
    const std::string said = fitted(words, small, after ? right : left);
    sheet_.write_over(said,
                      {after ? bar.to + gap : bar.from - gap, base},
                      small,
                      after ? Anchor::start : Anchor::end);
  }

  ChartSheet& sheet_;
  const Subject& s_;
};

std::string description_of(const Subject& s) {
  const sequence::Programme& p = s.plan.programme;
  std::string text = fmt::format(say::bars_of_each_task_from_to,
                                 Cells::moment(p.start).text,
                                 Cells::moment(p.refill_done).text);
  for (const Bar& bar : bars_of(p.bookings)) {
    text += fmt::format(say::marked_from_to,
                        task(bar.task),
                        Cells::moment(bar.bookings.front()->start).text,
                        Cells::moment(bar.bookings.back()->end).text);
  }
  return text;
}

document::Drawing without_dates(const Subject& s) {
  ChartSheet sheet(s.paper, s.plan.first_day, 1);
  Chart(sheet, s).head();
  const auto& blocked_by = s.plan.programme.blocked_by;
  const std::string reason = blocked_by ? blocked(*blocked_by) : say::the_job_must_stop_before_it;
  const std::string words = say::no_dates_before + reason;
  double y = sheet.content().top + 24.0;
  for (const std::string& line : broken(words, letters::text, sheet.content().width())) {
    sheet.write(line, {sheet.content().left, y}, letters::text);
    y += 4.0;
  }
  return sheet.finished(say::programme, words);
}

}  // namespace

document::Drawing programme_drawing(const Subject& s) {
  if (!s.plan.programme.feasible || s.strip == nullptr || s.strip->empty()) return without_dates(s);
  ChartSheet sheet(s.paper, s.strip->front().date, s.strip->size());
  Chart chart(sheet, s);
  constexpr double below_head = 21.0;
  constexpr double foot = 6.0;
  chart.head();
  const double top = sheet.content().top + below_head;
  const double strip = draw_strip(sheet, s, top);
  const double bars = draw_nights(sheet, s, strip);
  const double end = chart.bars(bars, sheet.content().bottom - foot);
  chart.days({top, end});
  chart.key(std::min(end + foot, sheet.content().bottom));
  return sheet.finished(say::programme, description_of(s));
}

document::Document programme_chart(const Subject& s) {
  document::Document d;
  d.title = say::programme;
  d.sections = {{"", say::chart, {programme_drawing(s)}, true}};
  return d;
}

}  // namespace basinwright::report
