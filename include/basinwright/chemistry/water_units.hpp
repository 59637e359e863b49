// Water as it is metered and billed, and how long a fill takes.
#pragma once

#include "basinwright/units/unit.hpp"

namespace basinwright::chemistry {

/// Billing units of water. A hundred cubic feet is 748.052 US gallons; bills round that to 748.
inline constexpr units::Unit<units::Volume> hundred_cubic_feet{2.8316846592, "HCF"};
inline constexpr units::Unit<units::Volume> kilolitres{1.0, "kL"};
inline constexpr units::Unit<units::Volume> thousand_us_gallons{3.785411784, "1000 US gal"};

/// How a meter's part of a unit is billed.
enum class Metering {
  exact,    ///< As it is.
  nearest,  ///< To the nearest whole unit, halves up.
  whole     ///< Whole units only; what is over runs into the next bill.
};

/// The number of units billed for a volume.
/// @throws std::invalid_argument for a volume that is negative or not finite
[[nodiscard]] double billed_units(units::Volume used,
                                  const units::Unit<units::Volume>& unit,
                                  Metering metering);

/// t = V / Q.
/// @param flow of the hose, above 0
/// @throws std::invalid_argument otherwise
[[nodiscard]] units::Duration fill_time(units::Volume volume, units::Flow flow);

/// The flow of a hose from the time it takes to fill a bucket: V / t.
/// @throws std::invalid_argument without a time above 0
[[nodiscard]] units::Flow bucket_test(units::Volume bucket, units::Duration time);

}  // namespace basinwright::chemistry
