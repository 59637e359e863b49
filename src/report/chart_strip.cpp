#include "chart_strip.hpp"

#include <algorithm>
#include <functional>
#include <optional>

#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"
#include "drawing_sheet.hpp"
#include "wording/common.hpp"
#include "wording/drawing.hpp"

namespace basinwright::report {
namespace {

using document::Anchor;
using document::Fill;

/// One curve: a value of an hour, or nothing.
using Reader = std::function<std::optional<double>(const weather::State&)>;

struct Limit {
  double value = 0.0;
  std::string text;
};

struct Panel {
  std::string title;
  std::string unit;
  double height = 18.0;
  Extent range;
  std::vector<Limit> limits;
};

std::optional<double> air_of(const weather::State& hour) {
  if (!hour.air) return std::nullopt;
  return hour.air->value.in(units::celsius);
}

std::optional<double> margin_of(const weather::State& hour) {
  if (!hour.shell || !hour.dew_point) return std::nullopt;
  return (hour.shell->value - hour.dew_point->value).in(units::kelvins);
}

std::optional<double> rain_of(const weather::State& hour) {
  if (!hour.rain) return std::nullopt;
  return hour.rain->value.in(units::millimetres);
}

/// From the lowest to the highest known value, the limits within.
Extent range_of(const std::vector<job::StripDay>& days, const Reader& read, Extent least) {
  Extent range = least;
  for (const job::StripDay& day : days) {
    for (const weather::State& hour : day.hours) {
      const auto value = read(hour);
      if (!value) continue;
      range.from = std::min(range.from, *value);
      range.to = std::max(range.to, *value);
    }
  }
  return range;
}

class Strip {
 public:
  Strip(ChartSheet& sheet, const std::vector<job::StripDay>& days) : sheet_(sheet), days_(days) {}

  double panel(const Panel& panel, const Reader& read, double top) {
    const double bottom = top + panel.height;
    sheet_.line({sheet_.left(), bottom}, {sheet_.content().right, bottom}, pens::edge, "panel");
    sheet_.write(
        panel.title, {sheet_.content().left, top + 3.0}, letters::label, Anchor::start, true);
    sheet_.write(panel.unit, {sheet_.content().left, top + 6.2}, letters::small);
    for (const Limit& limit : panel.limits) {
      const double y = height(panel, limit.value, top);
      sheet_.line({sheet_.left(), y}, {sheet_.content().right, y}, pens::broken, "limit");
      sheet_.write(limit.text, {sheet_.left() - 1.0, y + 0.8}, letters::small, Anchor::end);
    }
    unknown(read, {top, bottom});
    return bottom;
  }

  void curve(const Panel& panel, const Reader& read, double top, document::Pen pen) {
    std::vector<Spot> spots;
    each([&](std::size_t day, int hour, const weather::State& state) {
      const auto value = read(state);
      if (value) {
        spots.push_back({sheet_.at(day, hour + 0.5), height(panel, *value, top)});
      } else {
        sheet_.curve(spots, pen, "curve");
        spots.clear();
      }
    });
    sheet_.curve(spots, pen, "curve");
  }

  void bars(const Panel& panel, const Reader& read, double top) {
    const double bottom = top + panel.height;
    each([&](std::size_t day, int hour, const weather::State& state) {
      const auto value = read(state);
      if (!value || *value <= 0.0) return;
      sheet_.box({sheet_.at(day, hour), sheet_.at(day, hour + 1)},
                 {height(panel, *value, top), bottom},
                 Fill::ink,
                 "rain");
    });
  }

 private:
  static double height(const Panel& panel, double value, double top) {
    return top + panel.height * (panel.range.to - value) / (panel.range.to - panel.range.from);
  }

  template <class Do>
  void each(Do act) const {
    for (std::size_t day = 0; day < days_.size(); ++day) {
      for (std::size_t h = 0; h < days_[day].hours.size(); ++h)
        act(day, static_cast<int>(h), days_[day].hours[h]);
    }
  }

