// A booked stretch of the programme and what kept it from starting earlier.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/weather/gate.hpp"
#include "basinwright/weather/record.hpp"

namespace basinwright::sequence {

/// Quarters worked on a day.
struct Worked {
  dates::Date date;
  int quarters = 0;
};

/// What kept a task from starting earlier.
struct Held {
  enum class By {
    start_date,     ///< The job's first day.
    task,           ///< The task before it.
    before,         ///< Done right before the task named.
    fewer_days,     ///< Placed later: fewer days on site, and nothing gets later by it.
    less_empty,     ///< Placed later: the pool stands empty for less, and nothing gets later by it.
    wait,           ///< A wait after the task before it: drying, filler cure, coating cure.
    working_hours,  ///< Night, or the day's work is done.
    closed_day,     ///< Weekend, or a day nobody works.
    painting_hours,  ///< The calendar's hours for painting.
    recoat_window,   ///< The next coat's window opens no earlier, or would otherwise be missed.
    new_cement,      ///< Cement that is still too young.
    weather          ///< A gate was closed; `weather` says by what.
  };
  By by = By::task;
  std::string task = {};      ///< The task it waited for, where there is one.
  units::Duration wait = {};  ///< How long the wait is, where there is one.
  std::optional<weather::Verdict> weather = {};
  int more_days = 0;  ///< Days after the one named that weather closed too, not listed.
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
  /// The worst weather looked at for it; `missing`: the calendar alone.
  weather::Quality rests_on = weather::Quality::missing;
  bool done = false;      ///< A fact of the log, or work going on; not planned.
  bool going_on = false;  ///< Done in part, and taken to end as planned.
  bool assumed = false;   ///< Done by what followed; nobody recorded it.
};

/// A task that may be begun next.
struct Chance {
  std::string task, section;
  std::optional<dates::Moment> opens, until;  ///< The first stretch it fits; nothing in sight.
  std::optional<Held> gate;                   ///< What fails first; nothing: it may begin.
  std::optional<dates::Moment> latest = {};   ///< Last start of a recoat window.
  std::optional<dates::Moment> last = {};     ///< The last start in it that fits hours and weather.
  std::optional<dates::Moment> again = {};    ///< The first start that fits on a later day.
};

}  // namespace basinwright::sequence
