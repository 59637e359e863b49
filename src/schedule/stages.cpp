#include "stages.hpp"

#include <algorithm>
#include <utility>

namespace basinwright::schedule {

std::size_t Stages::number(Coats done) {
  // There are few, and `without` asks once for each: no index is worth its while.
  const auto known = std::find(coats_.begin(), coats_.end(), done);
  const auto number = static_cast<std::size_t>(known - coats_.begin());
  if (known == coats_.end()) {
    Slot left = 0;
    for (std::size_t section = 0; section < done.size(); ++section) {
      for (std::size_t coat = done[section]; coat < setting_.coats(); ++coat) {
        left += setting_.slots(coat, section);
      }
    }
    left_.push_back(left);
    without_.resize(left_.size() * done.size(), 0);
    coats_.push_back(std::move(done));
  }
  return number;
}

std::size_t Stages::without(std::size_t stage, std::size_t section) {
  const std::size_t index = stage * setting_.sections() + section;
  if (without_[index] == 0) {
    Coats coats = coats_[stage];
    --coats[section];
    const std::size_t result = number(std::move(coats));  // may grow `without_`
    without_[index] = result + 1;
  }
  return without_[index] - 1;
}

bool Stages::may_remove(std::size_t stage, std::size_t section) const {
  const Coats& coats = coats_[stage];
  if (coats[section] <= setting_.standing.sections[section].done) {
    return false;
  }
  const std::size_t coat = coats[section] - 1;
  return section + 1 == coats.size() || coats[section + 1] <= coat ||
         setting_.standing.done(coat, section + 1);
}

}  // namespace basinwright::schedule
