#include "mixes.hpp"

#include <string>
#include <utility>

namespace basinwright::job {
namespace {

using chemistry::Parts;
using units::Volume;

constexpr sources::Source density_table{sources::Kind::published, "crc-hcl-density", "table, 20 C"};

// A vessel of the rate book, with its name.
struct Vessel {
  std::string name;
  const Sourced<Volume>& filled;
};

// The mix that a vessel is filled with: parts by volume, or mass of a solid in a volume of water.
struct Recipe {
  std::string wash, where;
  Volume solution;
  std::string solution_key;
};

VesselMix card_of(const Recipe& recipe, const Vessel& vessel, const chemistry::MixCard& card) {
  VesselMix mix;
  mix.wash = recipe.wash;
  mix.where = recipe.where;
  mix.vessel = vessel.name;
  mix.filled = card.vessel;
  mix.full = card.full;
  mix.water = card.water;
  mix.agent = card.acid;
  mix.last_water = card.last_water;
  mix.last_agent = card.last_acid;
  return mix;
}

class Mixer {
 public:
  Mixer(const RateBook& rates, const Quantities& quantities, trace::Trace& trace)
      : c_(rates.chemicals), q_(quantities), trace_(trace) {}

  Mixes mix() {
    chlorine_wash();
    degreasing_wash();
    etch();
    neutralising_wash();
    return std::move(out_);
  }

 private:
  [[nodiscard]] Vessel bucket() const { return {"bucket", c_.bucket}; }
  [[nodiscard]] Vessel can() const { return {"can", c_.can}; }

  void liquid(const Recipe& recipe, const Vessel& vessel, Parts parts) {
    trace_.use("chemicals.acid." + vessel.name, vessel.filled);
    VesselMix mix =
        card_of(recipe, vessel, chemistry::mix_card(parts, vessel.filled.value, recipe.solution));
    note(recipe, vessel, mix, parts);
    out_.cards.push_back(std::move(mix));
  }

  void note(const Recipe& recipe, const Vessel& vessel, const VesselMix& mix, Parts parts) {
    const std::string where = recipe.where.empty() ? "" : recipe.where + "_";
    const std::string key =
        "quantities.mixes." + recipe.wash + "." + where + vessel.name + "_agent_l";
    const sources::Source recipe_source{sources::Kind::given, "", recipe.solution_key};
    trace_.note(key,
                mix.agent,
                "vessel * agent / (agent + water)",
                {{"vessel", mix.filled, vessel.filled.source},
                 {"agent", parts.acid, recipe_source},
                 {"water", parts.water, recipe_source}},
                "water first");
  }

  // A solid takes no room worth counting: the vessel is filled with water.
  void solid(const Recipe& recipe, units::Concentration strength) {
    const Vessel vessel = bucket();
    trace_.use("chemicals.acid.bucket", vessel.filled);
    VesselMix mix =
        card_of(recipe, vessel, chemistry::mix_card({0, 1}, vessel.filled.value, recipe.solution));
    const Volume rest = recipe.solution - mix.filled * mix.full;
    mix.agent_mass = mix.filled * strength;
    constexpr double rounding = 1.0e-9;
    if (rest / vessel.filled.value > rounding) {
      mix.last_water = rest;
      mix.last_mass = rest * strength;
    }
    out_.cards.push_back(std::move(mix));
  }

  void chlorine_wash() {
    if (!q_.chlorine_wash) return;
    const chemistry::ChlorineWash& wash = *q_.chlorine_wash;
    const Recipe recipe{"chlorine-wash", "", wash.solution, "quantities.chlorine_wash.solution_l"};
    if (wash.granules > units::Mass()) {
      solid(recipe, wash.granules / wash.water);
    } else {
      liquid(recipe, bucket(), {wash.liquid.in(units::litres), wash.water.in(units::litres)});
    }
  }

  void degreasing_wash() {
    if (!q_.degrease) return;
    const Recipe recipe{"degreasing-wash", "", q_.degrease->mixed, "quantities.degrease.mixed_l"};
    liquid(recipe,
           bucket(),
           {c_.degrease.concentrate.value.in(units::litres),
            c_.degrease.water.value.in(units::litres)});
  }

  void etch() {
    if (!q_.etch || !q_.acid) return;
    for (const chemistry::EtchMix& mix : q_.etch->mixes) {
      const Recipe recipe{"etch", mix.where, mix.solution, "/surfaces"};
      liquid(recipe, bucket(), mix.ratio.parts);
      liquid(recipe, can(), mix.ratio.parts);
      out_.strengths.push_back(strength_of(mix, out_.cards[out_.cards.size() - 2]));
    }
  }

  // Water to one part of the acid at hand for a strength by mass.
  [[nodiscard]] std::optional<Parts> published(const std::string& name,
                                               const Sourced<units::Fraction>& target) {
    const auto parts = chemistry::parts_for(*q_.acid, target.value);
    const auto* found = std::get_if<Parts>(&parts);
    if (found == nullptr) return {};
    trace_.note("quantities.mixes.etch." + name,
                found->water,
                "(strength - target) / target * density / water",
                {{"strength", q_.acid->strength, q_.acid->source},
                 {"target", target},
                 {"density", q_.acid->density, density_table},
                 {"water", chemistry::density_of_water()}});
    return *found;
  }

  void note_strength(const chemistry::EtchMix& mix) {
    trace_.note("quantities.etch.acid_content",
                q_.acid->hydrogen_chloride,
                "strength * density",
                {{"strength", q_.acid->strength, q_.acid->source},
                 {"density", q_.acid->density, density_table}});
    trace_.note(
        "quantities.mixes.etch." + mix.where + "_mass_share",
        mix.mixed.strength,
        "acid * content / (acid * density + parts * water)",
        {{"acid", mix.ratio.parts.acid, mix.ratio.source},
         {"content", q_.acid->hydrogen_chloride, trace::From{"quantities.etch.acid_content"}},
         {"density", q_.acid->density, density_table},
         {"parts", mix.ratio.parts.water, mix.ratio.source},
         {"water", chemistry::density_of_water()}},
        "by balance of mass");
  }

  [[nodiscard]] EtchStrength strength_of(const chemistry::EtchMix& mix, const VesselMix& card) {
    const Parts parts = mix.ratio.parts;
    EtchStrength out;
    out.where = mix.where;
    out.trade = parts;
    out.by_mass = mix.mixed.strength;
    out.published_strong = published("published_10_water_parts", chemistry::published_etch_high);
    out.published_mild = published("published_5_water_parts", chemistry::published_etch_low);
    note_strength(mix);
    if (card.water > Volume()) {
      out.heat = chemistry::dilution_heat(*q_.acid, card.agent, card.water);
    }
    out.vapour = chemistry::vapour_over(mix.mixed);
    out.undiluted = chemistry::vapour_over(*q_.acid);
    out.strong = chemistry::stronger(parts, chemistry::strongest_unasked.value);
    return out;
  }

  void neutralising_wash() {
    if (!q_.neutralise) return;
    solid({"neutralising-wash", "", q_.neutralise->surface.water, "quantities.neutralise.water_l"},
          c_.neutralise.mix.value);
  }

  const Chemicals& c_;
  const Quantities& q_;
  trace::Trace& trace_;
  Mixes out_;
};

}  // namespace

Mixes mixes_of(const RateBook& rates, const Quantities& quantities, trace::Trace& trace) {
  return Mixer(rates, quantities, trace).mix();
}

}  // namespace basinwright::job
