#include "basinwright/chemistry/ph.hpp"

#include <cmath>
#include <stdexcept>

#include "constants.hpp"

namespace basinwright::chemistry {

Ph strong_acid_ph(Molarity acid) {
  const double a = acid.in_moles_per_litre();
  if (!std::isfinite(a) || a < 0.0) throw std::invalid_argument("acid is negative or not finite");
  return ph(-std::log10((a + std::sqrt(a * a + 4.0 * water_ions.value)) / 2.0));
}

Molarity strong_acid_at(Ph reading) {
  const double h = std::pow(10.0, -reading.value());
  const double a = h - water_ions.value / h;
  return moles_per_litre(a > 0.0 ? a : 0.0);
}

}  // namespace basinwright::chemistry
