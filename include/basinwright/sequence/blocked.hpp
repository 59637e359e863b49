// Why a job has no dates, and what would give it some.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/weather/gate.hpp"

namespace basinwright::sequence {

/// A family of rules that can be left out for a trial, in the order in which that is tried.
enum class Constraint {
  painting_hours,  ///< Painting hours and working days.
  air,
  shell,
  dew_margin,
  humidity,
  rain,  ///< While painting, before and after, in dry work and while drying.
  wind,
  frost,
  recoat_window,  ///< The latest recoat.
  etch_validity   ///< The latest first coat after the etch.
};
inline constexpr std::array all_constraints{Constraint::painting_hours,
                                            Constraint::air,
                                            Constraint::shell,
                                            Constraint::dew_margin,
                                            Constraint::humidity,
                                            Constraint::rain,
                                            Constraint::wind,
                                            Constraint::frost,
                                            Constraint::recoat_window,
                                            Constraint::etch_validity};

/// A painting hour that one weather rule alone closed, as closely as any.
struct NearMiss {
  dates::Moment at;
  weather::Verdict verdict;
};

/// Something the contractor may change, and when the pool would be full with it.
struct WayOut {
  enum class How {
    saturday_work,
    one_more_painter,
    hour_earlier,  ///< Crew and painting begin an hour earlier.
    first_light    ///< Painting from first light.
  };
  How how = How::saturday_work;
  dates::Moment refill_done;
};

/// Why there is no programme.
struct Blocked {
  enum class Why {
    longer_than_any_window,  ///< A section takes longer than any stretch of painting hours.
    no_window_fits,  ///< Working days, painting hours and recoat window leave no run of days.
    horizon,         ///< Nothing inside the time looked at.
    weather          ///< The calendar has room; the weather read leaves none.
  };
  std::string task;
  std::string section;
  Why why = Why::no_window_fits;
  /// An irreducible set: together they leave no dates, and without any one of them there are some.
  /// Found by leaving them out one after the other in their order; other sets may exist.
  std::vector<Constraint> together = {};
  /// Each of which, left out alone, would give dates. Said, never offered: they keep the coat on.
  std::vector<Constraint> alone = {};
  std::vector<NearMiss> nearest = {};  ///< One for each weather rule of `together` that has any.
  std::vector<WayOut> ways_out = {};   ///< Earliest refill first.
  /// After how many days the calendar's weeks, being alike, told that there is none later either;
  /// nothing where as many as the question has were looked at.
  std::optional<int> weeks_told = {};
};

}  // namespace basinwright::sequence
