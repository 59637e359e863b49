#include "basinwright/job/plan.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "basinwright/job/many_plans.hpp"
#include "basinwright/job/sections.hpp"
#include "basinwright/units/unit.hpp"
#include "bodies.hpp"
#include "coats.hpp"
#include "discharge.hpp"
#include "hazards.hpp"
#include "mixes.hpp"
#include "mixing_plan.hpp"
#include "mornings.hpp"
#include "notes.hpp"
#include "ordering.hpp"
#include "pricing.hpp"
#include "quantities.hpp"
#include "question.hpp"
#include "range.hpp"
#include "regions.hpp"
#include "rework.hpp"
#include "site_weather.hpp"
#include "take_off_notes.hpp"
#include "water_plan.hpp"

namespace basinwright::job {
namespace {

constexpr Sourced<units::Flow> usual_tap{units::litres_per_minute(20),
                                         {sources::Kind::assumed, "tap-flow", "garden tap"}};

dates::Date first_day(const Job& job, const Circumstances& now) {
  if (now.start) return *now.start;
  if (job.heading.start) return *job.heading.start;
  dates::Date day = now.today + std::chrono::days{1};
  while (!job.calendar.works_on(day)) day += std::chrono::days{1};
  return day;
}

materials::CoatingSystem system_of(const Job& job, const RateBook& rates) {
  const auto it = rates.systems.find(job.coating.system);
  return it == rates.systems.end() ? materials::CoatingSystem() : it->second;
}

double texture_of(const std::vector<Part>& parts, const RateBook& rates, trace::Trace& trace) {
  units::Area flat;
  units::Area counted;
  for (const Part& part : parts) {
    const bool rough = part.region.substrate == preparation::Substrate::pebble;
    const auto& factor = rates.chemicals.etch.pebble_factor;
    if (rough) trace.use("chemicals.acid.pebble_factor", factor);
    flat += part.region.area;
    counted += part.region.area * (rough ? factor.value : 1.0);
  }
  return flat > units::Area() ? counted / flat : 1.0;
}

preparation::Ground ground_of(shell::FlotationVerdict verdict) {
  switch (verdict) {
    case shell::FlotationVerdict::stop:
      return preparation::Ground::floats;
    case shell::FlotationVerdict::hold:
      return preparation::Ground::close;
    case shell::FlotationVerdict::clear:
      return preparation::Ground::clear;
  }
  return preparation::Ground::unknown;
}

class Planner {
 public:
  Planner(const Job& job, const RateBook& rates, const Circumstances& now, const Among* others)
      : job_(job),
        rates_(rates),
        now_(now),
        others_(others),
        start_(first_day(job, now)),
        take_off_only_(now.take_off_only),
        start_fixed_(now.start || job.heading.start) {
    plan_.first_day = start_;
    if (line_only()) plan_.trace = trace::Trace::none();
    if (now.explain) plan_.trace = trace::Trace::recording();
  }

  Plan plan(bool strip_untested) {
    plan_.take_off = take_off_all(job_, plan_.trace);
    const auto parts = parts_of(job_, plan_.take_off, start_);
    note_regions(parts, plan_.trace);
    plan_.system = system_of(job_, rates_);
    preparation::Question findings;
    findings.condition = job_.condition;
    findings.start_fixed = start_fixed_;
    findings.thresholds = rates_.thresholds;
    findings.coats = coats_of(job_, plan_.system);
    findings.strip_untested = strip_untested;
    findings.with_actions = !line_only();
    for (const Part& part : parts) findings.regions.push_back(part.region);
    check_flotation(findings.condition);
    plan_.route = preparation::route(findings, plan_.trace);
    plan_.provisional = plan_.route.provisional;
    if (job_.coating.system.empty()) plan_.provisional.emplace_back("no-data-sheet");
    use_defaults();
    plan_.take_off.parts = named_parts(job_, plan_.take_off);
    if (!plan_.stopped()) measure_out(parts, findings);
    if (plan_.take_off.parts.empty() && !line_only()) {
      plan_.take_off.parts = planned_parts(job_, plan_.take_off, plan_.quantities.cut);
    }
    note_parts(plan_.take_off, plan_.trace);
    if (!line_only()) plan_.take_off.range = painted_range(job_, plan_);
    if (!plan_.stopped()) work_out(parts);
    if (!line_only()) plan_.cautions = cautions_of(job_, rates_, plan_);
    note_page(job_, rates_, plan_);
    return std::move(plan_);
  }

