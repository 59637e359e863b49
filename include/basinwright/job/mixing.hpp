// When each kit of each coat is mixed.
#pragma once

#include <string>
#include <vector>

#include "basinwright/coverage/mixing.hpp"
#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// One coat of one section with its kits.
struct MixingMorning {
  std::string task;
  std::string section;  ///< Empty: the coat is not cut.
  dates::Moment opens;  ///< Painting begins.
  units::Temperature paint;
  bool paint_assumed = true;  ///< No weather says it: the data sheet's own temperature.
  coverage::MixingTimetable timetable;

  /// The minute of the day at which something of the timetable happens; below 0 the day before.
  [[nodiscard]] int minute_of_day(units::Duration since_opening) const;
};

/// Every coat's mornings in the order of the programme; none without dates. The mixed paint is
/// taken to be as warm as the warmest air over painting and first cure where weather was read, and
/// induction as long as its longest.
[[nodiscard]] std::vector<MixingMorning> mixing_mornings(const Job& job,
                                                         const RateBook& rates,
                                                         const Plan& plan);

}  // namespace basinwright::job
