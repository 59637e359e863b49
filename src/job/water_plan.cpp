#include "water_plan.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "basinwright/chemistry/ph_dose.hpp"
#include "basinwright/chemistry/water_units.hpp"
#include "basinwright/job/water_care.hpp"
#include "water_indices.hpp"

namespace basinwright::job {
namespace {

using chemistry::StartUpAction;
using units::Concentration;

constexpr Sourced<double> no_stabiliser{
    0.0, {sources::Kind::assumed, "start-up-targets", "no stabiliser in fresh water"}};

units::Unit<units::Volume> unit_of(WaterUnit unit) {
  switch (unit) {
    case WaterUnit::cubic_metres:
      return units::cubic_metres;
    case WaterUnit::kilolitres:
      return chemistry::kilolitres;
    case WaterUnit::hundred_cubic_feet:
      return chemistry::hundred_cubic_feet;
    case WaterUnit::thousand_us_gallons:
      return chemistry::thousand_us_gallons;
  }
  return units::cubic_metres;
}

Sourced<Concentration> milligrams(const Sourced<double>& figure) {
  return {units::milligrams_per_litre(figure.value), figure.source};
}

class WaterPlanner {
 public:
  WaterPlanner(const Job& job, const RateBook& rates, Plan& plan)
      : job_(job), refill_(job.refill), c_(rates.chemicals), plan_(plan), t_(plan.trace) {}

  WaterPlan plan(bool with_indices) {
    fill();
    aim();
    additions();
    if (with_indices) add_indices(out_, IndexQuestion{job_, water_, after_, t_});
    return std::move(out_);
  }

 private:
  void fill() {
    out_.water = plan_.take_off.total.water_volume;
    out_.tap = plan_.tap;
    const trace::Operand water{"water", out_.water, trace::From{"takeoff.water_volume_m3"}};
    out_.fill_time =
        t_.note("quantities.refill.hours",
                chemistry::fill_time(out_.water, out_.tap),
                "water / tap",
                {water, {"tap", out_.tap, {sources::Kind::given, "", "/refill/flow"}}});
    out_.unit = refill_.water_unit;
    const units::Volume one = units::Volume::from_si(unit_of(out_.unit).factor);
    out_.billed = t_.note("quantities.refill.billed_units",
                          billed_of(out_.water, out_.unit),
                          "water / unit",
                          {water, {"unit", one, {sources::Kind::given, "", "/refill/water_unit"}}});
  }

  template <class T>
  void target(std::string_view key, const WaterFigures::Figure& figure, Sourced<T>& to) {
    if (!figure) {
      list(key, to);
      return;
    }
    if constexpr (std::is_same_v<T, chemistry::Ph>) {
      to = {chemistry::ph(figure->value), figure->source};
    } else {
      to = milligrams(*figure);
    }
  }
  void list(std::string_view key, const Sourced<Concentration>& used) {
    list(key, Sourced<double>{used.value.in(units::milligrams_per_litre), used.source});
  }
  void list(std::string_view key, const Sourced<chemistry::Ph>& used) {
    list(key, Sourced<double>{used.value.value(), used.source});
  }
  void list(std::string_view key, const Sourced<double>& used) {
    if (t_.lists()) t_.use("refill.targets." + std::string(key), used);
  }

  // Targets as given, else the usual ones; a figure nobody measured counts as at its target, so
  // that nothing is added for it.
  void aim() {
    const WaterFigures& wanted = refill_.targets;
    chemistry::Targets& to = question_.targets;
    to.salt_pool = refill_.salt_pool;
    target("ph", wanted.ph, to.ph);
    target("alkalinity", wanted.alkalinity, to.alkalinity);
    target("hardness", wanted.hardness, to.hardness);
    target("stabiliser", wanted.stabiliser, to.stabiliser);
    target("free_chlorine", wanted.free_chlorine, to.free_chlorine);
    if (to.salt_pool) target("salt", wanted.salt, to.salt);
    const WaterFigures& now = refill_.analysis;
    water_.ph = now.ph ? chemistry::ph(now.ph->value) : to.ph.value;
    water_.alkalinity = found("alkalinity", now.alkalinity, to.alkalinity.value);
    water_.hardness = found("hardness", now.hardness, to.hardness.value);
    water_.stabiliser = units::milligrams_per_litre(
        now.stabiliser ? now.stabiliser->value
                       : t_.use("refill.analysis.stabiliser", no_stabiliser));
    if (to.salt_pool) {
      water_.salt = found("salt", now.salt, to.salt.value);
    } else if (now.salt) {
      water_.salt = units::milligrams_per_litre(now.salt->value);
    }
    if (!now.ph) out_.measure_first.insert(out_.measure_first.begin(), "ph");
    water_.temperature = now.temperature ? now.temperature->value
                                         : t_.use("refill.analysis.temperature", usual_warmth);
    question_.bicarbonate = c_.neutralise.purity;
    question_.acid = acid();
    question_.chlorine = out_.chlorine = chlorine();
  }

