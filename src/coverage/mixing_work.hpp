// What a coat session asks of its crew; shared by the timetable and its obstacles.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "basinwright/coverage/mixing.hpp"

namespace basinwright::coverage {

/// Work as the area one painter at a time would cover, his own mixing counted in.
struct MixingWork {
  units::Area kit;      ///< A whole kit and the mixing of the next.
  units::Area oldest;   ///< The kit that lasts longest.
  units::Area session;  ///< The whole coat.
};

/// What a painter who mixes does not paint for every further kit.
units::Area lost_to_mixing(const MixingSession& session);
MixingWork work_of(const MixingSession& session, std::int64_t kits);

/// `count` rounded up; a hair over a whole number (1e-9) is that number.
std::int64_t whole_above(double count);
/// A stage that lasts `ratio` times as long as a kit holds so many kits at once, of `kits` in all.
std::int64_t kits_at_once(double ratio, std::int64_t kits);
/// The fewest painters who do the work in the time; nothing when no crew can.
std::optional<std::int64_t> painters_within(units::Area work,
                                            const MixingSession& session,
                                            units::Duration time);
/// Kits being mixed at once by the crew given but with so many painters.
std::int64_t mixers_for(const MixingSession& session, std::int64_t kits, std::int64_t painters);

/// What is in the way of a timetable whose other members are set.
std::vector<Obstacle> obstacles_of(const MixingSession& session, const MixingTimetable& timetable);

}  // namespace basinwright::coverage