  /// Nobody knows: crossed out, run by run.
  void unknown(const Reader& read, Extent down) {
    bool crossing = false;
    double from = 0.0;
    double last = sheet_.left();
    each([&](std::size_t day, int hour, const weather::State& state) {
      const bool known = read(state).has_value();
      if (known && crossing) {
        sheet_.box({from, sheet_.at(day, hour)}, down, Fill::crossed, "unknown");
      } else if (!known && !crossing) {
        from = sheet_.at(day, hour);
      }
      crossing = !known;
      last = sheet_.at(day, hour + 1);
    });
    if (crossing) sheet_.box({from, last}, down, Fill::crossed, "unknown");
  }

  ChartSheet& sheet_;
  const std::vector<job::StripDay>& days_;
};

double in_celsius(units::Temperature t) {
  return t.in(units::celsius);
}

}  // namespace

double draw_strip(ChartSheet& sheet, const Subject& s, double top) {
  constexpr double gap = 2.5;
  if (s.strip == nullptr || s.strip->empty() || s.strip->front().hours.empty()) return top;
  const std::vector<job::StripDay>& days = *s.strip;
  const materials::Limits& limits = s.plan.system.limits;
  Strip strip(sheet, days);

  Panel air{say::air, say::limits_while_painting, 22.0, {}, {}};
  const auto air_low = limits.air_min.value;
  const auto air_high = limits.air_max.value;
  air.range = range_of(days, air_of, {in_celsius(air_low) - 2.0, in_celsius(air_high) + 2.0});
  air.limits = {{in_celsius(air_high), units::show(air_high, s.units, 0)},
                {in_celsius(air_low), units::show(air_low, s.units, 0)}};
  double y = strip.panel(air, air_of, top);
  strip.curve(air, air_of, top, {0.3});

  Panel margin{say::shell_above_dew_point, say::coat_only_above_the_limit, 16.0, {}, {}};
  const double least = limits.dew_margin.value.in(units::kelvins);
  margin.range = range_of(days, margin_of, {0.0, 2.0 * least});
  margin.limits = {{least, units::show(limits.dew_margin.value, s.units, 1)}};
  top = y + gap;
  y = strip.panel(margin, margin_of, top);
  strip.curve(margin, margin_of, top, {0.3});

  const Extent most = range_of(days, rain_of, {0.0, 2.0});
  const units::Length deepest = units::millimetres(most.to);
  const std::string deepest_text = s.units == units::System::us
                                       ? units::show_in(deepest, units::inches, 2)
                                       : units::show_in(deepest, units::millimetres, 1);
  const Panel rain{say::rain, say::an_hour_full_height + deepest_text, 10.0, most, {}};
  top = y + gap;
  y = strip.panel(rain, rain_of, top);
  strip.bars(rain, rain_of, top);
  return y + gap;
}

double draw_nights(ChartSheet& sheet, const Subject& s, double top) {
  constexpr double height = 2.6;
  constexpr double least_day = 3.0;
  if (s.strip == nullptr || s.strip->empty() || !s.strip->front().sun) return top;
  if (sheet.day_width() < least_day) return top;
  sheet.write(say::night, {sheet.content().left, top + 2.2}, letters::label, Anchor::start, true);
  for (std::size_t day = 0; day < s.strip->size(); ++day) {
    const auto& sun = (*s.strip)[day].sun;
    if (!sun || !sun->sunrise || !sun->sunset) continue;
    constexpr double a_day = 24.0;
    const double rise = std::clamp(sun->sunrise->in(units::hours), 0.0, a_day);
    const double set = std::clamp(sun->sunset->in(units::hours), 0.0, a_day);
    sheet.box({sheet.at(day, 0.0), sheet.at(day, rise)}, {top, top + height}, Fill::shade, "night");
    sheet.box(
        {sheet.at(day, set), sheet.at(day, a_day)}, {top, top + height}, Fill::shade, "night");
  }
  return top + height + 1.5;
}

}  // namespace basinwright::report
