#include <array>

#include "basinwright/chemistry/acid.hpp"
#include "table.hpp"

namespace basinwright::chemistry {
namespace {

// Mass percent and HCl in mmHg at 20 C.
constexpr sources::Sourced<std::array<Row, 5>> pressures{
    {{{10, 0.0084}, {20, 0.205}, {30, 10.6}, {32, 23.5}, {34, 50.5}}},
    {sources::Kind::from_memory, "hcl-vapour", "table"}};
constexpr double atmosphere = 760.0;  // mmHg

units::PartsPerMillion share_of_air(double pressure) {
  return units::parts_per_million(pressure / atmosphere * 1.0e6);
}

}  // namespace

Vapour vapour_over(const Acid& liquid) {
  const double strength = liquid.strength.in_percent();
  if (strength < pressures.value.front().at) {
    return {share_of_air(pressures.value.front().value), Bound::at_most};
  }
  if (strength > pressures.value.back().at)
    return {share_of_air(pressures.value.back().value), Bound::at_least};
  return {share_of_air(interpolate_exponential(pressures.value, strength)), Bound::equal};
}

}  // namespace basinwright::chemistry
