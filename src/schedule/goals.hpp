// What the painting costs after a chain that ends at a slot, recleaned in between or not.
#pragma once

#include <optional>
#include <vector>

#include "suffixes.hpp"

namespace basinwright::schedule {

/// The cheapest continuation after an end, for work before it on another date and on the date of
/// the continuation's first work.
struct Onward {
  Tally any = no_tally;
  Tally same_date = no_tally;  ///< Only those whose first work is on the date of the slot before.

  /// With the attendance of the date saved where both work on it.
  [[nodiscard]] Tally best(std::int64_t attendance) const {
    return same_date == no_tally ? any : std::min(any, same_date.costing(-attendance));
  }
};

class Goals {
 public:
  Goals(const Setting& setting, const std::vector<Painting>& paintings, Slot earliest_end);

  /// Anchors fall into classes: within one, the same paintings can follow. Class 0 is none.
  [[nodiscard]] std::size_t classes() const { return onward_.size(); }
  [[nodiscard]] std::size_t class_of(Slot anchor) const;
  /// After an anchor of a class and a chain that ends at `end`.
  [[nodiscard]] const Onward& after(std::size_t anchor_class, Slot end) const {
    return onward_[anchor_class][at(end)];
  }
  /// After a reclean that ends at `end`.
  [[nodiscard]] Tally after_reclean(Slot end) const {
    return painted_[class_of(end)][at(end)].best(setting_.problem.attendance);
  }

 private:
  using Table = std::vector<std::vector<Onward>>;  // by class and end

  void add(Table& table, const Painting& painting);
  void spread(Table& table) const;
  void reclean(Slot earliest_end);

  const Setting& setting_;
  std::vector<Slot> anchors_;  // the least of each class but class 0, ascending
  Table onward_;
  Table painted_;  // without recleans, for what follows one
};

}  // namespace basinwright::schedule
