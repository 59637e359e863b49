#pragma once

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// When painting may begin, and how much larger a rough surface counts than its flat area.
struct MorningQuestion {
  dates::Date start;
  double texture = 1.0;
  std::vector<SectionPart> named;  ///< Sections that the job names; empty: none.
};

/// Cuts a coat over mornings, at the sections that the job names where each of them fits one:
/// painting hours, less what each recoat window takes off the morning of the coat before it, less
/// the vacuuming that the crew's start leaves no room for.
[[nodiscard]] coverage::Cut cut_over_mornings(const Job& job,
                                              const RateBook& rates,
                                              const Plan& plan,
                                              const MorningQuestion& question);

}  // namespace basinwright::job
