// The cheapest chain before the painting, by backward recursion over the starts of every link.
#pragma once

#include <vector>

#include "chain_reach.hpp"
#include "goals.hpp"

namespace basinwright::schedule {

class ChainCost {
 public:
  ChainCost(const Setting& setting, const ChainReach& reach, const Goals& goals);

  /// Of the whole programme, facts left out.
  [[nodiscard]] Tally best() const;
  /// The starts that come first in the chain's order among those at this price; what remains of
  /// the price for the painting goes to `rest`.
  [[nodiscard]] std::vector<Booking> first(Tally& rest) const;

 private:
  // From the start of a link on; `same_date`: only where the first work is on the start's date.
  struct Layer {
    Slot from = 0;
    std::vector<Onward> starts;

    [[nodiscard]] const Onward& at_start(Slot start) const { return starts[at(start - from)]; }
    [[nodiscard]] Slot until() const { return from + static_cast<Slot>(starts.size()); }
  };

  [[nodiscard]] Layer last_layer(std::size_t link, std::size_t anchor_class) const;
  [[nodiscard]] Layer layer_before(std::size_t link, const Layer& next) const;
  [[nodiscard]] Layer empty_layer(std::size_t link) const;
  [[nodiscard]] Layer merged(std::size_t anchor) const;
  [[nodiscard]] Onward with_work(const Stretch& stretch, Onward next) const;
  [[nodiscard]] Tally from_start(const Onward& onward, Slot start, std::int32_t last_date) const;
  template <class Visit>
  void for_starts(std::size_t link, Visit visit) const;

  const Setting& setting_;
  const ChainReach& reach_;
  const Goals& goals_;
  std::vector<std::vector<Layer>> by_class_;  // by class and link, from the anchor's link on
  std::vector<Layer> layers_;                 // by link, up to the anchor's
};

}  // namespace basinwright::schedule
