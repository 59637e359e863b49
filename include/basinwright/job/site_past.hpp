// The site log against the plan: what is done, what is still alive, what was lost.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/minute.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/sitelog/entry.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {

/// The facts of a log, on the programme's quarter hours: each time rounded up, so that no wait is
/// cut short.
[[nodiscard]] sequence::Past past_of(const sitelog::Log& log, dates::Minute now);

/// A programme that was given out before.
struct Promised {
  std::vector<sequence::Before> tasks;
  std::optional<dates::Moment> refill_done;
  std::optional<dates::Date> first_swim;
  std::optional<dates::Moment> handover;
};
[[nodiscard]] Promised promised(const sequence::Programme& programme);

/// A window that ends this soon after the planned start is called short.
inline constexpr sources::Sourced<units::Duration> short_window{
    units::hours(4), {sources::Kind::assumed, "short-window", "half a working day"}};

/// By when the next coat of a section must begin.
struct Deadline {
  enum class State {
    clear,  ///< Planned over `short_window` before it ends.
    shorter,
    lost  ///< It ends before the next open painting hours.
  };
  std::string section;
  std::string task;    ///< The coat that must follow.
  std::string after;   ///< The coat, or the etch, that it follows.
  dates::Minute from;  ///< Not before.
  dates::Minute by;
  std::optional<dates::Moment> planned;
  State state = State::clear;
};
/// Every window that is open, soonest first.
[[nodiscard]] std::vector<Deadline> deadlines(const Plan& plan,
                                              const RateBook& rates,
                                              const sitelog::Log& log);

/// Work that makes good what was lost, and its wages.
struct Remedy {
  std::string task, section;
  dates::Moment start, end;
  units::Duration person_hours;
  money::Money wages;
};
[[nodiscard]] std::vector<Remedy> remedies(const Plan& plan, const RateBook& rates);

}  // namespace basinwright::job
