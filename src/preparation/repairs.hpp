#pragma once

#include <optional>

#include "basinwright/preparation/route.hpp"

namespace basinwright::preparation {

/// What fills the cracks and hollows.
struct Repairs {
  units::Volume filler;
  units::Volume mortar;
  units::Area area;         ///< Worked over: a hand's width along cracks, the divots themselves.
  units::Area filler_area;  ///< Of it, where filler goes.
};

/// Filler for cracks opened to a V down to their root and for shallow divots, mortar for deep ones
/// and for drummy render cut out. Hairline cracks are bridged by the coating.
/// Records quantities.filler.litres and quantities.mortar_l with a step for each crack and hollow.
[[nodiscard]] Repairs repairs_of(const Question& question, trace::Trace& trace);

/// Time still to pass before cement work may be etched and painted; nothing when none is new.
[[nodiscard]] std::optional<units::Duration> cement_wait(const Question& question,
                                                         const Repairs& repairs);

}  // namespace basinwright::preparation
