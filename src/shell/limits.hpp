// What a tape survey may look like before it is doubted, with where each limit comes from.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::shell::limits {

using sources::Kind;
using sources::Sourced;
using units::Length;

/// Square metres under which a path encloses nothing.
inline constexpr double least_area = 1e-4;

inline constexpr Sourced<Length> tape_misfit{units::millimetres(20.0),
                                             {Kind::common_practice, "tape-survey", "third tape"}};
/// A last wall shorter than this may be the first point, measured again on coming back to it.
inline constexpr Sourced<Length> closing_edge{units::millimetres(100.0),
                                              {Kind::assumed, "tape-survey", "closing error"}};
/// Degrees at a two-tape point: outside them a small error of the tape moves the point far.
inline constexpr Sourced<double> least_tape_angle{
    25.0, {Kind::common_practice, "tape-survey", "angle between tapes"}};
inline constexpr Sourced<double> greatest_tape_angle{
    155.0, {Kind::common_practice, "tape-survey", "angle between tapes"}};

/// Fall over run of a floor people stand on, and the depth down to which they do.
inline constexpr Sourced<double> standing_slope{
    1.0 / 3.0, {Kind::common_practice, "pool-proportions", "slope in shallow water"}};
inline constexpr Sourced<Length> standing_depth{
    units::metres(1.5), {Kind::common_practice, "pool-proportions", "shallow water"}};
inline constexpr Sourced<Length> usual_least_depth{
    units::metres(0.3), {Kind::common_practice, "pool-proportions", "depth"}};
inline constexpr Sourced<Length> usual_greatest_depth{
    units::metres(6.0), {Kind::common_practice, "pool-proportions", "depth"}};
inline constexpr Sourced<double> usual_aspect{
    10.0, {Kind::common_practice, "pool-proportions", "length over width"}};

}  // namespace basinwright::shell::limits