 private:
  // The body nearest to floating decides; one that nobody could check is not made safe by another.
  void check_flotation(preparation::Condition& condition) {
    bool unknown = false;
    for (const BodyResult& body : plan_.take_off.bodies) {
      unknown = unknown || !body.flotation;
      if (!body.flotation) continue;
      if (plan_.flotation && body.flotation->factor > plan_.flotation->factor) continue;
      plan_.flotation = body.flotation;
      condition.ground = ground_of(body.flotation->verdict);
      condition.floats = plan_.take_off.bodies.size() > 1 ? body.name : "";
    }
    if (unknown && condition.ground == preparation::Ground::clear)
      condition.ground = preparation::Ground::unknown;
  }

  void use_defaults() {
    trace::Trace& t = plan_.trace;
    if (!job_.surfaces_given) {
      t.use("surfaces",
            Sourced<double>{1.0,
                            {sources::Kind::assumed,
                             "surface-defaults",
                             "old render, painted with epoxy, untested"}});
    }
    for (const Body& body : job_.bodies) {
      if (!body.rim_to_water_given) t.use("pool.rim_to_water", job_.rim_to_water);
    }
    if (plan_.stopped()) return;
    t.use("crew.people", job_.crew.people);
    t.use("crew.painters", job_.crew.painters);
    if (!job_.crew.hours_given)
      t.use("crew.hours",
            Sourced<units::Duration>{units::hours(9),
                                     {sources::Kind::assumed, "crew", "07:00 to 16:00"}});
    if (!job_.crew.days_given)
      t.use("crew.working_days",
            Sourced<double>{5.0, {sources::Kind::assumed, "crew", "Monday to Friday"}});
  }

  void measure_out(const std::vector<Part>& parts, const preparation::Question& findings) {
    plan_.quantities.cut =
        cut_over_mornings(job_,
                          rates_,
                          plan_,
                          {start_, texture_of(parts, rates_, plan_.trace), plan_.take_off.parts});
    plan_.painters_for_one_morning = plan_.quantities.cut.painters_for_one;
    const coverage::Cut cut = plan_.quantities.cut;
    plan_.quantities = quantities_of({job_, rates_, parts, findings, plan_}, plan_.trace);
    plan_.quantities.cut = cut;
  }

  void work_out(const std::vector<Part>& parts) {
    if (take_off_only_) return;
    order_kits(rates_, plan_);
    if (!line_only()) plan_.mixes = mixes_of(rates_, plan_.quantities, plan_.trace);
    plan_.discharge = discharge_of(job_, rates_, plan_, !line_only());
    estimate(parts);
    const auto tap = job_.refill.flow ? job_.refill.flow : job_.site.tap_flow;
    plan_.tap = tap ? *tap : plan_.trace.use("site.tap_flow", usual_tap);
    plan_.water = water_plan_of(job_, rates_, plan_, !line_only());
    schedule_it();
    add_reworks(rates_, now_.past, plan_);
    if (!line_only()) {
      plan_.mixing = mixing_plan(job_, rates_, now_, plan_, texture_of(parts, rates_, plan_.trace));
    }
    date_additions(job_.calendar, plan_.programme, plan_.water);
    if (!plan_.programme.feasible) plan_.provisional.emplace_back("no-dates");
    if (!line_only()) plan_.waste = waste_of(plan_);
    price_plan(job_,
               rates_,
               line_only() ? std::nullopt : std::optional(now_.today),
               others_ == nullptr ? nullptr : &others_->memory.purchases,
               plan_);
  }

  void estimate(const std::vector<Part>& parts) {
    sequence::WorkQuestion q{.route = plan_.route,
                             .cut = plan_.quantities.cut,
                             .edge = plan_.take_off.total.perimeter,
                             .painted = plan_.take_off.painted};
    q.crew = {static_cast<int>(std::lround(job_.crew.people.value)),
              static_cast<int>(std::lround(job_.crew.painters.value))};
    q.pebble_factor = texture_of(parts, rates_, plan_.trace);
    plan_.work = sequence::work(q, rates_.productivity, plan_.trace);
    plan_.people_for_one_etch = sequence::people_for_one_etch(
        plan_.work, job_.calendar.hours, rates_.productivity.daily_set_up.value);
  }

