#include "hazards.hpp"

#include <algorithm>

#include "basinwright/chemistry/gas.hpp"
#include "basinwright/units/unit.hpp"

namespace basinwright::job {
namespace {

// A shell this deep is a fall, is left by a ladder and holds what sinks.
constexpr Sourced<units::Length> deep_shell{
    units::metres(1.8), {sources::Kind::published, "29-cfr-1926.501", "six feet, as 1.8 m"}};

double carbon_dioxide_litres(const Plan& plan) {
  if (!plan.quantities.neutralise) return 0.0;
  return chemistry::carbon_dioxide_of(plan.quantities.neutralise->sump_worst).in(units::litres);
}

void hazards_of_the_route(const Plan& plan, std::vector<Caution>& out) {
  const auto& q = plan.quantities;
  if (q.etch) {
    out.push_back({"acid-into-water"});
    const bool strong = std::ranges::any_of(q.etch->mixes, &chemistry::EtchMix::above_published);
    if (strong) out.push_back({"strong-etch"});
  }
  // What a litre of the ordinary liquid gives: 12.5 trade percent are 125 g of available chlorine.
  constexpr double grams_in_a_percent = 10.0;
  const units::Mass available =
      units::grams(grams_in_a_percent * chemistry::ordinary_trade_percent.value);
  out.push_back({"acid-and-chlorine", chemistry::chlorine_gas(available).in(units::litres)});
  out.push_back({"vapours-sink", carbon_dioxide_litres(plan)});
  if (plan.take_off.total.deepest >= deep_shell.value || plan.stopped())
    out.push_back({"deep-shell"});
  out.push_back({"epoxy-on-skin"});
  out.push_back({"no-flame"});
  out.push_back({"electricity"});
  if (plan.route.abraded + plan.route.stripped > units::Area()) out.push_back({"silica"});
}

}  // namespace

std::vector<Caution> cautions_of(const Job& job, const Plan& plan) {
  std::vector<Caution> out;
  hazards_of_the_route(plan, out);
  if (job.condition.lead_test != preparation::LeadTest::clear &&
      plan.route.abraded + plan.route.stripped > units::Area()) {
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
  if (plan.route.abraded + plan.route.stripped > units::Area())
    out.push_back({"dust", 0.0, "", "sealed-bags"});
  out.push_back({"rags", 0.0, "", "closed-metal-bin"});
  if (q.kits > 0)
    out.push_back({"kit-cans", static_cast<double>(2 * q.kits), "pieces", "cured-and-dry"});
  return out;
}

}  // namespace basinwright::job
