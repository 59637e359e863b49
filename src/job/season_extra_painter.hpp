// A job done with one more painter in one week; private to the room.
#pragma once

#include <memory>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/season/problem.hpp"

namespace basinwright::job {

using CandidatePtr = std::shared_ptr<const season::Candidate>;

/// The dates of a week, as day numbers.
struct Week {
  std::int32_t from = 0, to = 0;  ///< Both inclusive.
};

/// All coats in the week, each as long as with the painter; what comes before and after them as
/// without. Nothing where the two do not have the same tasks.
[[nodiscard]] CandidatePtr painted_in(const season::Candidate& usual,
                                      const season::Candidate& more,
                                      const Week& week);

/// All work up to the last rinse in the week, each task as long as with the painter; the rest as
/// without. Nothing where the two do not have the same tasks, or none is rinsed.
[[nodiscard]] CandidatePtr prepared_in(const season::Candidate& usual,
                                       const season::Candidate& more,
                                       const Week& week);

}  // namespace basinwright::job
