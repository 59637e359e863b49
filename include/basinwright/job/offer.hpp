// What a quotation says beside the plan: until when it holds, and what the client may add.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basinwright/job/plan.hpp"

namespace basinwright::job {

/// Something the client may add, with what it adds to the total.
struct Option {
  std::string code;  ///< "one-more-coat", or empty for one of the rate book's.
  std::string name;  ///< As the rate book has it.
  money::Money adds;
  std::optional<dates::Moment> refill_done;  ///< When the pool is full again with it.
};

struct Offer {
  dates::Date date;
  dates::Date valid_until;
  std::vector<Option> options;
};

/// How long a quotation holds when nobody says.
inline constexpr Sourced<units::Duration> usual_validity{
    units::days(30), {sources::Kind::assumed, "quotation-validity", "thirty days"}};

/// The offer for a plan made from the same job, rates and circumstances. Each option is the whole
/// job planned again with it.
[[nodiscard]] Offer offer_of(const Job& job,
                             const RateBook& rates,
                             const Circumstances& now,
                             const Plan& plan);

/// What a proper quotation still lacks; each a warning to the contractor, never an error.
[[nodiscard]] std::vector<Mismatch> quotation_gaps(const Job& job);

}  // namespace basinwright::job