  void schedule_it() {
    trace::Trace& t = plan_.trace;
    t.use("productivity.drain_pump", rates_.productivity.drain_pump);
    use_waits();
    sequence::ProgrammeQuestion q = question_of(job_, rates_, now_, plan_);
    if (now_.weather != nullptr) use_limits(plan_.system, q.weather.rules, plan_.trace);
    if (!q.sections.empty()) {
      q.reasons = now_.reasons;
      plan_.programme = programme_apart(q);
    } else {
      plan_.programme.blocked_by =
          sequence::Blocked{"coat-1", "", sequence::Blocked::Why::longer_than_any_window};
    }
  }

  // Acid and chlorine not on one day, however short the wait and however long the hours.
  [[nodiscard]] sequence::Programme programme_apart(sequence::ProgrammeQuestion& q) const {
    sequence::Programme found = programme(q);
    if (q.past) return found;  // What is done on one day is done.
    if (!acid_on_the_day_of_chlorine(found)) return found;
    q.waits.after_chlorine.value = std::max(q.waits.after_chlorine.value, units::days(1));
    return programme(q);
  }

  [[nodiscard]] sequence::Programme programme(const sequence::ProgrammeQuestion& q) const {
    if (others_ == nullptr) return sequence::programme(q);
    sequence::Memory& memory = others_->memory.programmes;
    return line_only() ? memory.brief(q, others_->weather_number)
                       : memory.programme(q, others_->weather_number);
  }

  [[nodiscard]] bool line_only() const { return others_ != nullptr && others_->line_only; }

  [[nodiscard]] static bool acid_on_the_day_of_chlorine(const sequence::Programme& programme) {
    std::optional<dates::Date> washed;
    for (const sequence::Booking& b : programme.bookings) {
      if (b.task == "chlorine-wash") washed = b.end.date();
      if (b.task.starts_with("etch-") && washed && b.start.date() <= *washed) return true;
    }
    return false;
  }

  void use_waits() {
    trace::Trace& t = plan_.trace;
    const sequence::Waits& w = rates_.waits;
    t.use("waits.recoat_reserve", w.recoat_reserve);
    t.use("waits.dry", w.dry);
    t.use("waits.dryness_test", w.dryness_test);
    t.use("waits.coat_within", w.coat_within);
    if (plan_.route.has("chlorine-wash")) t.use("waits.after_chlorine", w.after_chlorine);
    if (plan_.route.has("repair")) t.use("waits.filler_cure", w.filler_cure);
    t.use("waits.start_up", w.start_up);
    if (now_.past || plan_.system.planned_rework) {
      t.use("waits.rework_dry", w.rework_dry);
      t.use("waits.rework_coat_within", w.rework_coat_within);
    }
    t.use("coating.recoat_min", plan_.system.recoat_min);
    t.use("coating.recoat_max", plan_.system.recoat_max);
    t.use("coating.cure_warm", plan_.system.cure_warm);
    t.use("coating.cure_cold", plan_.system.cure_cold);
    t.use("waits.cure_warm_at", w.cure_warm_at);
    t.use("waits.cure_cold_at", w.cure_cold_at);
  }

  const Job& job_;
  const RateBook& rates_;
  const Circumstances& now_;
  const Among* others_;  ///< Nothing: a job alone.
  dates::Date start_;
  bool take_off_only_;
  bool start_fixed_ = false;
  Plan plan_;
};

Branch branch_of(std::string code, const Plan& plan) {
  Branch branch{std::move(code), {}, {}, {}};
  for (const preparation::Step& step : plan.route.steps) branch.steps.push_back(step.task);
  // Without dates the days on site are unknown, and with them a part of the price.
  if (!plan.programme.feasible) return branch;
  if (plan.price) branch.total = plan.price->total;
  branch.refill_done = plan.programme.refill_done;
  return branch;
}

Plan plan_among(const Job& job,
                const RateBook& rates,
                const Circumstances& now,
                const Among* others) {
  if (!mismatches(job, rates).empty()) throw std::logic_error("job and rate book do not fit");
  Plan plan = Planner(job, rates, now, others).plan(false);
  if (plan.route.coating_untested && !plan.stopped() && !now.take_off_only && !now.past) {
    plan.either.push_back(branch_of("test-passes", plan));
    Circumstances briefly = now;
    briefly.reasons = false;
    plan.either.push_back(branch_of("strip", Planner(job, rates, briefly, others).plan(true)));
  }
  return plan;
}

}  // namespace

Plan make_plan(const Job& job, const RateBook& rates, const Circumstances& now) {
  return plan_among(job, rates, now, nullptr);
}

Plan make_plan(const Job& job,
               const RateBook& rates,
               const Circumstances& now,
               const Among& others) {
  return plan_among(job, rates, now, &others);
}

}  // namespace basinwright::job
