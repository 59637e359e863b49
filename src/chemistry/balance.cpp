#include "basinwright/chemistry/balance.hpp"

#include "basinwright/chemistry/substances.hpp"
#include "constants.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

using sources::Sourced;
using trace::From;
using units::Concentration;

constexpr std::string_view volume_key = "takeoff.water_volume_m3";

sources::Source analysis(std::string_view place) {
  return {sources::Kind::given, "", place};
}

/// One figure of the water: what it is and where it is to go.
struct Change {
  StartUpAction action;
  Sourced<Concentration> from;
  Sourced<Concentration> to;
};

/// The key of a dose's step, and what is added.
struct Addition {
  std::string_view key;
  Additive additive;
  Sourced<units::Fraction> purity = {units::fraction(1.0), molar_masses};
};

bool below(const Change& change) {
  return change.from.value < change.to.value;
}

StartUpDose solid(units::Volume filled,
                  const Change& change,
                  const Addition& addition,
                  trace::Trace& trace) {
  const Sourced<double> ratio{dose_ratio(addition.additive), molar_masses};
  const units::Mass mass = trace.note(
      addition.key,
      additive_dose(
          addition.additive, filled, change.to.value - change.from.value, addition.purity.value),
      "filled * (target - now) * ratio / purity",
      {{"filled", filled, From{volume_key}},
       {"target", change.to},
       {"now", change.from},
       {"ratio", ratio},
       {"purity", addition.purity}});
  return {change.action, mass, {}, change.from.value, change.to.value};
}

StartUpDose less_alkalinity(units::Volume filled,
                            const Change& change,
                            const Acid& acid,
                            trace::Trace& trace) {
  const Sourced<double> ratio{molar_mass(Substance::hydrogen_chloride).in_grams_per_mole() /
                                  calcium_carbonate_equivalent().in_grams_per_mole(),
                              molar_masses};
  const units::Volume volume =
      trace.note("quantities.start_up.acid_l",
                 acid_dose(filled, change.from.value - change.to.value, acid),
                 "filled * (now - target) * ratio / content",
                 {{"filled", filled, From{volume_key}},
                  {"now", change.from},
                  {"target", change.to},
                  {"ratio", ratio},
                  {"content", acid.hydrogen_chloride, acid.source}});
  return {change.action, {}, volume, change.from.value, change.to.value};
}

StartUpDose more_chlorine(units::Volume filled,
                          const Sourced<Concentration>& target,
                          const ChlorineStock& stock,
                          trace::Trace& trace) {
  const ChlorineDose dose = chlorine_dose(filled, target.value, stock);
  const trace::Operand water{"filled", filled, From{volume_key}};
  const trace::Operand rise{"target", target};
  StartUpDose made{StartUpAction::raise_chlorine, dose.solid, dose.liquid, {}, target.value};
  if (stock.solid) {
    trace.note("quantities.start_up.chlorine_kg",
               dose.solid,
               "filled * target / available",
               {water, rise, {"available", *stock.solid, stock.source}});
  } else if (stock.liquid) {
    trace.note("quantities.start_up.chlorine_l",
               dose.liquid,
               "filled * target / stock",
               {water, rise, {"stock", *stock.liquid, stock.source}});
  }
  return made;
}

std::vector<TooMuch> beyond_mending(const Water& water) {
  std::vector<TooMuch> found;
  if (water.hardness > highest_hardness.value) found.push_back(TooMuch::hardness);
  if (water.stabiliser > highest_stabiliser.value) found.push_back(TooMuch::stabiliser);
  return found;
}

}  // namespace

StartUp start_up(units::Volume filled,
                 const Water& water,
                 const StartUpPlan& plan,
                 trace::Trace& trace) {
  require_amount(filled, "filled volume is negative or not finite");
  const Targets& aim = plan.targets;
  const Change salt{
      StartUpAction::raise_salt, {water.salt, analysis("/refill/analysis/salt")}, aim.salt};
  const Change alkalinity{StartUpAction::raise_alkalinity,
                          {water.alkalinity, analysis("/refill/analysis/alkalinity")},
                          aim.alkalinity};
  const Change hardness{StartUpAction::raise_hardness,
                        {water.hardness, analysis("/refill/analysis/hardness")},
                        aim.hardness};
  const Change stabiliser{StartUpAction::raise_stabiliser,
                          {water.stabiliser, analysis("/refill/analysis/stabiliser")},
                          aim.stabiliser};

  StartUp made;
  const auto add = [&](const Change& change, const Addition& addition) {
    if (below(change)) made.doses.push_back(solid(filled, change, addition, trace));
  };
  if (aim.salt_pool) add(salt, {"quantities.start_up.salt_kg", Additive::salt});
  made.doses.push_back(more_chlorine(filled, aim.free_chlorine, plan.chlorine, trace));
  add(alkalinity,
      {"quantities.start_up.bicarbonate_kg", Additive::sodium_bicarbonate, plan.bicarbonate});
  if (water.alkalinity > highest_alkalinity.value && aim.alkalinity.value < water.alkalinity) {
    Change less = alkalinity;
    less.action = StartUpAction::lower_alkalinity;
    made.doses.push_back(less_alkalinity(filled, less, plan.acid, trace));
  }
  add(hardness,
      {"quantities.start_up.calcium_chloride_kg",
       plan.flake ? Additive::calcium_chloride_dihydrate : Additive::calcium_chloride});
  add(stabiliser, {"quantities.start_up.stabiliser_kg", Additive::stabiliser});
  made.too_much = beyond_mending(water);
  return made;
}

}  // namespace basinwright::chemistry
