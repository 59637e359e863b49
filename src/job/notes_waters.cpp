// Wash waters and the refill: each figure of the page linked to the step that gave it.
#include <fmt/format.h>

#include "basinwright/units/unit.hpp"
#include "discharge.hpp"
#include "notes.hpp"

namespace basinwright::job {
namespace {

using units::Volume;

class WaterNotes {
 public:
  WaterNotes(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), rates_(rates), plan_(plan), t_(plan.trace) {}

  void record() {
    if (plan_.stopped()) return;
    wash_water();
    sump();
    if (plan_.water.water > Volume()) refill();
    additions();
    indices();
  }

 private:
  void wash_water() {
    const Discharge& d = plan_.discharge;
    note_taken(
        t_, "wash_water.sewer.ph_min", d.limits.lowest.value.value(), d.limits.lowest.source);
    note_taken(
        t_, "wash_water.sewer.ph_max", d.limits.highest.value.value(), d.limits.highest.source);
    for (std::size_t i = 0; i < d.waters.size(); ++i) {
      const chemistry::WasteWater& w = d.waters[i].water;
      const std::string here = fmt::format("wash_water.waters.{}.", i);
      note_same(t_, here + "volume_l", w.volume, std::string(volume_key(w.wash)));
      note_taken(t_, here + "ph", w.ph.value.value(), w.ph.source, ph_words(w.wash));
      if (w.wash != chemistry::Wash::chlorine) continue;
      note_same(t_,
                "wash_water.thiosulfate_kg",
                d.waters[i].dechlorinator,
                "quantities.wash_water.thiosulfate_kg");
    }
    note_same(t_,
              "wash_water.pool_thiosulfate_kg_per_mg_l",
              d.pool_dechlorinator,
              "quantities.wash_water.pool_thiosulfate_kg");
  }

  [[nodiscard]] static std::string_view volume_key(chemistry::Wash wash) {
    switch (wash) {
      case chemistry::Wash::chlorine:
        return "quantities.wash_water.chlorine_l";
      case chemistry::Wash::degrease:
        return "quantities.wash_water.degrease_l";
      case chemistry::Wash::etch:
        return "quantities.wash_water.etch_l";
      case chemistry::Wash::neutralise:
      case chemistry::Wash::rinse:
        break;
    }
    return "quantities.wash_water.neutralise_l";
  }
  [[nodiscard]] static std::string_view ph_words(chemistry::Wash wash) {
    if (wash == chemistry::Wash::etch)
      return "strong acid in all the water, with the rinses, none of it spent on the shell";
    if (wash == chemistry::Wash::neutralise)
      return "plain bicarbonate: the middle of its two constants";
    return "";
  }

  void sump() {
    const Discharge& d = plan_.discharge;
    for (std::size_t i = 0; i < d.sump.size(); ++i) {
      const SumpRow& row = d.sump[i];
      const std::string here = fmt::format("wash_water.sump.{}.", i);
      const std::string from = sump_key(row.measured);
      const bool read = job_.site.sump_ph && row.measured.value() == *job_.site.sump_ph;
      note_taken(t_,
                 here + "ph",
                 row.measured.value(),
                 read ? given_at("/site/sewer/sump_ph")
                      : sources::Source{
                            sources::Kind::published, "astm-d4262", "pH paper in steps of 0.5"});
      note_same(t_, here + "still_kg", row.still, from + "still_kg");
      note_same(t_, here + "fizzing_kg", row.fizzing, from + "fizzing_kg");
      note_same(t_, here + "aerated_kg", row.aerated, from + "aerated_kg");
      note_same(t_, here + "carbon_dioxide_l", row.carbon_dioxide, from + "carbon_dioxide_l");
      of_shell(here + "of_shell", row.of_shell, row.carbon_dioxide, here + "carbon_dioxide_l");
    }
    if (!(d.carbon_dioxide_worst > Volume())) return;
    note_same(t_,
              "wash_water.carbon_dioxide.worst_l",
              d.carbon_dioxide_worst,
              "quantities.sump.carbon_dioxide_worst_l");
    of_shell("wash_water.carbon_dioxide.of_shell",
             d.of_shell_worst,
             d.carbon_dioxide_worst,
             "wash_water.carbon_dioxide.worst_l");
  }

  void of_shell(const std::string& key,
                units::Fraction share,
                Volume gas,
                const std::string& from) {
    t_.note(key,
            share,
            "gas / shell",
            {{"gas", gas, trace::From{from}},
             {"shell", plan_.take_off.total.water_volume, trace::From{"takeoff.water_volume_m3"}}},
            "were all of it to stay in the shell");
  }

  void refill() {
    const WaterPlan& w = plan_.water;
    note_same(t_, "refill.water_m3", w.water, "takeoff.water_volume_m3");
    const bool own = job_.refill.flow.has_value();
    const sources::Source tap =
        own || job_.site.tap_flow
            ? given_at(own ? "/refill/flow" : "/site/tap_flow")
            : sources::Source{sources::Kind::assumed, "tap-flow", "garden tap"};
    note_taken(t_, "refill.tap_l_min", w.tap, tap);
    note_same(t_, "refill.hours", w.fill_time, "quantities.refill.hours");
    note_same(t_, "refill.billed_units", w.billed, "quantities.refill.billed_units");
    if (w.cost) cost(*w.cost);
    if (!plan_.programme.feasible) return;
    t_.note("refill.full",
            at(*w.full),
            "floor(full / 86400) * 86400",
            {{"full", at(plan_.programme.refill_done), trace::From{"programme.refill_done"}}},
            "the day");
    t_.note("refill.quiet_until",
            at(*w.quiet_until),
            "ceil((full + quiet) / 86400) * 86400",
            {{"full", at(plan_.programme.refill_done), trace::From{"programme.refill_done"}},
             {"quiet", plan_.system.quiet_start}},
            "the first whole day after");
  }

