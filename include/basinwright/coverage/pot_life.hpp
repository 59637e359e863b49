// How long mixed paint stays good at a temperature.
#pragma once

#include <optional>
#include <vector>

#include "basinwright/sources/source.hpp"
#include "basinwright/units/quantity.hpp"
#include "basinwright/units/temperature.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::coverage {

/// One line of a data sheet's table of pot lives.
struct PotLifePoint {
  units::Temperature temperature;
  units::Duration life;
};

/// Pot life, counted from the start of mixing. With a table the table alone counts.
struct PotLife {
  sources::Sourced<units::Duration> life;   ///< At `at`; unused with a table.
  sources::Sourced<units::Temperature> at;  ///< Of the mixed paint.
  sources::Sourced<units::TemperatureDifference> halved_by{
      units::kelvins(10), {sources::Kind::published, "ufgs-09971", "3.7.1.3"}};
  std::vector<PotLifePoint> table;  ///< Two points or more, coldest first, lives not growing.
};

/// Pot life at a temperature of the mixed paint; nothing outside the table.
///
/// Between two points of the table the life runs straight on a logarithmic scale,
/// P = P1 (P2 / P1)^((T - T1) / (T2 - T1)). Without a table P = life 2^(-(T - at) / halved_by)
/// above `at`, and `life` at or below it: the rule of thumb is not trusted to lengthen a pot life.
/// @throws std::invalid_argument if a life is not positive, or the table is too short or unordered
/// @source ufgs-09971, 3.7.1.3 (halves for 10 C more); a data sheet's own table goes first
[[nodiscard]] std::optional<units::Duration> pot_life_at(const PotLife& paint,
                                                         units::Temperature temperature);

/// The warmest paint that stays good for `least`, the inverse of `pot_life_at`: nothing when it
/// never does, the last point of a table that does not reach so far.
/// @param least above 0
/// @throws std::invalid_argument as `pot_life_at`, or unless `least` is positive
[[nodiscard]] std::optional<units::Temperature> warmest_for(const PotLife& paint,
                                                            units::Duration least);

}  // namespace basinwright::coverage
