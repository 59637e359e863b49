#include "discharge.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "basinwright/chemistry/gas.hpp"
#include "basinwright/chemistry/substances.hpp"
#include "basinwright/units/show.hpp"

namespace basinwright::job {
namespace {

using chemistry::Ph;
using chemistry::Wash;
using units::Volume;

constexpr Sourced<double> spare{1.2, {sources::Kind::published, "awwa-dechlorination", "20 %"}};
// Where bicarbonate alone ends, and where a reading no longer tells how much acid there is.
constexpr Sourced<Ph> highest_dose{
    chemistry::ph(8.3), {sources::Kind::from_memory, "carbonate-constants", "Plain bicarbonate"}};
constexpr Sourced<Ph> highest_reading{
    chemistry::ph(4.5), {sources::Kind::from_memory, "carbonate-constants", "Bicarbonate demand"}};
constexpr Sourced<std::array<double, 7>> readings{
    {1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0},
    {sources::Kind::published, "astm-d4262", "pH paper in steps of 0.5"}};

// One wash: its mix, the step that gave it, and what is rinsed off after it.
struct Leaving {
  Wash wash;
  std::string_view key, mix_key;
  Volume mix;
  units::Area area;
  const Sourced<double>& rinses;
  std::string_view rinses_key;
};

class Discharger {
 public:
  Discharger(const Job& job, const RateBook& rates, Plan& plan, bool sump)
      : job_(job), c_(rates.chemicals), plan_(plan), q_(plan.quantities), sump_(sump) {}

  Discharge tell() {
    limits();
    chlorine_gas();
    chlorine();
    degrease();
    etch();
    neutralise();
    pool();
    return std::move(out_);
  }

 private:
  void limit(const std::optional<double>& given, std::string_view place, Sourced<Ph>& limit) {
    if (given) {
      limit = {chemistry::ph(*given), {sources::Kind::given, "", place}};
    } else if (plan_.trace.lists()) {
      const std::string key =
          std::string("site.sewer.") + std::string(place.substr(place.rfind('/') + 1));
      plan_.trace.use(key, Sourced<double>{limit.value.value(), limit.source});
    }
  }

  void limits() {
    limit(job_.site.ph_min, "/site/sewer/ph_min", out_.limits.lowest);
    limit(job_.site.ph_max, "/site/sewer/ph_max", out_.limits.highest);
    out_.limits_refused = out_.limits.lowest.value < chemistry::sewer_floor.value;
    const Ph low = std::max(out_.limits.lowest.value, chemistry::sewer_floor.value);
    out_.target = std::min(low, highest_dose.value);
    out_.beyond_bicarbonate = low > highest_dose.value;
  }

  // What leaves with the rinses.
  Volume volume_of(const Leaving& w) {
    plan_.trace.use("chemicals.rinse", c_.rinse);
    plan_.trace.use(w.rinses_key, w.rinses);
    const auto rinses = static_cast<int>(w.rinses.value);
    return plan_.trace.note(w.key,
                            chemistry::wash_water_volume(w.mix, w.area, rinses, c_.rinse),
                            "mix + rinses * rate * area",
                            {{"mix", w.mix, trace::From{w.mix_key}},
                             {"rinses", w.rinses},
                             {"rate", c_.rinse},
                             {"area", w.area, {sources::Kind::given, "", "/surfaces"}}});
  }

  WashWaterOut& add(const Leaving& leaving, units::Mass chloride = {}) {
    chemistry::WashWater water;
    water.wash = leaving.wash;
    water.volume = volume_of(leaving);
    water.hydrogen_chloride = chloride;
    out_.waters.push_back({chemistry::waste_water(water, out_.limits), {}});
    return out_.waters.back();
  }