  Concentration found(const char* name, const WaterFigures::Figure& figure, Concentration target) {
    if (figure) return units::milligrams_per_litre(figure->value);
    out_.measure_first.emplace_back(name);
    return target;
  }

  [[nodiscard]] chemistry::Acid acid() const {
    const auto made = chemistry::acid_from_label(c_.acid.value, c_.acid.source);
    return std::get<chemistry::Acid>(made);
  }

  chemistry::ChlorineStock chlorine() {
    const bool granules = refill_.chlorine_kind == "calcium_hypochlorite";
    const auto& said = refill_.chlorine_strength;
    chemistry::ChlorineLabel label;
    sources::Source source;
    if (granules) {
      const auto strength = said ? *said : ordinary_granules;
      if (!said) t_.use("refill.chlorine.strength", ordinary_granules);
      label = chemistry::CalciumHypochlorite{strength.value};
      source = strength.source;
    } else if (said) {
      label = chemistry::TradePercent{said->value.in_percent()};
      source = said->source;
    } else {
      const double percent = t_.use("refill.chlorine.strength", chemistry::ordinary_trade_percent);
      label = chemistry::TradePercent{percent};
      source = chemistry::ordinary_trade_percent.source;
    }
    return std::get<chemistry::ChlorineStock>(chemistry::chlorine_stock(label, source));
  }

  [[nodiscard]] const chemistry::StartUpDose* dose(StartUpAction action) const {
    const auto it = std::ranges::find(made_.doses, action, &chemistry::StartUpDose::action);
    return it == made_.doses.end() ? nullptr : &*it;
  }

  void additions() {
    made_ = chemistry::start_up(out_.water, water_, question_, t_);
    t_.use("refill.first_share", refill_.first_share);
    after_ = water_;
    first_chlorine();
    const chemistry::Water before = water_;
    take(StartUpAction::raise_alkalinity, "bicarbonate", "alkalinity");
    take(StartUpAction::lower_alkalinity, "alkalinity-acid", "alkalinity");
    ph(before);
    take(StartUpAction::raise_hardness, "calcium-chloride", "hardness");
    take(StartUpAction::raise_stabiliser, "stabiliser", "stabiliser");
    take(StartUpAction::raise_salt, "salt", "salt");
    for (const chemistry::TooMuch too_much : made_.too_much) {
      const bool hard = too_much == chemistry::TooMuch::hardness;
      out_.advice.emplace_back(hard ? "drain-part-hardness" : "drain-part-stabiliser");
    }
  }

  // Chlorine may go in from the first day; the whole of it, since the swimmers' guard is wanted.
  void first_chlorine() {
    const auto* chlorine = dose(StartUpAction::raise_chlorine);
    if (chlorine == nullptr) return;
    Addition one = of_dose(*chlorine, "free_chlorine");
    one.what = chlorine->mass > units::Mass() ? "chlorine-granules" : "chlorine-liquid";
    out_.additions.push_back(std::move(one));
  }

  [[nodiscard]] Addition of_dose(const chemistry::StartUpDose& dose, const char* figure) const {
    Addition one;
    one.mass = dose.mass;
    one.volume = dose.volume;
    one.figure = figure;
    one.from = dose.from.in(units::milligrams_per_litre);
    one.to = dose.to.in(units::milligrams_per_litre);
    return one;
  }

