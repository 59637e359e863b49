// The cheapest programmes at one finish that keep a slack, and the most slack the cheapest can
// keep.
#pragma once

#include <memory>

#include "chain_cost.hpp"
#include "endings.hpp"
#include "finish_search.hpp"

namespace basinwright::schedule {

/// What the programmes are priced on.
struct Priced {
  const Problem& problem;
  const Standing& standing;
  Slot finish;
  std::unique_ptr<Look> look;  ///< Far enough ahead for every programme with this finish.
};

/// All programmes with a finish in which every window still to be kept is kept by `slack`.
class Pricing {
 public:
  explicit Pricing(Priced& priced);
  /// More slack than in another.
  Pricing(const Pricing& other, Slot slack);
  Pricing(const Pricing&) = delete;  // the parts refer to each other
  Pricing& operator=(const Pricing&) = delete;

  /// May there be such a programme? Far less work than a price.
  [[nodiscard]] bool possible() const { return endings_ && !endings_->paintings().empty(); }
  /// Of what is left; `no_tally` when there is no such programme.
  [[nodiscard]] Tally best();
  /// The one that the fixed order puts first; only where there is one.
  [[nodiscard]] std::vector<Booking> bookings();

 private:
  void end();

  Slot finish_;
  std::unique_ptr<Look> look_;
  std::optional<Endings> endings_;
  std::optional<Goals> goals_;
  std::optional<ChainCost> chain_;
};

struct Slackest {
  Tally price;
  std::vector<Booking> bookings;
  std::optional<Slot> slack;  ///< Nothing where no window is left to be kept.
};

/// Of the cheapest programmes those whose smallest slack is largest. Only where units are left to
/// do and the finish can be had.
[[nodiscard]] Slackest slackest(Priced& priced);

}  // namespace basinwright::schedule
