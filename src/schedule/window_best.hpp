// The best value in a window that only moves forward.
#pragma once

#include <cstddef>
#include <vector>

#include "timeline.hpp"

namespace basinwright::schedule {

/// A monotone queue: values enter by ascending slot, leave from the front, and the front is the
/// best (by `Better`) of those inside. Each value enters and leaves once.
template <class Value, class Better>
class WindowBest {
 public:
  void enter(Slot slot, const Value& value) {
    while (front_ < queue_.size() && !Better{}(queue_.back().value, value)) {
      queue_.pop_back();
    }
    queue_.push_back({slot, value});
  }
  void leave_before(Slot slot) {
    while (front_ < queue_.size() && queue_[front_].slot < slot) {
      ++front_;
    }
  }
  [[nodiscard]] bool empty() const { return front_ == queue_.size(); }
  [[nodiscard]] const Value& best() const { return queue_[front_].value; }

 private:
  struct Entry {
    Slot slot;
    Value value;
  };
  std::vector<Entry> queue_;
  std::size_t front_ = 0;
};

}  // namespace basinwright::schedule
