// Figures that stand in the crew's and the client's sentences and nowhere in the plan.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::report::figures {

/// How long an eye is rinsed.
inline constexpr sources::Sourced<units::Duration> eye_rinse{
    units::minutes(15), {sources::Kind::from_memory, "ansi-z358.1", "flow of an eyewash"}};
/// Turns of the stirrer that make one paint of two parts.
inline constexpr sources::Sourced<int> stirrer_turns{
    300, {sources::Kind::common_practice, "kit-mixing", "turns of the stirrer"}};
/// A coat still tacky after this was not stirred enough.
inline constexpr sources::Sourced<units::Duration> tacky_from{
    units::hours(4), {sources::Kind::common_practice, "kit-mixing", "tacky after 4 to 6 h"}};
inline constexpr sources::Sourced<units::Duration> tacky_to{
    units::hours(6), {sources::Kind::common_practice, "kit-mixing", "tacky after 4 to 6 h"}};

}  // namespace basinwright::report::figures
