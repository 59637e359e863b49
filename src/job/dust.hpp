// Old paint that comes off dry.
#pragma once

#include "basinwright/preparation/thresholds.hpp"
#include "basinwright/trace/trace.hpp"

namespace basinwright::job {

/// What is ground off: all of the film, or only its skin.
struct GroundOff {
  units::Area stripped, abraded;
};

[[nodiscard]] units::Mass dust_of(const GroundOff& areas,
                                  const preparation::Thresholds& thresholds,
                                  trace::Trace& trace);

}  // namespace basinwright::job
