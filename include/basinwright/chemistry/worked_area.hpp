// An area to be worked on, with the step of the calculation it came from.
#pragma once

#include <string_view>

#include "basinwright/units/quantity.hpp"

namespace basinwright::chemistry {

/// An area and the key of the recorded step that gave it; the key must outlive the value.
struct WorkedArea {
  units::Area area{};
  std::string_view key = "takeoff.painted_area_m2";
};

}  // namespace basinwright::chemistry
