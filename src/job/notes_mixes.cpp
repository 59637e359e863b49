// Mixes by the vessel and the etch's strength: each figure of the page linked to what gave it.
#include <fmt/format.h>

#include "notes.hpp"

namespace basinwright::job {
namespace {

using units::Volume;

class MixNotes {
 public:
  MixNotes(const RateBook& rates, Plan& plan) : rates_(rates), plan_(plan), t_(plan.trace) {}

  void record() {
    etch_mixes();
    cards();
    strengths();
  }

 private:
  void etch_mixes() {
    if (!plan_.quantities.etch) return;
    const auto& mixes = plan_.quantities.etch->mixes;
    for (std::size_t i = 0; i < mixes.size(); ++i) {
      const chemistry::EtchMix& mix = mixes[i];
      const std::string here = fmt::format("quantities.etch.mixes.{}.", i);
      note_taken(t_, here + "acid_parts", mix.ratio.parts.acid, mix.ratio.source);
      note_taken(t_, here + "water_parts", mix.ratio.parts.water, mix.ratio.source);
      note_same(t_,
                here + "mass_percent",
                mix.mixed.strength,
                "quantities.mixes.etch." + mix.where + "_mass_share");
    }
  }

  // Water and agent of a vessel, in the parts of its mix.
  void cards() {
    std::size_t row = 0;
    for (const VesselMix& mix : plan_.mixes.cards) {
      if (mix.full > 0) full_vessels(mix, fmt::format("mixes.cards.{}.", row++));
      if (mix.has_last()) last_vessel(mix, fmt::format("mixes.cards.{}.", row++));
    }
  }

  [[nodiscard]] const Sourced<Volume>& vessel(const VesselMix& mix) const {
    return mix.vessel == "can" ? rates_.chemicals.can : rates_.chemicals.bucket;
  }

  /// All of a wash, and the step it was worked out in.
  [[nodiscard]] Term<Volume> solution_of(const VesselMix& mix) const {
    const Quantities& q = plan_.quantities;
    if (mix.wash == "chlorine-wash")
      return {"solution", q.chlorine_wash->solution, "quantities.chlorine_wash.solution_l"};
    if (mix.wash == "degreasing-wash")
      return {"solution", q.degrease->mixed, "quantities.degrease.mixed_l"};
    if (mix.wash == "neutralising-wash")
      return {"solution", q.neutralise->surface.water, "quantities.neutralise.water_l"};
    const std::size_t i = etch_number(mix);
    return {"solution",
            q.etch->mixes[i].solution,
            fmt::format("quantities.etch.mixes.{}.solution_l", i)};
  }
  [[nodiscard]] std::size_t etch_number(const VesselMix& mix) const {
    const auto& mixes = plan_.quantities.etch->mixes;
    const auto found = std::ranges::find(mixes, mix.where, &chemistry::EtchMix::where);
    return static_cast<std::size_t>(found - mixes.begin());
  }

  /// A vessel with its mix, the step of its filling, and the whole wash.
  struct Filled {
    Volume filled;
    std::string key;
    Term<Volume> whole;
  };

  /// All of what is added to a wash.
  [[nodiscard]] Term<Volume> liquid_of(const VesselMix& mix) const {
    const Quantities& q = plan_.quantities;
    if (mix.wash == "chlorine-wash")
      return {"agent", q.chlorine_wash->liquid, "quantities.chlorine_wash.liquid_l"};
    if (mix.wash == "degreasing-wash")
      return {"agent", q.degrease->concentrate, "quantities.degrease.concentrate_l"};
    const std::size_t i = etch_number(mix);
    return {"agent", q.etch->mixes[i].acid, fmt::format("quantities.etch.mixes.{}.acid_l", i)};
  }
  [[nodiscard]] Term<units::Mass> solid_of(const VesselMix& mix) const {
    const Quantities& q = plan_.quantities;
    if (mix.wash == "chlorine-wash")
      return {"agent", q.chlorine_wash->granules, "quantities.chlorine_wash.granules_kg"};
    return {"agent", q.neutralise->surface.bicarbonate, "quantities.neutralise.surface_kg"};
  }

  template <class Agent>
  void agent(const std::string& key, Agent one, const Term<Agent>& all, const Filled& in) {
    t_.note(key,
            one,
            "agent * vessel / solution",
            {{"agent", all.value, trace::From{all.from}},
             {"vessel", in.filled, trace::From{in.key}},
             {"solution", in.whole.value, trace::From{in.whole.from}}},
            "the vessel's share of it");
  }

