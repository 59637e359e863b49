// Jobs begun no earlier than their dates ask for; private to the room.
#pragma once

#include "insertion.hpp"

namespace basinwright::season {

/// The same season with each job begun on the latest date on which it may be begun with all its
/// values kept beside the others: the last of the season first, so that those before it may move
/// into what it leaves. A closed slot never brings a finish forward (docs/season.md), so the latest
/// date is found by halving; a further visit must shorten
/// the job by a week. Jobs that have begun stay
/// as they are.
[[nodiscard]] Season begun_late(Singles& singles, Season season);

}  // namespace basinwright::season
