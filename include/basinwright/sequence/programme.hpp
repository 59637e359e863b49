// The trade's programme: drain to handover with dates, recoat windows, cure and fill.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/dates/calendar.hpp"
#include "basinwright/dates/date.hpp"
#include "basinwright/materials/coating_system.hpp"
#include "basinwright/sequence/blocked.hpp"
#include "basinwright/sequence/booking.hpp"
#include "basinwright/sequence/facts.hpp"
#include "basinwright/sequence/site_weather.hpp"
#include "basinwright/sequence/waits.hpp"
#include "basinwright/sequence/work.hpp"

namespace basinwright::sequence {

/// Mean air temperature of each month, January first, where the job says it.
using MeanTemperatures = std::array<std::optional<units::Temperature>, 12>;

/// What like jobs met. No programme depends on it, only how soon it is found.
struct Likely {
  /// After how many looks in vain under weather it is asked whether the calendar alone leaves room:
  /// sooner where that is unlikely.
  int calendar_after = 1;
  /// So far ahead is looked first.
  std::optional<dates::Moment> fill_start = {};
};

/// Everything the programme depends on.
struct ProgrammeQuestion {
  dates::Date start;
  dates::WorkCalendar calendar;  ///< Crew hours, days, closed days, painting hours.
  std::vector<Work> work;
  std::vector<std::string> sections;  ///< Names, deep end first; one: no cut.
  const materials::CoatingSystem& system;
  Waits waits;
  MeanTemperatures temperatures;
  units::Duration cement_wait;         ///< From the start, until young cement may be etched.
  units::Duration repair_cement_wait;  ///< After repairs with mortar.
  units::Duration clean_up;            ///< At the end of each day.
  units::Volume water;
  units::Flow tap;
  units::Flow drain_pump;
  int water_visits = 0;  ///< Working days of additions to the new water, after its quiet time.
  /// Labour of one worked quarter on a weekday (0 = Monday), and of a day's attendance, in whatever
  /// the caller weighs with.
  std::array<std::int64_t, 7> weight_of_quarter{};
  std::int64_t weight_of_attendance = 0;
  SiteWeather weather;  ///< Without a record: the calendar alone.
  int most_days = 500;  ///< How far ahead is looked, at most; of a begun job from its now.
  bool reasons = true;  ///< Whether to find out what excludes what when there are no dates.
  std::optional<Past> past = {};  ///< For the rest of a job that has begun.
  ReworkRules rework = {};
  Likely likely = {};
};

/// What the weather read comes to.
enum class WeatherBasis {
  none,      ///< Nothing was read: the calendar alone.
  forecast,  ///< Some of it is yet to come.
  replayed   ///< A past or a typical year.
};

/// Which kind of Part B suits the air over painting and first cure of every coat.
struct Hardener {
  enum class Kind { cool, standard, straddles };
  Kind kind = Kind::standard;
  units::Temperature low, high;  ///< Of the air.
};

struct Programme {
  bool feasible = false;
  std::vector<Booking> bookings;
  dates::Moment start;
  dates::Moment fill_start;
  dates::Moment refill_done;
  dates::Date quiet_until;  ///< The first day on which more than salt or chlorine goes in.
  dates::Date first_swim;   ///< Not before; by readings, not by the calendar.
  int split_coats = 0;
  int days_on_site = 0;
  units::Duration cure;
  bool cure_by_temperature = false;  ///< False: no temperature known, the longer wait.
  bool cure_by_weather = false;      ///< Some of its days by the air that was read.
  WeatherBasis weather = WeatherBasis::none;
  dates::Moment weather_until;       ///< Where forecast and observed hours end.
  bool climatology_beyond = false;   ///< What follows them is a usual year, not the calendar alone.
  std::optional<Hardener> hardener;  ///< Where the sheet has kinds and the air is known.
  /// Rain shortly before the drain that may have raised the groundwater.
  std::optional<units::Length> rain_before_drain;
  /// The last rain between the dryness test and the first coat: the sheets are laid again.
  std::optional<dates::Moment> rain_after_test;
  std::optional<Blocked> blocked_by;
  Lost lost;                    ///< Of a job that has begun.
  std::vector<Chance> chances;  ///< What may be begun next, where that was asked.
};

/// The earliest refill under every wait and window, proven by `schedule`. Of a job that has begun,
/// what is done is never moved, even where it broke a rule; the rest is placed anew, and of equally
/// good programmes one near to the programme until now. Work that only makes good what was lost is
/// planned when there is no programme without it.
[[nodiscard]] Programme programme(const ProgrammeQuestion& question);

}  // namespace basinwright::sequence
