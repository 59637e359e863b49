#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// What the programme of a plan depends on; the plan, from its first day to its tap, must be made
/// so far and outlive the question.
[[nodiscard]] sequence::ProgrammeQuestion question_of(const Job& job,
                                                      const RateBook& rates,
                                                      const Circumstances& now,
                                                      const Plan& plan);

}  // namespace basinwright::job
