// A job replayed under the weather of a year, with perfect foresight and as a foreman would plan.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/schedule/problem.hpp"
#include "basinwright/sequence/posed.hpp"

namespace basinwright::odds {

/// How the job went in a year; without dates it did not finish inside the horizon.
struct Run {
  std::optional<dates::Moment> start, first_coat, refill_done;
  schedule::Slot last_coat_end = 0;  ///< The horizon when it was not finished.
  int etched_again = 0;              ///< Times the etch had to be done again.
  bool window_missed = false;        ///< A coat's recoat window went by: a hold point.
};

/// The best programme for weather known beforehand.
[[nodiscard]] Run with_foresight(const sequence::Posed& year);

/// How far a foreman sees, in hours from the morning.
inline constexpr int usual_forecast_hours = 72;

/// What a foreman expects beyond the forecast: a slot counts as open where it was open in at least
/// half of the years, as wet where it was wet in more than half.
struct Climatology {
  std::vector<schedule::Calendar> calendars;
  std::vector<char> wet;
};
/// @param without  index of a year that is left out, so that a foreman in it does not remember what
///                 is yet to come; no year has this index: none is left out, nor is the only one
/// @throws std::invalid_argument without a year, or when the years' calendars differ in length
[[nodiscard]] Climatology climatology(const std::vector<sequence::Posed>& years,
                                      std::size_t without = static_cast<std::size_t>(-1));

/// Plans anew each midnight before a day with a forecast that is right for `forecast_hours` and
/// climatology beyond, and does what that plan has for the day. What rain stops goes on when it is
/// over; an etch that is too old before the first coat is done again; a recoat window that goes by
/// ends the year unfinished.
///
/// @throws std::invalid_argument unless the forecast reaches a day beyond what gates look ahead
///
/// An hour counts as forecast when all the hours it depends on are, the ones after it included.
[[nodiscard]] Run as_a_foreman(const sequence::Posed& year,
                               const Climatology& climatology,
                               int forecast_hours = usual_forecast_hours);

}  // namespace basinwright::odds
