#include "basinwright/chemistry/gas.hpp"

#include "basinwright/chemistry/substances.hpp"
#include "basinwright/units/unit.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

// L atm / (mol K)
constexpr sources::Sourced<double> gas_constant{0.082057366,
                                                {sources::Kind::published, "gas-constant", "R"}};
constexpr double room_temperature = 293.15;  // K

}  // namespace

units::Volume gas_volume(Moles amount) {
  return units::litres(amount.count() * gas_constant.value * room_temperature);
}

units::Volume carbon_dioxide_of(units::Mass bicarbonate) {
  return gas_volume(bicarbonate / molar_mass(Substance::sodium_bicarbonate));
}

units::Volume carbon_dioxide_from_bicarbonate(const Acid& acid, units::Volume volume) {
  return gas_volume(acid.molarity * volume);
}

units::Volume carbon_dioxide_from_lime(const Acid& acid, units::Volume volume) {
  return carbon_dioxide_from_bicarbonate(acid, volume) / 2.0;
}

GasInShell gas_in_shell(units::Volume gas, units::Volume space, units::PartsPerMillion limit) {
  require_amount(gas, "gas is negative or not finite");
  require_some(space, "the shell has no volume");
  const double share = gas / space;
  constexpr double million = 1.0e6;
  return {units::fraction(share),
          units::parts_per_million(share * million),
          gas * (million / limit.count())};
}

}  // namespace basinwright::chemistry
