// How sure the dates of a job are: replayed over past years of weather.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "basinwright/job/plan.hpp"
#include "basinwright/odds/quantiles.hpp"
#include "basinwright/odds/replay.hpp"
#include "basinwright/odds/years.hpp"

namespace basinwright::job {

/// Below so many years a P90 is one year's luck and is not shown.
inline constexpr std::int64_t least_years_for_p90 = 10;

struct OddsQuestion {
  const weather::Record& past;          ///< Hours of past years.
  std::optional<dates::Date> promised;  ///< A day the client was told.
  int weeks = 0;                        ///< Start weeks to compare, from the plan's start.
  int forecast_hours = odds::usual_forecast_hours;
};

/// One replayed year.
struct YearLine {
  int year = 0;
  odds::Run foresight, foreman;
  /// Painting hours up to the last coat (with foresight) that each rule closed first.
  std::array<units::Duration, weather::all_rules.size()> lost{};
};

using MomentQuantile = odds::Quantile<dates::Moment>;

/// The same event of all years.
struct Spread {
  MomentQuantile p50, p80, p90;
};

/// One start week of a season.
struct WeekLine {
  dates::Date start;
  std::int64_t years = 0, finished = 0;
  std::optional<Spread> refill;    ///< With foresight; nothing without a year.
  std::optional<int> days_to_p80;  ///< From the start until it is full in eight years of ten.
  bool best = false;               ///< The fewest such days of the season.
};

struct Odds {
  dates::Date start;
  int horizon_days = 0;
  std::vector<YearLine> years;
  std::vector<odds::LeftOut> left_out;
  std::optional<Spread> start_foresight, start_foreman, refill_foresight, refill_foreman;
  /// Mean over the years, by rule.
  std::array<units::Duration, weather::all_rules.size()> lost{};
  std::optional<dates::Date> promised;
  std::optional<odds::ReadyShare> ready_foresight, ready_foreman;
  std::vector<WeekLine> weeks;

  /// The day to allow for: the P80 of the foreman's replay.
  [[nodiscard]] std::optional<dates::Moment> allow_for() const {
    return refill_foreman ? refill_foreman->p80.value : std::nullopt;
  }
};

/// Replays a plan over past years; weather that the plan itself was made with is not looked at. A
/// plan that is stopped, or whose coat fits no morning, has no years.
[[nodiscard]] Odds odds_of(const Job& job,
                           const RateBook& rates,
                           const Circumstances& now,
                           const Plan& plan,
                           const OddsQuestion& question);

}  // namespace basinwright::job
