#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// The refill and the start-up, still without dates: what goes in does not depend on the day.
/// Records quantities.refill.* and quantities.start_up.*.
/// @param with_indices whether the saturation index is told, which a line of a batch does not show
[[nodiscard]] WaterPlan water_plan_of(const Job& job,
                                      const RateBook& rates,
                                      Plan& plan,
                                      bool with_indices = true);

/// The day of each addition: each is poured, stirred in and read again by somebody on site, so none
/// falls on a day off; one chemical a day, none but chlorine before the quiet time is over.
void date_additions(const dates::WorkCalendar& calendar,
                    const sequence::Programme& programme,
                    WaterPlan& water);

/// How many of the meter's units a volume is.
[[nodiscard]] double billed_of(units::Volume water, WaterUnit unit);

}  // namespace basinwright::job
