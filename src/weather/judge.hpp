// One rule against one hour; private to the room.
#pragma once

#include "basinwright/weather/conditions.hpp"
#include "basinwright/weather/gate.hpp"

namespace basinwright::weather {

/// What a rule looks at in an hour, against its limit.
struct Judged {
  bool known = false;
  bool holds = false;
  Quality quality = Quality::missing;
  Figure measured, limit;
};

[[nodiscard]] Judged judge(Rule rule, const Gate& gate, const State& state);

}  // namespace basinwright::weather
