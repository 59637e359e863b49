#include "quantities.hpp"

#include <cmath>
#include <stdexcept>

#include "basinwright/units/unit.hpp"
#include "coats.hpp"

namespace basinwright::job {
namespace {

using units::Area;
using units::Volume;

// Sand and cement as mixed and laid.
constexpr sources::Sourced<units::Concentration> mortar_density{
    units::kilograms_per_cubic_metre(2000), {sources::Kind::from_memory, "mortar-density", "2:1"}};

template <class T>
T fit(chemistry::Checked<T> checked, const char* what) {
  if (auto* value = std::get_if<T>(&checked)) return std::move(*value);
  throw std::logic_error(std::string(what) + ": " + std::get<chemistry::Unfit>(checked).reason);
}

class Needs {
 public:
  Needs(const NeedsQuestion& q, trace::Trace& trace) : q_(q), trace_(trace) {}

  Quantities find() {
    washes();
    etch();
    repairs();
    coats();
    return std::move(out_);
  }

 private:
  [[nodiscard]] const preparation::Route& route() const { return q_.plan.route; }

  void washes() {
    const Chemicals& c = q_.rates.chemicals;
    const chemistry::WorkedArea all{q_.plan.take_off.painted};
    if (route().has("chlorine-wash")) {
      const double percent =
          trace_.use("chemicals.hypochlorite.trade_percent", c.hypochlorite_trade_percent);
      trace_.use("chemicals.hypochlorite.wash_strength", c.chlorine_wash.strength);
      trace_.use("chemicals.hypochlorite.rate", c.chlorine_wash.rate);
      const auto stock = fit(chemistry::chlorine_stock(chemistry::TradePercent{percent},
                                                       c.hypochlorite_trade_percent.source),
                             "hypochlorite");
      out_.chlorine_wash =
          fit(chemistry::chlorine_wash(all, stock, c.chlorine_wash, trace_), "chlorine wash");
    }
    if (route().has("degrease")) {
      trace_.use("chemicals.degreaser.cover", c.degrease.cover);
      trace_.use("chemicals.degreaser.concentrate", c.degrease.concentrate);
      trace_.use("chemicals.degreaser.water", c.degrease.water);
      out_.degrease = chemistry::degrease(all, c.degrease, trace_);
    }
  }

  void etch() {
    if (!route().has("neutralise")) return;
    const Chemicals& c = q_.rates.chemicals;
    const auto acid = fit(
        chemistry::acid_from_label(trace_.use("chemicals.acid.strength", c.acid), c.acid.source),
        "acid");
    trace_.use("chemicals.acid.rate", c.etch.solution);
    trace_.use("chemicals.acid.wall_share", c.etch.wall_share);
    const auto patches = etch_patches(q_.parts, q_.findings, q_.plan.system.strong_etch);
    out_.etch = fit(chemistry::etch(patches, acid, c.etch, trace_), "etch");
    Area counted;
    for (const chemistry::EtchMix& mix : out_.etch->mixes) {
      counted += mix.counted;
      trace_.use("chemicals.acid.ratio." + mix.where,
                 sources::Sourced<double>{mix.ratio.parts.water, mix.ratio.source});
    }
    trace_.use("chemicals.bicarbonate.area_per_kg", c.neutralise.bicarbonate);
    trace_.use("chemicals.bicarbonate.mix", c.neutralise.mix);
    Neutralise n;
    n.surface = chemistry::surface_wash(worked(counted), c.neutralise, trace_);
    n.sump_worst = chemistry::sump_worst_case(acid, out_.etch->acid, trace_);
    out_.neutralise = n;
  }

  // Exposed aggregate counts more than its flat area.
  chemistry::WorkedArea worked(Area counted) {
    const Area flat = q_.plan.take_off.painted;
    if (std::abs(counted / flat - 1.0) < 1e-12) return {counted, "takeoff.painted_area_m2"};
    trace_.note("quantities.etch.counted_area_m2",
                counted,
                "flat * texture",
                {{"flat", flat, trace::From{"takeoff.painted_area_m2"}},
                 {"texture", counted / flat, {sources::Kind::given, "", "/surfaces"}}});
    return {counted, "quantities.etch.counted_area_m2"};
  }

