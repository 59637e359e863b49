// What no season can better: each job alone, and what the crews can do by a date; private to the
// room.
#pragma once

#include <vector>

#include "alone.hpp"

namespace basinwright::season {

/// The k-th job to be painted to the end cannot be so before a date that follows from what all
/// crews together can work and paint by then, from how many jobs they can paint on each date and
/// from how many rows of dates for one coat after the other they have, whatever the jobs and their
/// order. A job that
/// takes the k-th place has at least the value of a last unit on that date, and at least its value
/// alone; the cheapest way to give the jobs their places is an assignment problem.
class Bound {
 public:
  explicit Bound(const Problem& problem);
  /// @param alone of each job the least value that it can have where it is asked
  [[nodiscard]] Value of(const std::vector<Value>& alone) const;

 private:
  const Problem& p_;
  std::vector<std::int32_t> date_of_place_;   ///< Of the last unit of the k-th job.
  std::vector<std::vector<Value>> at_place_;  ///< [job][place]
};

/// The least sum of one cost a row, each in a column of its own; a square of costs. The Hungarian
/// method: it only adds, subtracts and compares, so values in order of their components will do.
/// @source kuhn-munkres
[[nodiscard]] Value least_assignment(const std::vector<std::vector<Value>>& costs);

}  // namespace basinwright::season
