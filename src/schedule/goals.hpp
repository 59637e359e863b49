// What the painting costs after a chain that ends at a slot, recleaned in between or not.
#pragma once

#include <algorithm>
#include <vector>

#include "painting.hpp"

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
  [[nodiscard]] Onward or_else(const Onward& other) const {
    return {std::min(any, other.any), std::min(same_date, other.same_date)};
  }
};

/// Continuations by slot; none outside.
struct Onwards {
  Slot from = 0;
  std::vector<Onward> slots;

  [[nodiscard]] Slot until() const { return from + static_cast<Slot>(slots.size()); }
  [[nodiscard]] bool has(Slot slot) const { return from <= slot && slot < until(); }
  [[nodiscard]] Onward at_slot(Slot slot) const {
    return has(slot) ? slots[at(slot - from)] : Onward{};
  }
};

/// Anchors fall into classes: within one, the same paintings can follow. Class 0 is the paintings
/// after a reclean, which may follow every anchor; a chain's continuations are those of its
/// anchor's class and of class 0.
class Goals {
 public:
  Goals(const Setting& setting, const std::vector<Painting>& paintings, Slot earliest_end);

  [[nodiscard]] std::size_t classes() const { return by_class_.size(); }
  [[nodiscard]] std::size_t class_of(Slot anchor) const;
  /// The least anchor of a class, and of the one after it.
  [[nodiscard]] Slot anchor_from(std::size_t anchor_class) const;
  [[nodiscard]] Slot anchor_until(std::size_t anchor_class) const;
  /// By the chain's end; never before the class's least anchor.
  [[nodiscard]] const Onwards& after_chain(std::size_t anchor_class) const {
    return by_class_[anchor_class];
  }
  /// After a reclean that ends at `end`.
  [[nodiscard]] Tally after_reclean(Slot end) const {
    return painted_[class_of(end)].at_slot(end).best(setting_.problem.attendance);
  }

 private:
  [[nodiscard]] std::vector<Onwards> spread(const std::vector<Painting>& paintings) const;
  [[nodiscard]] Onwards spread(const std::vector<Painting>& paintings, Slot from) const;
  [[nodiscard]] std::vector<Painting> recleaned() const;

  const Setting& setting_;
  Slot earliest_end_;
  std::vector<Slot> anchors_;  // the least of each class but class 0, ascending
  std::vector<Onwards> by_class_;
  std::vector<Onwards> painted_;  // as the paintings stand, for what follows a reclean
};

}  // namespace basinwright::schedule