  // A millionth of the meter's unit is priced at the least.
  void cost(const money::Money& cost) {
    const auto price = money::parse(*job_.refill.water_price, rates_.currency);
    t_.note(
        "refill.cost",
        in_units(cost, rates_.currency),
        fmt::format("round(billed * price * {0}) / {0}", std::pow(10.0, rates_.currency.decimals)),
        {{"billed", plan_.water.billed, trace::From{"refill.billed_units"}},
         {"price", in_units(*price, rates_.currency), given_at("/refill/water_price")}},
        "to the smallest coin");
  }

  void additions() {
    const auto& all = plan_.water.additions;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const std::string here = fmt::format("refill.additions.{}.", i);
      if (all[i].mass > units::Mass()) {
        amount(here, all[i], all[i].mass, &Addition::mass);
      } else {
        amount(here, all[i], all[i].volume, &Addition::volume);
      }
      levels(here, i);
      if (all[i].day) day(here + "day", i);
    }
  }

  [[nodiscard]] static std::string dose_key(const Addition& a) {
    const std::string here = "quantities.start_up.";
    if (a.what == "chlorine-liquid") return here + "chlorine_l";
    if (a.what == "chlorine-granules") return here + "chlorine_kg";
    if (a.what == "alkalinity-acid") return here + "acid_l";
    if (a.what == "ph-acid") return here + "ph_acid_l";
    if (a.what == "ph-soda-ash") return here + "ph_soda_ash_kg";
    return here + formula_name(a.what) + "_kg";
  }

  template <class Q>
  void amount(const std::string& here, const Addition& a, Q part, Q Addition::*figure) {
    const std::string key = here + "amount";
    if (a.of == 1) return note_same(t_, key, part, dose_key(a));
    Q whole{};
    for (const Addition& other : plan_.water.additions) {
      if (other.what == a.what && other.figure == a.figure) whole += other.*figure;
    }
    const auto share = job_.refill.first_share;
    t_.note(key,
            part,
            a.part == 1 ? "dose * first" : "dose * (1 - first)",
            {{"dose", whole, trace::From{dose_key(a)}}, {"first", share}},
            a.part == 1 ? "the first part; the rest after a reading" : "at most");
  }

  // The figure of the water before and after a part of a dose.
  void levels(const std::string& here, std::size_t i) {
    const Addition& a = plan_.water.additions[i];
    const std::string place = "/refill/analysis/" + a.figure;
    const std::string aim = "/refill/targets/" + a.figure;
    if (a.part == 2) {
      const std::string before = fmt::format("refill.additions.{}.to", i - 1);
      note_same(t_, here + "from", a.from, before);
    } else {
      note_taken(t_,
                 here + "from",
                 a.from,
                 given_at(place),
                 "as measured, or as the doses before left it");
    }
    if (a.part == a.of) return note_taken(t_, here + "to", a.to, given_at(aim), "the target");
    const double target = plan_.water.additions[i + 1].to;
    t_.note(here + "to",
            a.to,
            "from + (target - from) * first",
            {{"from", a.from, trace::From{here + "from"}},
             {"target", target, trace::From{fmt::format("refill.additions.{}.to", i + 1)}},
             {"first", job_.refill.first_share}});
  }

  // Chlorine when it is full; then one chemical a working day from the end of the quiet time.
  void day(const std::string& key, std::size_t i) {
    const Addition& a = plan_.water.additions[i];
    const bool chlorine = a.figure == "free_chlorine";
    const Addition* before = i > 0 ? &plan_.water.additions[i - 1] : nullptr;
    std::string from = chlorine ? "refill.full" : "refill.quiet_until";
    dates::Date earliest = chlorine ? *plan_.water.full : *plan_.water.quiet_until;
    int next = 0;
    if (!chlorine && before != nullptr && before->figure != "free_chlorine") {
      from = fmt::format("refill.additions.{}.day", i - 1);
      earliest = *before->day;
      next = a.part == 1 ? 1 : 0;
    }
    const dates::Date soonest = earliest + std::chrono::days{next};
    t_.note(key,
            at(*a.day),
            fmt::format("earliest + {} * 86400 + closed", next),
            {{"earliest", at(earliest), trace::From{from}},
             {"closed",
              units::days(static_cast<double>((*a.day - soonest).count())),
              days_source(job_)}},
            "one chemical a working day, chlorine as soon as it is full");
  }

  void indices() {
    for (std::size_t i = 0; i < plan_.water.indices.size(); ++i) {
      const IndexLine& line = plan_.water.indices[i];
      if (!line.value) continue;
      note_same(t_,
                fmt::format("refill.saturation.{}.index", i),
                *line.value,
                "quantities.saturation." + line.water + "." + formula_name(line.method));
    }
  }

  const Job& job_;
  const RateBook& rates_;
  Plan& plan_;
  trace::Trace& t_;
};

}  // namespace

void note_waters(const Job& job, const RateBook& rates, Plan& plan) {
  WaterNotes(job, rates, plan).record();
}

}  // namespace basinwright::job
