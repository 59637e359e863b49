#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Where each kit of primer and coats runs out, section by section, deep end first.
[[nodiscard]] std::vector<KitMark> kit_marks(const Job& job, const Plan& plan);

/// Kits, marks and the timetable of every painting morning of the programme.
/// @param texture  area that a rough surface counts for, over its flat area
[[nodiscard]] MixingPlan mixing_plan(
    const Job& job, const RateBook& rates, const Circumstances& now, Plan& plan, double texture);

}  // namespace basinwright::job
