// Many jobs on shared crews: which crew does which job, and when.
//
// It knows slots, dates and jobs as general problems of `schedule`, nothing of paint or pools. A
// job is done by one crew from its first task to its finish. A crew is at one place at a time;
// while it is away from a job, that job's calendars are closed.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "basinwright/schedule/problem.hpp"

namespace basinwright::season {

using schedule::Slot;

/// The crew's work after the last unit: `unmask` slots as they come, then, not before
/// `cured[end of the last unit]`, `refit` slots as they come; the finish is the first open slot
/// after them, with somebody there.
struct Aftercare {
  std::size_t calendar = 0;
  Slot unmask = 0, refit = 0;
  /// By the end slot of the last unit: when what follows may begin; nothing beyond the horizon.
  std::vector<std::optional<Slot>> cured;
};

/// One job as one crew would do it alone. The problem's own `finish` is not looked at.
///
/// No attended task has a latest lag of its own: that is what makes a closed slot never bring a
/// finish forward. The calendar of the units is theirs alone.
struct Candidate {
  schedule::Problem problem;
  std::vector<std::int32_t> time_of;  ///< One a slot: ascending within a date while anyone works.
  Slot ready = 0;  ///< Work before the first unit of a date, not in the calendar of units.
  Aftercare after;
  std::vector<std::int32_t> full;  ///< One a slot: the date on which a finish there is complete.
  std::int64_t cost = 0;           ///< Of the crew's hours, in whole minor units.
};

struct Job {
  std::string name;
  std::optional<std::int32_t> promised;  ///< The last date that is not late.
  std::int64_t weight = 1;               ///< What a day late counts; positive.
  /// One a crew; none where that crew cannot do it.
  std::vector<std::shared_ptr<const Candidate>> by_crew;
};

struct Problem {
  std::vector<Job> jobs;
  std::size_t crews = 0;
  /// Time from one job's place to another's with what leaving and arriving takes, in the unit of
  /// `time_of`. Overnight is always enough.
  std::vector<std::vector<std::int32_t>> travel;
  /// Crews with equal numbers are the same in everything; empty: all differ.
  std::vector<int> alike;
};

/// What a season is judged by, in this order; smaller is better.
struct Value {
  std::int64_t unbooked = 0;  ///< Jobs that have no dates.
  std::int64_t late = 0;      ///< Days after the promise times the weight, summed.
  std::int64_t refill = 0;    ///< Sum of the dates on which the jobs are complete.
  std::int64_t cost = 0;

  friend auto operator<=>(const Value&, const Value&) = default;
  friend Value operator+(Value a, const Value& b) {
    return {a.unbooked + b.unbooked, a.late + b.late, a.refill + b.refill, a.cost + b.cost};
  }
  friend Value operator-(Value a, const Value& b) {
    return {a.unbooked - b.unbooked, a.late - b.late, a.refill - b.refill, a.cost - b.cost};
  }
};

/// When a crew is at a job: one stretch a date, of whole slots.
struct Presence {
  std::int32_t date = 0;
  std::int32_t from = 0, to = 0;  ///< In the unit of `time_of`.
  friend bool operator==(const Presence&, const Presence&) = default;
};

/// A stretch of a date in which the crew may be at a job, where that is less than the whole date;
/// from -1,000,000 where the date's beginning is free. Ascending dates.
using Windows = std::vector<Presence>;

/// A job on its crew.
struct Booked {
  std::size_t crew = 0;
  Windows windows;          ///< Outside them the crew is away.
  schedule::Answer answer;  ///< Of the candidate's problem within the windows.
  Slot unmask_start = 0, unmask_end = 0, refit_start = 0, refit_end = 0, finish = 0;
  std::vector<Presence> at;  ///< When the crew is there.
  std::int32_t full = 0;     ///< The date on which it is complete.
  std::int64_t days_late = 0;
};

struct Answer {
  std::vector<std::optional<Booked>> jobs;  ///< As the problem's.
  Value value;
  /// No season is better than this, component by component in order.
  Value bound;
  bool optimal = false;  ///< Proven: value and bound are equal.
};

}  // namespace basinwright::season
