#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "basinwright/units/unit.hpp"
#include "quantities.hpp"

namespace basinwright::job {
namespace {

using quote::Measure;
using units::Mass;
using units::Volume;

std::int64_t millilitres_up(Volume v) {
  return static_cast<std::int64_t>(std::ceil(v.in(units::millilitres)-1e-6));
}
std::int64_t grams_up(Mass m) {
  return static_cast<std::int64_t>(std::ceil(m.in(units::grams)-1e-6));
}

// The item behind each addition to the new water.
constexpr std::array<std::pair<std::string_view, std::string_view>, 9> items{
    {{"chlorine-liquid", "liquid chlorine"},
     {"chlorine-granules", "chlorine granules"},
     {"bicarbonate", "bicarbonate"},
     {"alkalinity-acid", "acid"},
     {"ph-acid", "acid"},
     {"ph-soda-ash", "soda ash"},
     {"calcium-chloride", "calcium chloride"},
     {"stabiliser", "stabiliser"},
     {"salt", "salt"}}};

class Lister {
 public:
  explicit Lister(const Plan& plan) : plan_(plan), q_(plan.quantities) {}

  std::vector<quote::Need> list() {
    shell();
    paint();
    wash_waters();
    new_water();
    return std::move(needs_);
  }

 private:
  void volume(const char* item, Volume v) {
    if (v > Volume()) needs_.push_back({item, Measure::volume, {millilitres_up(v)}, false, false});
  }
  void mass(const char* item, Mass m, const char* use = "") {
    if (m > Mass()) needs_.push_back({item, Measure::mass, {grams_up(m)}, false, false, use});
  }

  void shell() {
    if (q_.chlorine_wash) volume("hypochlorite", q_.chlorine_wash->liquid);
    if (q_.chlorine_wash) mass("hypochlorite", q_.chlorine_wash->granules);
    if (q_.degrease) volume("degreaser", q_.degrease->concentrate);
    volume("filler", q_.filler.litres);
    mass("mortar", q_.mortar);
    if (q_.etch) volume("acid", q_.etch->acid);
    if (q_.neutralise) mass("bicarbonate", q_.neutralise->surface.bicarbonate);
  }

  void paint() {
    const materials::CoatingSystem& system = plan_.system;
    if (q_.primer) volume("primer", system.primer.kit.value * static_cast<double>(q_.primer->kits));
    // Whole kits, session by session: what is mixed cannot be kept.
    quote::Need coating{"coating", Measure::volume, {}, true, true};
    for (const coverage::Coat& coat : q_.coats) {
      // A coat that fits no morning has no sections, yet its paint has its price.
      const bool uncut = q_.cut.kits.empty();
      for (const std::int64_t kits : uncut ? std::vector<std::int64_t>{coat.kits} : q_.cut.kits) {
        coating.amounts.push_back(millilitres_up(system.kit.value * static_cast<double>(kits)));
      }
    }
    // Kits beyond those planned are one row a coat: where they go, nobody knows yet.
    const std::int64_t spare = q_.order.ordered - q_.order.expected;
    for (std::size_t c = 0; c < q_.coats.size() && spare > 0 && !coating.amounts.empty(); ++c) {
      coating.amounts.push_back(millilitres_up(system.kit.value * static_cast<double>(spare)));
      coating.spare += coating.amounts.back();
    }
    if (!coating.amounts.empty()) needs_.push_back(std::move(coating));
    if (!q_.coats.empty()) volume("thinner", q_.coats.front().thinner);
  }

  // At hand before the wash: nothing is pumped until the worst case could be treated.
  void wash_waters() {
    for (const WashWaterOut& out : plan_.discharge.waters) {
      mass("thiosulfate", out.dechlorinator, "chlorine-wash");
    }
    if (q_.neutralise) mass("bicarbonate", q_.neutralise->sump_worst, "sump");
  }

  // All parts of a dose, though the last goes in by a reading only.
  void new_water() {
    for (const auto& [what, item] : items) {
      quote::Need need{std::string(item), Measure::volume, {}, false, false, "start-up"};
      Mass solid;
      Volume liquid;
      for (const Addition& one : plan_.water.additions) {
        if (one.what != what) continue;
        solid += one.mass;
        liquid += one.volume;
      }
      if (solid > Mass()) need.measure = Measure::mass;
      if (solid > Mass()) need.amounts = {grams_up(solid)};
      if (liquid > Volume()) need.amounts = {millilitres_up(liquid)};
      if (!need.amounts.empty()) needs_.push_back(std::move(need));
    }
  }

  const Plan& plan_;
  const Quantities& q_;
  std::vector<quote::Need> needs_;
};

}  // namespace

std::vector<quote::Need> needs_of(const Plan& plan) {
  return Lister(plan).list();
}

}  // namespace basinwright::job
