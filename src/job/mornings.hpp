#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Cuts a coat over mornings: painting hours, less what each recoat window takes off the morning of
/// the coat before it, less the vacuuming that the crew's start leaves no room for.
[[nodiscard]] coverage::Cut cut_over_mornings(const Job& job,
                                              const RateBook& rates,
                                              const Plan& plan,
                                              dates::Date start);

}  // namespace basinwright::job
