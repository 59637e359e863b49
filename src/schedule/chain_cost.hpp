// The cheapest chain before the painting, by backward recursion over the starts of every link.
#pragma once

#include <vector>

#include "chain_reach.hpp"
#include "goals.hpp"

namespace basinwright::schedule {

class ChainCost {
 public:
  ChainCost(const Setting& setting, const ChainReach& reach, const Goals& goals, Slot finish);

  /// Of the whole programme, facts left out.
  [[nodiscard]] Tally best() const;
  /// Of the starts at this price those that come last up to the link that empties, in the chain's
  /// order, and then those that come first; what remains of the price for the painting goes to
  /// `rest`.
  [[nodiscard]] std::vector<Booking> first(Tally& rest) const;

 private:
  // Ways of a link by number, [from, until).
  struct Span {
    std::size_t from = 0;
    std::size_t until = 0;
  };
  // The price from a link on, by the way it is done; only of the ways in a span.
  struct Layer {
    std::size_t from = 0;
    std::vector<Onward> prices;

    [[nodiscard]] std::size_t until() const { return from + prices.size(); }
    [[nodiscard]] Onward of(std::size_t way) const {
      return from <= way && way < until() ? prices[way - from] : Onward{};
    }
    void trim();
  };
  using Layers = std::vector<Layer>;  // by link

  [[nodiscard]] const std::vector<Stretch>& ways(std::size_t link) const {
    return link < own_.size() && reach_.ways[link].empty() ? own_[link] : reach_.ways[link];
  }
  [[nodiscard]] Layers after_anchor(std::size_t anchor_class) const;
  [[nodiscard]] Span span_of(std::size_t link, std::size_t anchor_class) const;
  [[nodiscard]] Layer last_layer(const Onwards& after, Span span) const;
  [[nodiscard]] Layer layer_before(std::size_t link, const Layer& next, Span span) const;
  [[nodiscard]] Layer layer_before_endless(std::size_t link, const Layer& next, Span span) const;
  [[nodiscard]] Layer merged(std::size_t anchor) const;
  // The price of a way of a link before continuations at these prices.
  void put_price(std::size_t link,
                 const Stretch& stretch,
                 const Tally& any,
                 const Tally& same_date,
                 Onward& price) const;
  [[nodiscard]] std::int64_t empty(std::size_t link, const Stretch& stretch) const;
  [[nodiscard]] Tally from_start(const Onward& onward, Slot start, std::int32_t last_date) const;
  [[nodiscard]] Onward onward(std::size_t link, std::size_t anchor_class, std::size_t way) const;
  template <class Fits>
  [[nodiscard]] std::size_t chosen_way(std::size_t link, Reach starts, Fits fits) const;

  const Setting& setting_;
  const ChainReach& reach_;
  const Goals& goals_;
  Slot finish_;
  std::size_t links_;
  std::size_t anchor_;                     // the first link that is priced by class
  std::vector<std::vector<Stretch>> own_;  // ways that the reach left out, as far as they lead on
  std::vector<Layers> by_class_;           // from that link on
  Layers layers_;                          // before it, and it
};

}  // namespace basinwright::schedule
