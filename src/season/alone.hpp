// One job on one crew within windows, solved exactly and remembered; private to the room.
#pragma once

#include <map>
#include <memory>
#include <tuple>
#include <vector>

#include "basinwright/season/problem.hpp"

namespace basinwright::season {

inline std::size_t at(Slot slot) {
  return static_cast<std::size_t>(slot);
}

/// The least value of a job, with how it is had; nothing booked where there are no dates.
struct Single {
  Value value;
  std::optional<Booked> booked;
};
using SinglePtr = std::shared_ptr<const Single>;

/// A candidate's problem with what lies outside the windows closed, and its finishes.
[[nodiscard]] schedule::Problem within(const Candidate& candidate, const Windows& windows);

/// Takes the intersection of a stretch into windows.
void narrow(Windows& windows, const Presence& stretch);

/// Later than any time; less than it, earlier.
inline constexpr std::int32_t all_day = 1'000'000;

class Singles {
 public:
  explicit Singles(const Problem& problem) : p_(problem) {}
  [[nodiscard]] const Problem& problem() const { return p_; }
  /// The best of a job on a crew that may be there within the windows only.
  [[nodiscard]] SinglePtr best(std::size_t job, std::size_t crew, const Windows& windows);
  /// Single jobs solved so far.
  [[nodiscard]] std::size_t solved() const { return solved_; }

 private:
  using Key = std::tuple<std::size_t, std::size_t, std::vector<std::int32_t>>;
  [[nodiscard]] Single solve(std::size_t job, std::size_t crew, const Windows& windows) const;

  const Problem& p_;
  std::map<Key, SinglePtr> known_;
  std::size_t solved_ = 0;
};

}  // namespace basinwright::season
