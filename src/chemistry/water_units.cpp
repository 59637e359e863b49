#include "basinwright/chemistry/water_units.hpp"

#include <cmath>

#include "contract.hpp"

namespace basinwright::chemistry {

double billed_units(units::Volume used, const units::Unit<units::Volume>& unit, Metering metering) {
  require_amount(used, "water used is negative or not finite");
  const double exact = used.in(unit);
  constexpr double rounding = 1.0e-9;  // A unit that is whole but for its last bits is whole.
  switch (metering) {
    case Metering::exact:
      return exact;
    case Metering::nearest:
      return std::round(exact);
    case Metering::whole:
      return std::floor(exact + rounding);
  }
  return exact;
}

units::Duration fill_time(units::Volume volume, units::Flow flow) {
  require_amount(volume, "volume is negative or not finite");
  require_some(flow, "the hose gives no water");
  return volume / flow;
}

units::Flow bucket_test(units::Volume bucket, units::Duration time) {
  require_some(bucket, "the bucket holds nothing");
  require_some(time, "no time passed");
  return bucket / time;
}

}  // namespace basinwright::chemistry
