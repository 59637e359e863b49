#include "hazards.hpp"

#include <algorithm>

#include "basinwright/chemistry/chlorine.hpp"
#include "basinwright/chemistry/dust.hpp"
#include "basinwright/chemistry/gas.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

// A shell this deep is a fall, is left by a ladder and holds what sinks.
constexpr Sourced<units::Length> deep_shell{
    units::metres(1.8), {sources::Kind::published, "29-cfr-1926.501", "six feet, as 1.8 m"}};

// What a litre of the liquid, or a kilogram of the granules, gives with acid.
Caution chlorine_caution(const Chemicals& chemicals) {
  const auto checked = chlorine_stock_of(chemicals);
  const auto& stock = std::get<chemistry::ChlorineStock>(checked);
  if (stock.solid) {
    const units::Mass available = units::kilograms(1) * stock.solid->share();
    return {"acid-and-granules", chemistry::chlorine_gas(available).in(units::litres)};
  }
  const units::Mass available = units::litres(1) * *stock.liquid;
  return {"acid-and-chlorine", chemistry::chlorine_gas(available).in(units::litres)};
}

void hazards_of_the_etch(const Plan& plan, std::vector<Caution>& out) {
  if (!plan.quantities.etch) return;
  out.push_back({"acid-into-water"});
  const auto& mixes = plan.quantities.etch->mixes;
  if (std::ranges::any_of(mixes, &chemistry::EtchMix::above_published)) {
    out.push_back({"strong-etch"});
  }
  double vapour = 0.0;
  for (const EtchStrength& strength : plan.mixes.strengths) {
    if (strength.strong) vapour = std::max(vapour, strength.vapour.by_volume.count());
  }
  if (vapour > 0.0) out.push_back({"neat-acid", vapour});
}

void hazards_of_the_route(const RateBook& rates, const Plan& plan, std::vector<Caution>& out) {
  hazards_of_the_etch(plan, out);
  out.push_back(chlorine_caution(rates.chemicals));
  out.push_back({"vapours-sink", plan.discharge.carbon_dioxide_worst.in(units::litres)});
  if (plan.take_off.total.deepest >= deep_shell.value || plan.stopped())
    out.push_back({"deep-shell"});
  out.push_back({"epoxy-on-skin"});
  out.push_back({"no-flame"});
  out.push_back({"electricity"});
  if (plan.ground_dry()) {
    const units::Flow drawn = chemistry::dust_extraction(chemistry::usual_disc.value);
    out.push_back({"silica", drawn.in(units::cubic_metres_per_hour)});
  }
}

}  // namespace

std::vector<Caution> cautions_of(const Job& job, const RateBook& rates, const Plan& plan) {
  std::vector<Caution> out;
  hazards_of_the_route(rates, plan, out);
  if (plan.discharge.limits_refused) out.push_back({"sewer-floor"});
  if (job.condition.blisters > units::Area()) out.push_back({"blisters"});
  if (job.condition.rust) out.push_back({"rust"});
  if (job.condition.efflorescence) out.push_back({"efflorescence"});
  if ((plan.route.lead_open || job.condition.lead_test == preparation::LeadTest::found) &&
      plan.ground_dry()) {
    out.push_back({"lead"});
  }
  if (const auto& rain = plan.programme.rain_before_drain) {
    out.push_back({"rain-before-drain", rain->in(units::millimetres)});
  }
  for (const char* always : {"empty-shell-floats",
                             "falls",
                             "noise-heat-and-slips",
                             "wash-water",
                             "first-aid",
                             "chalking",
                             "who-decides"}) {
    out.push_back({always});
  }
  return out;
}

std::vector<Waste> waste_of(const Plan& plan) {
  std::vector<Waste> out;
  const auto& q = plan.quantities;
  out.push_back(
      {"pool-water", plan.take_off.total.water_volume.in(units::cubic_metres), "m3", "outfall"});
  if (q.chlorine_wash)
    out.push_back(
        {"chlorine-wash", q.chlorine_wash->solution.in(units::litres), "L", "sewer-chlorine-free"});
  if (q.degrease)
    out.push_back({"degreasing-wash", q.degrease->mixed.in(units::litres), "L", "sewer-by-leave"});
  if (q.etch)
    out.push_back({"etch-wash", q.etch->solution.in(units::litres), "L", "sewer-neutralised"});
  if (q.neutralise)
    out.push_back({"neutralising-wash",
                   q.neutralise->surface.water.in(units::litres),
                   "L",
                   "sewer-neutralised"});
  if (plan.ground_dry()) out.push_back({"dust", q.dust.in(units::kilograms), "kg", "sealed-bags"});
  out.push_back({"rags", 0.0, "", "closed-metal-bin"});
  if (q.kits > 0)
    out.push_back({"kit-cans", static_cast<double>(2 * q.kits), "pieces", "cured-and-dry"});
  return out;
}

}  // namespace basinwright::job
