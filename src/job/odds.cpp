#include "basinwright/job/odds.hpp"

#include <algorithm>

#include "basinwright/units/unit.hpp"
#include "question.hpp"

namespace basinwright::job {
namespace {

using odds::Finishes;
using odds::Run;

constexpr int short_horizon = 120;
constexpr int long_horizon = 240;
// A job whose calendar alone takes longer than this gets the long horizon.
constexpr std::chrono::days usual_length{60};
constexpr odds::Probability half{1, 2};
constexpr odds::Probability four_fifths{4, 5};
constexpr odds::Probability nine_tenths{9, 10};

Spread spread(const Finishes<dates::Moment>& all) {
  return {odds::quantile(all, half),
          odds::quantile(all, four_fifths),
          odds::quantile(all, nine_tenths)};
}

template <class Get>
std::optional<Spread> spread_of(const std::vector<YearLine>& years, Get get) {
  if (years.empty()) return {};
  Finishes<dates::Moment> all;
  for (const YearLine& line : years) all.push_back(get(line));
  return spread(all);
}

int horizon_of(const Plan& by_calendar) {
  const sequence::Programme& p = by_calendar.programme;
  const bool is_long = !p.feasible || p.refill_done.date() - by_calendar.first_day > usual_length;
  return is_long ? long_horizon : short_horizon;
}

/// A plan's question under each past year.
class Replay {
 public:
  Replay(const Job& job, const RateBook& rates, const Circumstances& now, const Plan& plan)
      : question_(question_of(job, rates, now, plan)), days_(horizon_of(plan)) {}
  Replay(const Replay&) = delete;  // the posed years refer to the question
  Replay& operator=(const Replay&) = delete;

  void pose(const weather::Record& past) {
    odds::Years years = odds::years_of(past, {question_.start, days_});
    left_out_ = std::move(years.left_out);
    for (const odds::WeatherYear& year : years.years) {
      numbers_.push_back(year.year);
      posed_.emplace_back(question_, year.record, days_);
    }
  }

  [[nodiscard]] const std::vector<sequence::Posed>& posed() const { return posed_; }
  [[nodiscard]] const std::vector<int>& numbers() const { return numbers_; }
  [[nodiscard]] const std::vector<odds::LeftOut>& left_out() const { return left_out_; }
  [[nodiscard]] int days() const { return days_; }

 private:
  sequence::ProgrammeQuestion question_;
  int days_;
  std::vector<int> numbers_;
  std::vector<sequence::Posed> posed_;
  std::vector<odds::LeftOut> left_out_;
};

YearLine line_of(int year, const sequence::Posed& posed) {
  YearLine line{year, odds::with_foresight(posed), {}, {}};
  const auto slots = posed.painting_slots(line.foresight.last_coat_end);
  for (std::size_t rule = 0; rule < line.lost.size(); ++rule)
    line.lost[rule] = units::minutes(15) * static_cast<double>(slots[rule]);
  return line;
}

bool can_be_replayed(const Plan& plan) {
  return !plan.stopped() && !plan.quantities.cut.sections.empty();
}

// What the job is without the weather that the plan was made with.
Circumstances by_calendar(const Circumstances& now, dates::Date start) {
  Circumstances out = now;
  out.weather = nullptr;
  out.explain = false;
  out.reasons = false;
  out.start = start;
  return out;
}

WeekLine week_of(const Job& job,
                 const RateBook& rates,
                 const Circumstances& now,
                 const weather::Record& past) {
  WeekLine week;
  week.start = *now.start;
  const Plan plan = make_plan(job, rates, now);
  if (!can_be_replayed(plan)) return week;
  Replay replay(job, rates, now, plan);
  replay.pose(past);
  Finishes<dates::Moment> full;
  for (const sequence::Posed& posed : replay.posed())
    full.push_back(odds::with_foresight(posed).refill_done);
  week.years = static_cast<std::int64_t>(full.size());
  week.finished = std::ranges::count_if(full, [](const auto& f) { return f.has_value(); });
  if (full.empty()) return week;
  week.refill = spread(full);
  if (const auto p80 = week.refill->p80.value)
    week.days_to_p80 = static_cast<int>((p80->date() - week.start).count());
  return week;
}

// From the plan's start in steps of a week; a day nobody works gives way to the next one.
void add_weeks(const Job& job,
               const RateBook& rates,
               const Circumstances& now,
               const OddsQuestion& question,
               Odds& out) {
  for (int w = 0; w < question.weeks; ++w) {
    dates::Date start = out.start + std::chrono::days{7 * w};
    for (int i = 0; i < 7 && !job.calendar.works_on(start); ++i) start += std::chrono::days{1};
    out.weeks.push_back(week_of(job, rates, by_calendar(now, start), question.past));
  }
  const auto days = [](const WeekLine& w) { return w.days_to_p80.value_or(long_horizon + 1); };
  const auto best = std::ranges::min_element(out.weeks, {}, days);
  if (best != out.weeks.end() && best->days_to_p80) best->best = true;
}

void add_lost(Odds& out) {
  for (const YearLine& line : out.years) {
    for (std::size_t rule = 0; rule < line.lost.size(); ++rule) out.lost[rule] += line.lost[rule];
  }
  for (units::Duration& lost : out.lost) lost /= static_cast<double>(out.years.size());
}

void add_ready(const std::optional<dates::Date>& promised, Odds& out) {
  out.promised = promised;
  if (!promised || out.years.empty()) return;
  Finishes<dates::Date> foresight;
  Finishes<dates::Date> foreman;
  const auto day = [](const std::optional<dates::Moment>& m) {
    return m ? std::optional(m->date()) : std::nullopt;
  };
  for (const YearLine& line : out.years) {
    foresight.push_back(day(line.foresight.refill_done));
    foreman.push_back(day(line.foreman.refill_done));
  }
  out.ready_foresight = odds::ready_by(foresight, *promised);
  out.ready_foreman = odds::ready_by(foreman, *promised);
}

}  // namespace

Odds odds_of(const Job& job,
             const RateBook& rates,
             const Circumstances& now,
             const Plan& plan,
             const OddsQuestion& question) {
  Odds out;
  out.start = plan.first_day;
  if (!can_be_replayed(plan)) return out;
  const Circumstances calm = by_calendar(now, plan.first_day);
  Replay replay(job, rates, calm, plan);
  replay.pose(question.past);
  out.horizon_days = replay.days();
  out.left_out = replay.left_out();
  if (!replay.posed().empty()) {
    for (std::size_t y = 0; y < replay.posed().size(); ++y) {
      out.years.push_back(line_of(replay.numbers()[y], replay.posed()[y]));
      out.years.back().foreman = odds::as_a_foreman(
          replay.posed()[y], odds::climatology(replay.posed(), y), question.forecast_hours);
    }
    add_lost(out);
  }
  out.start_foresight = spread_of(out.years, [](const auto& y) { return y.foresight.start; });
  out.start_foreman = spread_of(out.years, [](const auto& y) { return y.foreman.start; });
  out.refill_foresight =
      spread_of(out.years, [](const auto& y) { return y.foresight.refill_done; });
  out.refill_foreman = spread_of(out.years, [](const auto& y) { return y.foreman.refill_done; });
  add_ready(question.promised, out);
  add_weeks(job, rates, now, question, out);
  return out;
}

}  // namespace basinwright::job
