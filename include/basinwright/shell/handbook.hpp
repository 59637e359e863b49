// The trade's short cuts for the volume of a pool, to hold beside the exact one.
#pragma once

#include <string_view>
#include <vector>

#include "basinwright/shell/pool.hpp"
#include "basinwright/shell/take_off.hpp"
#include "basinwright/sources/source.hpp"

namespace basinwright::shell {

/// One short cut applied to a pool.
struct HandbookVolume {
  std::string_view rule;  ///< In words: "length x width x mean depth".
  sources::Source source;
  Area plan_area;
  Volume volume;
  double difference = 0.0;  ///< (short cut - exact) / exact; 0.05 is 5 % too much.
};

/// The short cuts that apply to the outline's kind; none for a freeform outline.
///
/// volume = plan by rule x ((shallowest + deepest) / 2 - rim to water). Rectangle and rounded
/// rectangle L W; circle and ellipse pi/4 L W; stadium also the oval rule 0.893 L W; kidney
/// 0.45 (A + B) L over both widths and the whole length.
/// @param exact  The pool's own take-off.
/// @source pool-volume-shortcuts, method.md "Handbook short cuts"; within 5 % for usual pools,
///         14 % off for a hopper or for pi/4 on a stadium
[[nodiscard]] std::vector<HandbookVolume> handbook_volumes(const Pool& pool, const TakeOff& exact);

}  // namespace basinwright::shell
