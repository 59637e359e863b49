#include "basinwright/chemistry/etch.hpp"

#include <cmath>
#include <stdexcept>

#include "basinwright/chemistry/substances.hpp"
#include "contract.hpp"

namespace basinwright::chemistry {
namespace {

using trace::From;

constexpr sources::Sourced<units::Concentration> calcite_density{
    units::grams_per_litre(2710.0), {sources::Kind::from_memory, "calcite-density", "value"}};

std::string mix_key(std::size_t number, std::string_view name) {
  return "quantities.etch.mixes." + std::to_string(number) + "." + std::string(name);
}

/// Works out one mix, recording each figure below its number.
class MixMaker {
 public:
  MixMaker(const EtchRates& rates, trace::Trace& trace, std::size_t number)
      : rates_(rates), trace_(trace), number_(number) {}

  [[nodiscard]] EtchMix make(const EtchPatch& patch, const EtchRatio& ratio, const Acid& stock) {
    EtchMix mix{patch.where, ratio, {}, {}, {}, {}, {}, {}, mixed(stock, ratio.parts)};
    mix.above_published = above_published_range(mix.mixed);
    count(mix, patch);
    split_by_parts(mix);
    split_by_part_of_shell(mix, patch.part);
    return mix;
  }

 private:
  // A text that nobody asks for is not made.
  [[nodiscard]] std::string key(std::string_view name) const {
    return trace_.on() ? mix_key(number_, name) : "";
  }

  void count(EtchMix& mix, const EtchPatch& patch) {
    const units::Area flat = patch.flat.area;
    const std::string counted = key("counted_area_m2");
    const bool rough = patch.surface.substrate == Substrate::pebble;
    mix.counted =
        rough
            ? trace_.note(counted,
                          flat * rates_.pebble_factor.value,
                          "flat * factor",
                          {{"flat", flat, From{patch.flat.key}}, {"factor", rates_.pebble_factor}})
            : trace_.note(counted, flat, "flat", {{"flat", flat, From{patch.flat.key}}});
    const auto& rate = rates_.solution_on(mix.ratio.row);
    mix.solution = trace_.note(key("solution_l"),
                               mix.counted * rate.value,
                               "area * rate",
                               {{"area", mix.counted, From{counted}}, {"rate", rate}});
  }

  void split_by_parts(EtchMix& mix) {
    const Parts parts = mix.ratio.parts;
    const std::string solution = key("solution_l");
    const std::string acid = key("acid_l");
    mix.acid = trace_.note(acid,
                           mix.solution * (parts.acid / (parts.acid + parts.water)),
                           "solution * acid_parts / (acid_parts + water_parts)",
                           {{"solution", mix.solution, From{solution}},
                            {"acid_parts", parts.acid, mix.ratio.source},
                            {"water_parts", parts.water, mix.ratio.source}},
                           mix.ratio.reason);
    mix.water =
        trace_.note(key("water_l"),
                    mix.solution - mix.acid,
                    "solution - acid",
                    {{"solution", mix.solution, From{solution}}, {"acid", mix.acid, From{acid}}});
  }

  void split_by_part_of_shell(EtchMix& mix, EtchPart part) {
    const std::string solution = key("solution_l");
    const std::string walls = key("wall_solution_l");
    const trace::Operand all{"solution", mix.solution, From{solution}};
    switch (part) {
      case EtchPart::whole:
        mix.wall_solution = trace_.note(walls,
                                        mix.solution * rates_.wall_share.value.share(),
                                        "solution * share",
                                        {all, {"share", rates_.wall_share}});
        break;
      case EtchPart::walls:
        mix.wall_solution = trace_.note(walls, mix.solution, "solution", {all});
        break;
      case EtchPart::floor:
        mix.wall_solution = trace_.note(walls, units::Volume{}, "0 * solution", {all});
        break;
    }
    mix.floor_solution = trace_.note(key("floor_solution_l"),
                                     mix.solution - mix.wall_solution,
                                     "solution - walls",
                                     {all, {"walls", mix.wall_solution, From{walls}}});
  }

