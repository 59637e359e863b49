#include "basinwright/chemistry/checks.hpp"

#include <cmath>

#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

// A billionth over a whole part, or over the margin, is rounding.
constexpr double rounding = 1.0e-9;

int parts_of(units::Area area, units::Area part) {
  require_amount(area, "area is negative or not finite");
  return static_cast<int>(std::ceil(area / part - rounding));
}

}  // namespace

int ph_readings(units::Area area) {
  return 2 * parts_of(area, ph_reading_area.value);
}

int dryness_sheets(units::Area area) {
  return parts_of(area, dryness_sheet_area.value);
}

bool surface_is_rinsed(Ph surface, Ph rinse_water) {
  return std::abs(surface.value() - rinse_water.value()) <= surface_ph_margin.value + rounding;
}

}  // namespace basinwright::chemistry