  void row(const std::string& here, const VesselMix& mix, bool last) {
    const Volume water = last ? mix.last_water : mix.water;
    const Volume liquid = last ? mix.last_agent : mix.agent;
    const units::Mass solid = last ? mix.last_mass : mix.agent_mass;
    const bool is_solid = solid > units::Mass();
    const Volume all = is_solid ? water : water + liquid;
    const Term<Volume> whole = solution_of(mix);
    const std::string filled = here + "agent.vessel";
    const std::string full_key = here + "agent.full_vessels";
    t_.note(full_key,
            static_cast<double>(mix.full),
            "floor(solution / vessel + 0.000000001)",
            {{"solution", whole.value, trace::From{whole.from}}, {"vessel", vessel(mix)}},
            "vessels that are filled");
    if (last) {
      t_.note(filled,
              all,
              "solution - full * vessel",
              {{"solution", whole.value, trace::From{whole.from}},
               {"full", static_cast<double>(mix.full), trace::From{full_key}},
               {"vessel", mix.filled, vessel(mix).source}},
              "the rest");
    } else if (mix.filled == vessel(mix).value) {
      note_taken(t_, filled, all, vessel(mix).source, "a vessel filled");
    } else {
      t_.note(filled,
              all,
              "solution / full",
              {{"solution", whole.value, trace::From{whole.from}},
               {"full", static_cast<double>(mix.full), trace::From{full_key}}},
              "a splash over goes into the full ones");
    }
    if (is_solid) {
      agent(here + "agent", solid, solid_of(mix), {all, filled, whole});
      note_same(t_, here + "water_l", water, filled, "a solid takes no room worth counting");
    } else {
      agent(here + "agent", liquid, liquid_of(mix), {all, filled, whole});
      t_.note(
          here + "water_l",
          water,
          "vessel - agent",
          {{"vessel", all, trace::From{filled}}, {"agent", liquid, trace::From{here + "agent"}}},
          "put in first");
    }
  }

  void full_vessels(const VesselMix& mix, const std::string& here) {
    row(here, mix, false);
    note_same(t_, here + "count", static_cast<double>(mix.full), here + "agent.full_vessels");
  }

  void last_vessel(const VesselMix& mix, const std::string& here) {
    t_.note(here + "count", 1.0, "1", {}, "the rest goes into one more");
    row(here, mix, true);
  }

  void strengths() {
    for (std::size_t i = 0; i < plan_.mixes.strengths.size(); ++i) {
      const EtchStrength& e = plan_.mixes.strengths[i];
      const std::string here = fmt::format("mixes.etch.{}.", i);
      const std::string mix = fmt::format("quantities.etch.mixes.{}.", i);
      t_.note(here + "water_parts",
              e.trade.water / e.trade.acid,
              "water / acid",
              {{"water", e.trade.water, trace::From{mix + "water_parts"}},
               {"acid", e.trade.acid, trace::From{mix + "acid_parts"}}});
      note_same(t_, here + "mass_percent", e.by_mass, mix + "mass_percent");
      const auto published = [&](const char* name, const std::optional<chemistry::Parts>& parts) {
        if (parts) {
          note_same(t_,
                    here + name,
                    parts->water / parts->acid,
                    std::string("quantities.mixes.etch.") + name);
        }
      };
      published("published_10_water_parts", e.published_strong);
      published("published_5_water_parts", e.published_mild);
      note_taken(t_,
                 here + "bucket_rise_k",
                 e.heat.rise,
                 {sources::Kind::published, "crc-heat-of-dilution", "table"},
                 "heat set free between the two strengths over the heat capacity of the mix");
      const sources::Source table{sources::Kind::from_memory, "hcl-vapour", "table"};
      const auto fume = [&](const char* name, const chemistry::Vapour& vapour) {
        note_taken(t_,
                   here + name,
                   vapour.by_volume.count(),
                   table,
                   "partial pressure at 20 C over that of the air");
      };
      fume("vapour_ppm", e.vapour);
      fume("undiluted_vapour_ppm", e.undiluted);
    }
  }

  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
};

}  // namespace

void note_mixes(const RateBook& rates, Plan& plan) {
  if (!plan.stopped()) MixNotes(rates, plan).record();
}

}  // namespace basinwright::job