  void take(StartUpAction action, const char* what, const char* figure) {
    const auto* found = dose(action);
    if (found == nullptr) return;
    Addition whole = of_dose(*found, figure);
    whole.what = what;
    in_steps(whole);
    Concentration& level = action == StartUpAction::raise_hardness     ? after_.hardness
                           : action == StartUpAction::raise_stabiliser ? after_.stabiliser
                           : action == StartUpAction::raise_salt       ? after_.salt
                                                                       : after_.alkalinity;
    level = found->to;
  }

  // A first part, a reading, then no more than the rest: one chemical a day.
  void in_steps(const Addition& whole) {
    const double first = refill_.first_share.value.share();
    const bool once = first >= 1.0;
    Addition one = whole;
    one.of = once ? 1 : 2;
    one.mass = whole.mass * first;
    one.volume = whole.volume * first;
    one.to = whole.from + (whole.to - whole.from) * first;
    Addition two = whole;
    two.part = two.of = 2;
    two.mass = whole.mass - one.mass;
    two.volume = whole.volume - one.volume;
    two.from = one.to;
    out_.additions.push_back(std::move(one));
    if (!once) out_.additions.push_back(std::move(two));
    ++out_.visits;
  }

  void ph(const chemistry::Water& before) {
    const WaterFigures& now = refill_.analysis;
    after_.ph = question_.targets.ph.value;
    if (!now.ph || !now.alkalinity) return;
    // Acid that lowers alkalinity leaves a pH that only air brings back.
    if (dose(StartUpAction::lower_alkalinity) != nullptr) {
      out_.advice.emplace_back("aerate");
      return;
    }
    chemistry::Water water = after_;
    water.ph = chemistry::ph_after_bicarbonate(before, after_.alkalinity - before.alkalinity);
    if (std::abs(water.ph.value() - question_.targets.ph.value.value()) <= ph_margin.value) {
      after_.ph = water.ph;
      return;
    }
    Addition one;
    one.figure = "ph";
    one.from = water.ph.value();
    one.to = question_.targets.ph.value.value();
    const auto& target = question_.targets.ph;
    if (water.ph > target.value) {
      one.what = "ph-acid";
      one.volume = chemistry::acid_to_ph(out_.water, water, target, question_.acid, t_);
    } else {
      one.what = "ph-soda-ash";
      one.mass = chemistry::soda_ash_to_ph(out_.water, water, target, t_);
      out_.advice.emplace_back("aerate");
    }
    if (one.mass > units::Mass() || one.volume > units::Volume()) in_steps(one);
  }

  const Job& job_;
  const Refill& refill_;
  const Chemicals& c_;
  Plan& plan_;
  trace::Trace& t_;
  chemistry::StartUpPlan question_;
  chemistry::Water water_, after_;
  chemistry::StartUp made_;
  WaterPlan out_;
};

dates::Date next_working_day(const dates::WorkCalendar& calendar, dates::Date day) {
  while (!calendar.works_on(day)) day += std::chrono::days{1};
  return day;
}

}  // namespace

double billed_of(units::Volume water, WaterUnit unit) {
  return chemistry::billed_units(water, unit_of(unit), chemistry::Metering::exact);
}

void date_additions(const dates::WorkCalendar& calendar,
                    const sequence::Programme& programme,
                    WaterPlan& water) {
  if (!programme.feasible) return;
  water.full = programme.refill_done.date();
  water.quiet_until = programme.quiet_until;
  const bool in_hours = programme.refill_done.quarter() < calendar.hours.to;
  const dates::Date chlorine =
      next_working_day(calendar, *water.full + std::chrono::days{in_hours ? 0 : 1});
  dates::Date free = *water.quiet_until;
  for (Addition& one : water.additions) {
    if (one.figure == "free_chlorine") {
      one.day = chlorine;
      continue;
    }
    if (one.part == 1) free = next_working_day(calendar, free);
    one.day = free;
    if (one.part == one.of) free += std::chrono::days{1};
  }
}

WaterPlan water_plan_of(const Job& job, const RateBook& rates, Plan& plan, bool with_indices) {
  return WaterPlanner(job, rates, plan).plan(with_indices);
}

}  // namespace basinwright::job
