#include "quantities.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "basinwright/chemistry/checks.hpp"
#include "basinwright/units/unit.hpp"
#include "coats.hpp"
#include "dust.hpp"

namespace basinwright::job {
namespace {

using units::Area;
using units::Volume;

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
      use_chlorine();
      const auto stock = fit(chlorine_stock_of(c), "hypochlorite");
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

  void use_chlorine() {
    const Chemicals& c = q_.rates.chemicals;
    if (c.chlorine_kind == ChlorineKind::trade) {
      trace_.use("chemicals.hypochlorite.trade_percent", c.hypochlorite_trade_percent);
    } else {
      trace_.use("chemicals.hypochlorite.strength", c.hypochlorite_strength);
      if (c.chlorine_kind != ChlorineKind::calcium_hypochlorite) {
        trace_.use("chemicals.hypochlorite.density", c.hypochlorite_density);
      }
    }
    trace_.use("chemicals.hypochlorite.wash_strength", c.chlorine_wash.strength);
    trace_.use("chemicals.hypochlorite.rate", c.chlorine_wash.rate);
  }

  void etch() {
    if (!route().has("neutralise")) return;
    const Chemicals& c = q_.rates.chemicals;
    const auto acid = fit(
        chemistry::acid_from_label(trace_.use("chemicals.acid.strength", c.acid), c.acid.source),
        "acid");
    out_.acid = acid;
    trace_.use("chemicals.acid.wall_share", c.etch.wall_share);
    const auto patches = etch_patches(q_.parts, q_.findings, q_.plan.system.strong_etch);
    out_.etch = fit(chemistry::etch(patches, acid, c.etch, trace_), "etch");
    Area counted;
    for (const chemistry::EtchMix& mix : out_.etch->mixes) {
      counted += mix.counted;
      use_row(mix.ratio);
    }
    trace_.use("chemicals.bicarbonate.area_per_kg", c.neutralise.bicarbonate);
    trace_.use("chemicals.bicarbonate.mix", c.neutralise.mix);
    Neutralise n;
    n.surface = chemistry::surface_wash(worked(counted), c.neutralise, trace_);
    n.sump_worst = chemistry::sump_worst_case(acid, out_.etch->acid, c.neutralise.purity, trace_);
    out_.neutralise = n;
    out_.readings.surface_ph = chemistry::ph_readings(route().etched);
  }

  // What the mix and its amount go by: a strong row only where the data sheet lets it stand.
  void use_row(const chemistry::EtchRatio& ratio) {
    const chemistry::EtchRates& rates = q_.rates.chemicals.etch;
    const std::string row(chemistry::name(ratio.row));
    const sources::Sourced<double> water{ratio.parts.water, ratio.source};
    trace_.use(ratio.milder_than_rule ? "coating.strong_etch" : "chemicals.acid.ratio." + row,
               water);
    if (!rates.rule(ratio.row).solution) trace_.use("chemicals.acid.rate", rates.solution);
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
    const preparation::Thresholds& t = q_.rates.thresholds;
    if (route().filler > Volume()) filler(t);
    if (route().mortar > Volume()) {
      out_.mortar =
          trace_.note("quantities.mortar_kg",
                      route().mortar * trace_.use("thresholds.mortar_density", t.mortar_density),
                      "volume * density",
                      {{"volume", route().mortar, trace::From{"quantities.mortar_l"}},
                       {"density", t.mortar_density}});
      if (q_.job.condition.drummy_area > Area())
        trace_.use("thresholds.render_thickness", t.render_thickness);
    }
    out_.dust = dust_of({route().stripped, route().abraded}, t, trace_);
    out_.readings.dryness_sheets = chemistry::dryness_sheets(q_.plan.take_off.painted);
  }

  // What one person works in before a batch sets decides how much is mixed at once.
  void filler(const preparation::Thresholds& t) {
    const auto& rate = q_.rates.productivity.repair;
    trace_.use("thresholds.filler_work", t.filler_work);
    trace_.use("thresholds.filler_batch", t.filler_batch);
    FillerNeed& need = out_.filler;
    need.litres = route().filler;
    const double by_time = route().filler_area / (rate.value * t.filler_work.value);
    const double batches = std::max(by_time, need.litres / t.filler_batch.value);
    constexpr double rounding = 1.0e-9;
    need.batches =
        std::max<std::int64_t>(1, static_cast<std::int64_t>(std::ceil(batches - rounding)));
    trace_.note(
        "quantities.filler.batches",
        static_cast<double>(need.batches),
        "max(1, ceil(max(area / (rate * time), litres / largest) - 0.000000001))",
        {{"area", route().filler_area, {sources::Kind::given, "", "/condition"}},
         {"rate", rate},
         {"time", t.filler_work},
         {"litres", need.litres, trace::From{"quantities.filler.litres"}},
         {"largest", t.filler_batch}},
        "each is what one person works in before it sets, and no more than is mixed at once");
    need.batch = trace_.note(
        "quantities.filler.batch_l",
        need.litres / static_cast<double>(need.batches),
        "litres / batches",
        {{"litres", need.litres, trace::From{"quantities.filler.litres"}},
         {"batches", static_cast<double>(need.batches), trace::From{"quantities.filler.batches"}}},
        "parts A and B in equal volumes");
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

}  // namespace

Quantities quantities_of(const NeedsQuestion& question, trace::Trace& trace) {
  return Needs(question, trace).find();
}

}  // namespace basinwright::job