  void chlorine() {
    if (!q_.chlorine_wash) return;
    WashWaterOut& water = add({Wash::chlorine,
                               "quantities.wash_water.chlorine_l",
                               "quantities.chlorine_wash.solution_l",
                               q_.chlorine_wash->solution,
                               plan_.take_off.painted,
                               c_.rinses_of_chlorine,
                               "chemicals.hypochlorite.rinses"});
    const auto ratio = chemistry::dechlorinator_ratio(chemistry::Dechlorinator::sodium_thiosulfate);
    water.dechlorinator =
        plan_.trace.note("quantities.wash_water.thiosulfate_kg",
                         q_.chlorine_wash->available * (ratio.value * spare.value),
                         "available * ratio * spare",
                         {{"available",
                           q_.chlorine_wash->available,
                           trace::From{"quantities.chlorine_wash.available_kg"}},
                          {"ratio", ratio},
                          {"spare", spare}},
                         "upper bound: no chlorine spent on the algae");
  }

  void degrease() {
    if (!q_.degrease) return;
    add({Wash::degrease,
         "quantities.wash_water.degrease_l",
         "quantities.degrease.mixed_l",
         q_.degrease->mixed,
         plan_.take_off.painted,
         c_.rinses_of_degreaser,
         "chemicals.degreaser.rinses"});
  }

  void etch() {
    if (!q_.etch || !q_.acid) return;
    const WashWaterOut& water = add({Wash::etch,
                                     "quantities.wash_water.etch_l",
                                     "quantities.etch.solution_l",
                                     q_.etch->solution,
                                     plan_.route.etched,
                                     c_.rinses_of_acid,
                                     "chemicals.acid.rinses"},
                                    q_.etch->acid * q_.acid->hydrogen_chloride);
    gas();
    if (!sump_) return;
    const Volume collected = job_.site.sump_volume.value_or(water.water.volume);
    for (const double reading : readings.value) {
      const Ph measured = chemistry::ph(reading);
      if (measured < out_.target) out_.sump.push_back(row(measured, collected));
    }
    if (job_.site.sump_ph) read(chemistry::ph(*job_.site.sump_ph), collected);
  }

  // What somebody read in the sump goes first.
  void read(Ph measured, Volume collected) {
    if (measured >= out_.limits.lowest.value && measured >= chemistry::sewer_floor.value) {
      out_.reading =
          measured > out_.limits.highest.value ? SumpReading::too_alkaline : SumpReading::inside;
    } else if (measured > highest_reading.value || !(measured < out_.target)) {
      out_.reading = SumpReading::little_by_little;
    } else {
      out_.reading = SumpReading::dosed;
      std::erase_if(out_.sump, [&](const SumpRow& r) { return r.measured == measured; });
      out_.sump.insert(out_.sump.begin(), row(measured, collected));
    }
  }

  [[nodiscard]] units::Fraction of_shell(Volume gas) const {
    const Volume space = plan_.take_off.total.water_volume;
    if (!(space > Volume())) return {};
    return chemistry::gas_in_shell(gas, space, chemistry::carbon_dioxide_short.value).share;
  }

  // One mole as a mass and as a gas.
  [[nodiscard]] static trace::Operand molar(chemistry::Substance substance) {
    return {"molar",
            chemistry::moles(1.0) * chemistry::molar_mass(substance),
            chemistry::atomic_weight(chemistry::Element::hydrogen).source};
  }
  [[nodiscard]] static trace::Operand molar_volume() {
    return {"mole",
            chemistry::gas_volume(chemistry::moles(1.0)),
            {sources::Kind::published, "gas-constant", "20 C, 1 atm"}};
  }

  // What the chlorine at hand would give with acid, a litre of liquid or a kilogram of granules.
  void chlorine_gas() {
    const auto checked = chlorine_stock_of(c_);
    const auto& stock = std::get<chemistry::ChlorineStock>(checked);
    const units::Mass available =
        stock.solid ? units::kilograms(1) * stock.solid->share() : units::litres(1) * *stock.liquid;
    plan_.trace.note("quantities.wash_water.chlorine_gas_l",
                     chemistry::chlorine_gas(available),
                     "available / molar * mole",
                     {{"available", available, stock.source},
                      molar(chemistry::Substance::chlorine),
                      molar_volume()},
                     "from a litre of the liquid, or a kilogram of the granules, with acid");
  }

