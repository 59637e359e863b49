// The site log against the plan: what is done, what is still alive, what was lost.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/dates/minute.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/sitelog/entry.hpp"
#include "basinwright/units/quantity.hpp"

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

/// By when the next coat of a section must begin.
struct Deadline {
  enum class State {
    clear,    ///< The half hour kept in hand is whole, or there is more.
    shorter,  ///< It can be met, with less than that in hand.
    lost,     ///< The coat fits no open painting hours before it ends.
    planned   ///< Missed on purpose: the data sheet allows it, and the rework is booked.
  };
  /// Whether the coat can still be put on in it.
  [[nodiscard]] bool is_alive() const { return state == State::clear || state == State::shorter; }
  std::string section;
  std::string task;    ///< The coat that must follow.
  std::string after;   ///< The coat, the etch or the rework that it follows.
  dates::Minute from;  ///< Not before, by both ends of the window.
  dates::Minute by;    ///< Not after, by both ends of the window.
  std::optional<dates::Moment> planned;
  State state = State::clear;
  /// The last start that fits painting hours and weather too, and the first on another day than the
  /// next start; nothing where it was not looked for, or there is none.
  std::optional<dates::Moment> last, again;
  units::Duration in_hand;  ///< From the planned start to the last one.
};
/// Every window that is open, soonest first.
[[nodiscard]] std::vector<Deadline> deadlines(const Plan& plan,
                                              const RateBook& rates,
                                              const sitelog::Log& log);

/// Coats planned nearer to an end of their recoat window than the half hour kept in hand: there is
/// no programme that keeps it.
struct Tight {
  std::string section, task;
};
[[nodiscard]] std::vector<Tight> without_reserve(const Plan& plan, const RateBook& rates);

/// Work that makes good what was lost, and its wages.
struct Remedy {
  std::string task, section;
  dates::Moment start, end;
  units::Duration person_hours;
  money::Money wages;
};
[[nodiscard]] std::vector<Remedy> remedies(const Plan& plan, const RateBook& rates);

}  // namespace basinwright::job
