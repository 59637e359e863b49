// Person-hours into wages.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "basinwright/dates/calendar.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/sequence/programme.hpp"
#include "basinwright/sequence/work.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::quote {

struct Labour {
  money::Money hour;
  /// Share of the wage on each weekday, Monday first; 10,000 = 100 %.
  std::array<money::Percentage, 7> weekday{};
  money::Percentage outside_hours{money::whole};  ///< Likewise outside the crew's hours.
};

struct LabourLine {
  std::string task;
  units::Duration person_hours;
  units::Duration crew_hours;  ///< Hours the task takes with the people it has.
  money::Money total;
};

/// A line a task (its sections together), then set-up and clean-up by days on site, then the
/// premium for work on dearer days and outside `hours` (the dearer of the two counts). Hours are
/// priced exactly and rounded once a line.
[[nodiscard]] std::vector<LabourLine> labour(const std::vector<sequence::Work>& work,
                                             const sequence::Programme& programme,
                                             units::Duration daily_set_up,
                                             const Labour& wages,
                                             dates::Hours hours,
                                             money::Rounding rounding);

}  // namespace basinwright::quote