  void gas() {
    const Volume most =
        plan_.trace.note("quantities.sump.carbon_dioxide_worst_l",
                         chemistry::carbon_dioxide_from_bicarbonate(*q_.acid, q_.etch->acid),
                         "acid * content / molar * mole",
                         {{"acid", q_.etch->acid, trace::From{"quantities.etch.acid_l"}},
                          {"content", q_.acid->hydrogen_chloride, q_.acid->source},
                          molar(chemistry::Substance::hydrogen_chloride),
                          molar_volume()},
                         "one mole of gas for each of acid, none of it spent on the shell");
    out_.carbon_dioxide_worst = most;
    out_.of_shell_worst = of_shell(most);
    plan_.trace.note(
        "quantities.sump.carbon_dioxide_share",
        out_.of_shell_worst,
        "gas / shell",
        {{"gas", most, trace::From{"quantities.sump.carbon_dioxide_worst_l"}},
         {"shell", plan_.take_off.total.water_volume, trace::From{"takeoff.water_volume_m3"}}},
        "were all of it to stay in the shell");
  }

  units::Mass dose(Ph measured, Volume water, chemistry::Air air, const char* name) {
    const chemistry::Sump sump{water, measured, out_.target, air, c_.neutralise.purity.value};
    const std::string key = sump_key(measured) + name;
    const auto made = chemistry::sump_dose(sump, key, plan_.trace);
    return std::get<chemistry::SumpDose>(made).bicarbonate;
  }

  SumpRow row(Ph measured, Volume water) {
    using chemistry::Air;
    SumpRow row;
    row.measured = measured;
    row.still = dose(measured, water, Air::still, "still_kg");
    row.fizzing = dose(measured, water, Air::fizzing, "fizzing_kg");
    row.aerated = dose(measured, water, Air::aerated, "aerated_kg");
    const chemistry::Moles acid = chemistry::strong_acid_at(measured) * water;
    row.carbon_dioxide = plan_.trace.note(
        sump_key(measured) + "carbon_dioxide_l",
        chemistry::gas_volume(acid),
        "acid * mole",
        {{"acid", acid.count(), {sources::Kind::from_memory, "carbonate-constants", "Water"}},
         molar_volume()},
        "moles of strong acid that the reading stands for in the water collected");
    row.of_shell = of_shell(row.carbon_dioxide);
    return row;
  }

  void neutralise() {
    if (!q_.neutralise) return;
    plan_.trace.use("chemicals.bicarbonate.strength", c_.neutralise.purity);
    add({Wash::neutralise,
         "quantities.wash_water.neutralise_l",
         "quantities.neutralise.water_l",
         q_.neutralise->surface.water,
         plan_.route.etched,
         c_.rinses_of_bicarbonate,
         "chemicals.bicarbonate.rinses"});
  }

  void pool() {
    const auto means = chemistry::Dechlorinator::sodium_thiosulfate;
    const units::Concentration one = units::milligrams_per_litre(1);
    const auto ratio = chemistry::dechlorinator_ratio(means);
    out_.pool_dechlorinator = plan_.trace.note(
        "quantities.wash_water.pool_thiosulfate_kg",
        chemistry::dechlorinator_for(means, plan_.take_off.total.water_volume, one),
        "pool * chlorine * ratio",
        {{"pool", plan_.take_off.total.water_volume, trace::From{"takeoff.water_volume_m3"}},
         {"chlorine", one, {sources::Kind::given, "", "for each mg/L read"}},
         {"ratio", ratio}});
  }

  const Job& job_;
  const Chemicals& c_;
  Plan& plan_;
  const Quantities& q_;
  bool sump_;  // whether its doses are wanted
  Discharge out_;
};

}  // namespace

std::string sump_key(Ph measured) {
  constexpr double tenths = 10.0;
  const bool tenth = measured.value() * tenths == std::round(measured.value() * tenths);
  std::string reading = units::fixed(measured.value(), tenth ? 1 : 2);
  std::ranges::replace(reading, '.', '_');
  return "quantities.sump.ph_" + reading + ".";
}

Discharge discharge_of(const Job& job, const RateBook& rates, Plan& plan, bool sump) {
  return Discharger(job, rates, plan, sump).tell();
}

}  // namespace basinwright::job
