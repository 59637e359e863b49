// The words of crew and mixing, for every page that speaks of them.
#pragma once

#include <string>
#include <vector>

#include "basinwright/job/mixing_plan.hpp"
#include "basinwright/job/plan.hpp"
#include "basinwright/units/parse.hpp"

namespace basinwright::report {

/// "deep wall, 3.20 m from the corner, or down to 0.92 m below the rim".
[[nodiscard]] std::string mark_words(const job::KitMark& mark,
                                     const job::Plan& plan,
                                     units::System system);

/// "one cuts in, one rolls, a third mixes".
[[nodiscard]] std::string crew_words(const job::MixingPlan& mixing);

/// Why a morning cannot work as it is, and what would help; empty when it works.
[[nodiscard]] std::vector<std::string> hindrances(const job::PaintingMorning& morning,
                                                  units::System system);

/// What to do the evening before for parts that will be too cold or too warm; empty: nothing.
[[nodiscard]] std::string evening_before(const job::PaintingMorning& morning,
                                         const job::Plan& plan,
                                         units::System system);

/// A local time so long after a moment, to the minute: "07:46".
[[nodiscard]] std::string minute_of(dates::Moment opening, units::Duration after);

/// The date and minute, `YYYY-MM-DDTHH:MM`.
[[nodiscard]] std::string iso_minute(dates::Moment opening, units::Duration after);

}  // namespace basinwright::report
