#include "basinwright/chemistry/waste_water.hpp"

#include <stdexcept>

#include "basinwright/chemistry/substances.hpp"
#include "constants.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

using sources::Kind;

// A wash is alkaline by what keeps its hypochlorite or its soaps alive; a rinse is the tap's water.
constexpr sources::Sourced<Ph> chlorine_wash_ph{ph(11.5), {Kind::assumed, "wash-ph", "chlorine"}};
constexpr sources::Sourced<Ph> degrease_ph{ph(11.0), {Kind::assumed, "wash-ph", "degrease"}};
constexpr sources::Sourced<Ph> rinse_ph{ph(7.5), {Kind::assumed, "wash-ph", "rinse"}};

sources::Sourced<Ph> etch_ph(const WashWater& water) {
  require_some(water.volume, "etch water without a volume");
  const Moles acid = water.hydrogen_chloride / molar_mass(Substance::hydrogen_chloride);
  return {strong_acid_ph(acid / water.volume), water_ions.source};
}

FirstStep first_step(const WashWater& water, Verdict verdict, Ph found) {
  if (water.wash == Wash::chlorine && !water.chlorine_gone) return FirstStep::take_out_chlorine;
  if (verdict == Verdict::fits) return FirstStep::ask_leave;
  constexpr double neutral = 7.0;
  return found.value() < neutral ? FirstStep::add_bicarbonate : FirstStep::lower_ph;
}

}  // namespace

Verdict judge(Ph water, const SewerLimits& limits) {
  if (water <= hazardous_acid.value || water >= hazardous_alkali.value) return Verdict::hazardous;
  if (water < sewer_floor.value) return Verdict::refused;
  if (water < limits.lowest.value || water > limits.highest.value) return Verdict::treat;
  return Verdict::fits;
}

units::Volume wash_water_volume(units::Volume mix,
                                units::Area area,
                                int rinses,
                                const sources::Sourced<units::ApplicationRate>& rate) {
  require_amount(mix, "mix is negative or not finite");
  require_amount(area, "area is negative or not finite");
  require_amount(rate.value, "rinse rate is negative or not finite");
  if (rinses < 0) throw std::invalid_argument("number of rinses is negative");
  return mix + area * rate.value * rinses;
}

sources::Sourced<Ph> expected_ph(const WashWater& water) {
  switch (water.wash) {
    case Wash::chlorine:
      return chlorine_wash_ph;
    case Wash::degrease:
      return degrease_ph;
    case Wash::etch:
      return etch_ph(water);
    case Wash::neutralise:
      return {ph((carbonic_first.value + carbonic_second.value) / 2.0), carbonic_first.source};
    case Wash::rinse:
      return rinse_ph;
  }
  return rinse_ph;
}

WasteWater waste_water(const WashWater& water, const SewerLimits& limits) {
  const sources::Sourced<Ph> found =
      water.measured ? sources::Sourced<Ph>{*water.measured, {Kind::given, "sitelog", "pH"}}
                     : expected_ph(water);
  const Verdict verdict = judge(found.value, limits);
  return {water.wash, water.volume, found, verdict, first_step(water, verdict, found.value)};
}

}  // namespace basinwright::chemistry
