// The best ways to end a programme, by the method that suits the problem.
#pragma once

#include <optional>
#include <vector>

#include "suffixes.hpp"
#include "zone_suffixes.hpp"

namespace basinwright::schedule {

/// `Suffixes` where coats may be reworked, `ZoneSuffixes` where not.
class Endings {
 public:
  Endings(const Setting& setting,
          const UnitStarts& starts,
          const ChainReach& reach,
          Question question) {
    if (setting.problem.units.rework) {
      by_slot_.emplace(setting, starts, reach, question);
    } else {
      by_zone_.emplace(setting, starts, reach, question);
    }
  }

  bool run(std::size_t effort = static_cast<std::size_t>(-1)) {
    return by_slot_ ? by_slot_->run(effort) : by_zone_->run(effort);
  }
  [[nodiscard]] std::size_t labels() const {
    return by_slot_ ? by_slot_->labels() : by_zone_->labels();
  }
  [[nodiscard]] const std::vector<Painting>& paintings() const {
    return by_slot_ ? by_slot_->paintings() : by_zone_->paintings();
  }
  [[nodiscard]] bool ends_for(const Prefix& prefix, const Tally& rest) {
    return by_slot_ ? by_slot_->ends_for(prefix, rest) : by_zone_->ends_for(prefix, rest);
  }

 private:
  std::optional<Suffixes> by_slot_;
  std::optional<ZoneSuffixes> by_zone_;
};

}  // namespace basinwright::schedule
