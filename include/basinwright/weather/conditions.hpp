// A record made ready for judging: what was not measured is derived where it can be.
#pragma once

#include <optional>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/ratio.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::weather {

/// How slowly a drained shell follows the air.
inline constexpr sources::Sourced<units::Duration> usual_shell_lag{
    units::hours(15), {sources::Kind::assumed, "shell-lag", "time constant"}};

/// One hour. Empty: nobody knows.
struct State {
  std::optional<Reading<units::Temperature>> air, shell, dew_point;
  std::optional<Reading<units::Fraction>> humidity;
  std::optional<Reading<units::Length>> rain;
  std::optional<Reading<units::Speed>> wind;
  bool covered = false;          ///< Inside the span of forecast and observed hours.
  bool shell_estimated = false;  ///< From the air, not measured.
};

/// Every hour of a record with the dew point and humidity that follow from each other, and the
/// shell's temperature, measured or estimated.
///
/// Inside the covered span a value of climatology counts as unknown. The estimate follows the air
/// with a lag: shell += (air - shell) (1 - exp(-1 h / lag)), from the mean of the first day of
/// known air; a measured value is taken as it is and carried on from. It is as good as the air of
/// its hour, and marked. After a day without air it begins anew.
class Conditions {
 public:
  explicit Conditions(const Record& record,
                      const sources::Sourced<units::Duration>& shell_lag = usual_shell_lag);
  /// An hour that knows nothing where the record has none.
  [[nodiscard]] const State& at(HourNumber hour) const;
  /// The first hour after the record's last.
  [[nodiscard]] HourNumber until() const { return from_ + static_cast<HourNumber>(states_.size()); }
  /// The mean air of a day of which at least 20 hours are known, as well known as the worst.
  [[nodiscard]] std::optional<Reading<units::Temperature>> day_mean(dates::Date day) const;
  /// Rain of the hours [from, until) as far as it is known.
  [[nodiscard]] units::Length rain(HourNumber from, HourNumber until) const;

 private:
  void estimate_shell(units::Duration lag);
  [[nodiscard]] units::Temperature first_day_mean(std::size_t from) const;

  HourNumber from_ = 0;
  std::vector<State> states_;
};

}  // namespace basinwright::weather
