// When weeks are alike, what fits none of them fits none to come.
#pragma once

#include <cstdint>
#include <optional>

#include "basinwright/schedule/solve.hpp"
#include "instance.hpp"

namespace basinwright::sequence {

/// How many days have to be looked at so that a unit without a start in them has none later either;
/// nothing when that cannot be said, or they are more than `most_days`.
///
/// From the anchor (the etch's rinse) to the end of the last coat a programme spans only so many
/// slots, since every window in it ends. Where from some day on the weeks are alike, or later ones
/// are open for less, such a stretch can be moved back by whole weeks, to an anchor no earlier than
/// the earliest there is: waiting before the etch is free. So one week of anchors and one span tell
/// all. Weeks are alike past the last hour of weather, without clock changes and first light, where
/// no day of those looked at is closed and no later one has painting hours that they have not.
/// `weeks_may_tell` is whether it may be said at all, whatever the reason.
[[nodiscard]] bool weeks_may_tell(const ProgrammeQuestion& question,
                                  const Setting& setting,
                                  const Instance& instance);
[[nodiscard]] std::optional<int> days_that_tell(const ProgrammeQuestion& question,
                                                const Setting& setting,
                                                const Instance& instance,
                                                const schedule::Infeasible& reason);

/// The first days of jobs that find no dates as this one does, both included.
struct FirstDays {
  dates::Date from, to;
};

/// By how much the drains of a job and of one that finds no dates as it does may differ.
inline constexpr std::int64_t quarters_apart = 7 * dates::quarters_per_day;

/// For which jobs that are the same but for the first day, and a drain that is longer or shorter by
/// up to `quarters_apart`, there are no dates for the same reason; nothing when that cannot be
/// said.
///
/// Where all days from the first on are alike, what fits after an etch does not depend on when the
/// etch is. Only for a calendar without clock changes, and an etch that waits for no cement.
///
/// @param told days after which the weeks told that there are none: `Blocked::weeks_told`
[[nodiscard]] std::optional<FirstDays> without_dates_alike(const ProgrammeQuestion& question,
                                                           int told);

}  // namespace basinwright::sequence
