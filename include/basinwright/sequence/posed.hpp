// The programme's question as the general problem, kept so that it can be asked again and again.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "basinwright/schedule/problem.hpp"
#include "basinwright/sequence/programme.hpp"

namespace basinwright::sequence {

/// The work after the last coat: unmasking as soon as the crew is there, after the cure the refit,
/// then the fill.
struct AfterCoats {
  schedule::Slot unmask = 0, refit = 0;  ///< 0: none, or done.
  /// By the end slot of the last coat: when it has cured; nothing beyond the horizon.
  std::vector<std::optional<schedule::Slot>> cured;
  bool filled = false;  ///< The fill was begun.
};

/// A question about a job that has begun, cut so that everything in it is done or still to do. Work
/// broken off is split into what is done and the rest, a section painted in part into two sections;
/// an etch broken off is done again whole, since acid goes to its last rinse in one shift. Work
/// before anything that was begun counts as done, recorded or not. The rest is of no use for
/// `programme`, which does this itself.
[[nodiscard]] ProgrammeQuestion frozen(const ProgrammeQuestion& question);

/// Everything of a begun job that can still be lost: each section with a coat to come on one that
/// is on, and the etch. For windows that could be kept, yet not beside other work.
/// @param question  as `frozen` gives it
[[nodiscard]] Lost at_stake(const ProgrammeQuestion& question);

/// A question under one record of weather over a fixed number of days.
///
/// The question must outlive it. Its own weather, if any, is not looked at.
class Posed {
 public:
  /// @param record  empty: the calendar alone
  /// @param days    1 or more
  /// @param lost    of a begun job, to be made good as `programme` does: sections abraded and
  ///                cleaned, the bare shell cleaned, windows used to their true ends
  Posed(const ProgrammeQuestion& question,
        const weather::Record& record,
        int days,
        const Lost& lost = {});
  ~Posed();
  Posed(Posed&&) noexcept;
  Posed& operator=(Posed&&) noexcept;

  [[nodiscard]] const schedule::Problem& problem() const;
  /// What the clock shows when a slot begins.
  [[nodiscard]] dates::Moment moment(schedule::Slot slot) const;
  /// When the pool is full, for a fill that starts at a slot.
  [[nodiscard]] dates::Moment full(schedule::Slot fill) const;
  /// Task and section of a booking of the problem, as a programme calls them.
  [[nodiscard]] std::pair<std::string, std::string> named(const schedule::Booking& booking) const;
  [[nodiscard]] AfterCoats after_coats() const;
  /// Slots of vacuuming before the first section of a morning.
  [[nodiscard]] schedule::Slot vacuumed_before() const;
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
