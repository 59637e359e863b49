// The programme's question as the general problem, kept so that it can be asked again and again.
#pragma once

#include <array>
#include <memory>

#include "basinwright/schedule/problem.hpp"
#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// A question under one record of weather over a fixed number of days.
///
/// The question must outlive it. Its own weather, if any, is not looked at.
class Posed {
 public:
  /// @param record  empty: the calendar alone
  /// @param days    1 or more
  Posed(const ProgrammeQuestion& question, const weather::Record& record, int days);
  ~Posed();
  Posed(Posed&&) noexcept;
  Posed& operator=(Posed&&) noexcept;

  [[nodiscard]] const schedule::Problem& problem() const;
  /// What the clock shows when a slot begins.
  [[nodiscard]] dates::Moment moment(schedule::Slot slot) const;
  /// When the pool is full, for a fill that starts at a slot.
  [[nodiscard]] dates::Moment full(schedule::Slot fill) const;
  /// Slots within which painting hours depend on the weather after them.
  [[nodiscard]] schedule::Slot looks_ahead() const;

  /// Painting hours of the calendar before `until`, in slots, by the rule that closed each first;
  /// the last one counts those that stayed open.
  static constexpr std::size_t rules = weather::all_rules.size();
  [[nodiscard]] std::array<std::int64_t, rules + 1> painting_slots(schedule::Slot until) const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace basinwright::sequence