  const EtchRates& rates_;
  trace::Trace& trace_;
  std::size_t number_;
};

// Adds up one figure over the mixes, a step for each, the last under the job sheet's own key.
units::Volume total(const std::vector<EtchMix>& mixes,
                    units::Volume EtchMix::*figure,
                    const std::string& name,
                    trace::Trace& trace) {
  units::Volume sum;
  if (!trace.on()) {
    for (const EtchMix& mix : mixes) sum += mix.*figure;
    return sum;
  }
  std::string before;
  for (std::size_t i = 0; i < mixes.size(); ++i) {
    const bool last = i + 1 == mixes.size();
    const std::string key = last ? "quantities.etch." + name : mix_key(i, "so_far_" + name);
    const std::string own = mix_key(i, name);
    const trace::Operand mix{"mix", mixes[i].*figure, From{own}};
    sum = i == 0 ? trace.note(key, mixes[i].*figure, "mix", {mix})
                 : trace.note(key,
                              sum + mixes[i].*figure,
                              "so_far + mix",
                              {{"so_far", sum, From{before}}, mix});
    before = key;
  }
  return sum;
}

}  // namespace

units::Area counted_area(Substrate substrate, units::Area flat) {
  return substrate == Substrate::pebble ? flat * pebble_area_factor.value : flat;
}

Checked<Etch> etch(const std::vector<EtchPatch>& patches,
                   const Acid& stock,
                   const EtchRates& rates,
                   trace::Trace& trace) {
  if (patches.empty()) throw std::invalid_argument("nothing to etch");
  Etch all;
  for (const EtchPatch& patch : patches) {
    require_amount(patch.flat.area, "area to etch is negative or not finite");
    const Checked<EtchRatio> ratio = etch_ratio(patch.surface, rates);
    if (const Unfit* unfit = std::get_if<Unfit>(&ratio)) return *unfit;
    MixMaker maker(rates, trace, all.mixes.size());
    all.mixes.push_back(maker.make(patch, std::get<EtchRatio>(ratio), stock));
  }
  all.solution = total(all.mixes, &EtchMix::solution, "solution_l", trace);
  all.acid = total(all.mixes, &EtchMix::acid, "acid_l", trace);
  all.water = total(all.mixes, &EtchMix::water, "water_l", trace);
  all.wall_solution = total(all.mixes, &EtchMix::wall_solution, "wall_solution_l", trace);
  all.floor_solution = total(all.mixes, &EtchMix::floor_solution, "floor_solution_l", trace);
  return all;
}

MixCard mix_card(Parts parts, units::Volume vessel, units::Volume solution) {
  require_some(vessel, "the vessel holds nothing");
  require_amount(solution, "solution is negative or not finite");
  const double acid_share = parts.acid / (parts.acid + parts.water);
  constexpr double rounding = 1.0e-9;  // A drop over a whole vessel is not another vessel.
  MixCard card;
  card.vessel = vessel;
  card.full = static_cast<int>(std::floor(solution / vessel + rounding));
  // Nobody mixes a splash on its own: it goes into the full ones.
  constexpr double splash = 0.05;
  units::Volume rest = solution - vessel * card.full;
  if (card.full > 0 && rest / vessel <= splash) {
    if (rest / vessel > rounding) card.vessel = solution / card.full;
    rest = {};
  }
  card.acid = card.vessel * acid_share;
  card.water = card.vessel - card.acid;
  if (rest / vessel <= rounding) return card;
  card.last_acid = rest * acid_share;
  card.last_water = rest - card.last_acid;
  return card;
}

units::Length deepest_etch(const Acid& mix, units::ApplicationRate spread) {
  const MolarMass calcite = molar_mass(Substance::calcium_carbonate);
  const units::Concentration dissolved =
      moles_per_litre(mix.molarity.in_moles_per_litre() / 2.0) * calcite;
  return spread * (dissolved / calcite_density.value);
}

}  // namespace basinwright::chemistry
