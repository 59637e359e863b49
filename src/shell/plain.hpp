// Quantities out of the plain metres of the geometry, and where such figures come from.
#pragma once

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"

namespace basinwright::shell {

inline constexpr sources::Source by_green{
    sources::Kind::published, "green-theorem", "region from its boundary"};

[[nodiscard]] inline units::Length metres(double value) {
  return units::Length::from_si(value);
}
[[nodiscard]] inline units::Area area(double value) {
  return units::Area::from_si(value);
}
[[nodiscard]] inline units::Volume volume(double value) {
  return units::Volume::from_si(value);
}

}  // namespace basinwright::shell
