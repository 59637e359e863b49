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
#include "basinwright/sequence/waits.hpp"
#include "basinwright/sequence/work.hpp"

namespace basinwright::sequence {

/// Mean air temperature of each month, January first, where the job says it.
using MeanTemperatures = std::array<std::optional<units::Temperature>, 12>;

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
  /// Labour of one worked quarter on a weekday (0 = Monday), and of a day's attendance, in whatever
  /// the caller weighs with.
  std::array<std::int64_t, 7> weight_of_quarter{};
  std::int64_t weight_of_attendance = 0;
};

/// Quarters worked on a day.
struct Worked {
  dates::Date date;
  int quarters = 0;
};

/// What kept a task from starting earlier.
struct Held {
  enum class By {
    start_date,      ///< The job's first day.
    task,            ///< The task before it.
    before,          ///< Done right before the task named.
    fewer_days,      ///< Placed later: fewer days on site, and nothing gets later by it.
    wait,            ///< A wait after the task before it: drying, filler cure, coating cure.
    working_hours,   ///< Night, or the day's work is done.
    closed_day,      ///< Weekend, or a day nobody works.
    painting_hours,  ///< The calendar's hours for painting.
    recoat_window,   ///< The next coat's window opens no earlier, or would otherwise be missed.
    new_cement       ///< Cement that is still too young.
  };
  By by = By::task;
  std::string task;      ///< The task it waited for, where there is one.
  units::Duration wait;  ///< How long the wait is, where there is one.
};

/// One booked stretch.
struct Booking {
  std::string task;
  std::string section;
  dates::Moment start;
  dates::Moment end;
  int people = 0;  ///< 0: nobody works on it.
  std::vector<Worked> worked;
  std::vector<Held> held_by;  ///< What kept it from starting earlier.
};

/// Why there is no programme.
struct Blocked {
  enum class Why {
    longer_than_any_window,  ///< A section takes longer than any stretch of painting hours.
    no_window_fits,  ///< Working days, painting hours and recoat window leave no run of days.
    horizon          ///< Nothing inside the time looked at.
  };
  std::string task;
  std::string section;
  Why why = Why::no_window_fits;
};

struct Programme {
  bool feasible = false;
  std::vector<Booking> bookings;
  dates::Moment start;
  dates::Moment fill_start;
  dates::Moment refill_done;
  dates::Date first_swim;  ///< Not before; by readings, not by the calendar.
  int split_coats = 0;
  int days_on_site = 0;
  units::Duration cure;
  bool cure_by_temperature = false;  ///< False: no temperature known, the longer wait.
  std::optional<Blocked> blocked_by;
};

/// The earliest refill under every wait and window, proven by `schedule`.
[[nodiscard]] Programme programme(const ProgrammeQuestion& question);

}  // namespace basinwright::sequence