  void repairs() {
    out_.filler = route().filler;
    if (route().mortar > Volume()) {
      out_.mortar = route().mortar * trace_.use("repairs.mortar_density", mortar_density);
    }
  }

  void coats() {
    const materials::CoatingSystem& system = q_.plan.system;
    trace_.use("coating.kit", system.kit);
    trace_.use("coating.cover", system.expected_cover());
    if (route().primed > Area()) {
      const auto& primer = system.primer;
      PrimerNeed need;
      need.area = route().primed;
      need.kits = coverage::whole_kits(need.area, trace_.use("coating.primer.cover", primer.cover));
      need.litres = trace_.use("coating.primer.kit", primer.kit) * (need.area / primer.cover.value);
      out_.primer = need;
      trace_.note(
          "quantities.primer.kits",
          static_cast<double>(need.kits),
          "ceil(area / cover)",
          {{"area", need.area, {sources::Kind::given, "", "/surfaces"}}, {"cover", primer.cover}});
    }
    if (route().thin_first_coat) trace_.use("coating.thinner", system.thinner_per_kit);
    const int coats = coats_of(q_.job, system);
    if (!q_.job.coating.coats) trace_.use("coating.coats", system.least_coats);
    coverage::CoatPlan coat_plan{q_.plan.take_off.painted, coats, route().thin_first_coat};
    if (!q_.job.coating.coats) coat_plan.coats_from = system.least_coats.source;
    const coverage::Cut& cut = q_.plan.quantities.cut;
    if (!cut.names.empty()) coat_plan.sections = cut.sections;
    out_.coats = coverage::coats(coat_plan, system, trace_);
    for (const coverage::Coat& coat : out_.coats) out_.kits += coat.kits;
  }

  const NeedsQuestion& q_;
  trace::Trace& trace_;
  Quantities out_;
};

std::int64_t millilitres_up(Volume v) {
  return static_cast<std::int64_t>(std::ceil(v.in(units::millilitres)-1e-6));
}
std::int64_t grams_up(units::Mass m) {
  return static_cast<std::int64_t>(std::ceil(m.in(units::grams)-1e-6));
}

}  // namespace

Quantities quantities_of(const NeedsQuestion& question, trace::Trace& trace) {
  return Needs(question, trace).find();
}

std::vector<quote::Need> needs_of(const Quantities& q, const materials::CoatingSystem& system) {
  using quote::Measure;
  std::vector<quote::Need> needs;
  const auto volume = [&](const char* item, Volume v) {
    if (v > Volume()) needs.push_back({item, Measure::volume, {millilitres_up(v)}, false, false});
  };
  const auto mass = [&](const char* item, units::Mass m) {
    if (m > units::Mass()) needs.push_back({item, Measure::mass, {grams_up(m)}, false, false});
  };
  if (q.chlorine_wash) volume("hypochlorite", q.chlorine_wash->liquid);
  if (q.degrease) volume("degreaser", q.degrease->concentrate);
  volume("filler", q.filler);
  mass("mortar", q.mortar);
  if (q.etch) volume("acid", q.etch->acid);
  if (q.neutralise) mass("bicarbonate", q.neutralise->surface.bicarbonate);
  if (q.primer) volume("primer", system.primer.kit.value * static_cast<double>(q.primer->kits));
  // Whole kits, session by session: what is mixed cannot be kept.
  quote::Need coating{"coating", Measure::volume, {}, true, true};
  for (std::size_t c = 0; c < q.coats.size(); ++c) {
    for (const std::int64_t kits : q.cut.kits) {
      coating.amounts.push_back(millilitres_up(system.kit.value * static_cast<double>(kits)));
    }
  }
  if (!coating.amounts.empty()) needs.push_back(std::move(coating));
  if (!q.coats.empty()) volume("thinner", q.coats.front().thinner);
  return needs;
}

}  // namespace basinwright::job
